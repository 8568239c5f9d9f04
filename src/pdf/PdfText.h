// Text strings of PDF files (ISO 32000-1, 7.9.2.2).
#pragma once

#include <string>

namespace rackbook {

// UTF-8 of the bytes of a string: UTF-16 after its mark, in either order of bytes, UTF-8 after its
// mark (ISO 32000-2), else PDFDocEncoding (ISO 32000-1, annex D.2). Lines end in line feeds.
// Languages named within are left out (7.9.2.2, after U+001B); what cannot be decoded is U+FFFD.
std::string decodedPdfText(const std::string& bytes);

}  // namespace rackbook
