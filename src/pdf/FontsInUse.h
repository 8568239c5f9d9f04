// The fonts that one document draws with.
#pragma once

#include <podofo/podofo.h>

#include <array>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "pdf/PdfFonts.h"

namespace rackbook {

// Files are those of PdfFonts::files(), by index.
class FontsInUse {
public:
    // Both must outlive it.
    FontsInUse(PoDoFo::PdfMemDocument& document, const PdfFonts& fonts);

    const PdfFonts& fonts() const { return m_fonts; }

    // The text as the file's glyphs, in the digits of a PDF string. Each character is put down
    // for the subset of the font that the document will hold.
    std::string glyphs(std::size_t file, std::string_view utf8);

    // Makes the font when it is first asked for, so that the document holds no others.
    PoDoFo::PdfFont& font(std::size_t file);

private:
    using HexDigits = std::array<char, 4>;
    struct Used {
        PoDoFo::PdfFont* font = nullptr;  // the document owns it
        std::unordered_map<char32_t, HexDigits> glyphs;
    };
    HexDigits glyph(Used& used, std::size_t file, char32_t character);

    PoDoFo::PdfMemDocument& m_document;
    const PdfFonts& m_fonts;
    std::vector<Used> m_used;
};

}  // namespace rackbook
