// Names that files inside a PDF may have.
#pragma once

#include <string>

namespace rackbook {

// Whether a text can be the name of a file inside: valid UTF-8 without control characters and
// separators of folders, not empty, at most 255 bytes, and no dots alone.
bool isPlainFileName(const std::string& name);

// "application/json": two words of RFC 6838, 4.2, with a slash between them.
bool isMediaType(const std::string& text);

}  // namespace rackbook
