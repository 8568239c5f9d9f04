// Which archival standard a file is made after.
#pragma once

namespace rackbook {

enum class PdfLevel {
    a3b,  // PDF/A-3b (ISO 19005-3), PDF 1.7
    a1b   // PDF/A-1b (ISO 19005-1), PDF 1.4: nothing attached, glyph sets named
};

}  // namespace rackbook
