// Whether a font's maker allows it to be put into documents.
#pragma once

#include <string>

namespace rackbook {

// Throws RenderError where the font file may not be embedded as a subset of its outlines, by the
// field fsType of its table OS/2 (OpenType specification, ISO/IEC 14496-22): restricted licence,
// no subsetting, bitmaps only. A file without that table is allowed, as is one that cannot be
// opened here: reading it says what is wrong with it.
void requireEmbeddable(const std::string& fontFile);

}  // namespace rackbook
