#include "pdf/FontsInUse.h"

#include "base/Text.h"

namespace rackbook {

FontsInUse::FontsInUse(PoDoFo::PdfMemDocument& document, const PdfFonts& fonts)
    : m_document(document), m_fonts(fonts), m_used(fonts.files().size()) {}

PoDoFo::PdfFont& FontsInUse::font(std::size_t file) {
    PoDoFo::PdfFont*& font = m_used[file].font;
    if (!font) {
        const char* path = m_fonts.files()[file].c_str();
        font = m_document.CreateFontSubset(path, false, false, false,
                                           new PoDoFo::PdfIdentityEncoding(0, 0xFFFF, true), path);
    }
    return *font;
}

FontsInUse::HexDigits FontsInUse::glyph(Used& used, std::size_t file, char32_t character) {
    const auto known = used.glyphs.find(character);
    if (known != used.glyphs.end())
        return known->second;
    const PoDoFo::pdf_utf16be bigEndian[] = {
        static_cast<PoDoFo::pdf_utf16be>(((character & 0xFF) << 8) | ((character >> 8) & 0xFF))};
    font(file).AddUsedSubsettingGlyphs(PoDoFo::PdfString(bigEndian, 1), 1);
    const auto glyph = static_cast<unsigned>(
        font(file).GetFontMetrics()->GetGlyphId(static_cast<long>(character)));
    constexpr std::string_view digits = "0123456789ABCDEF";
    const HexDigits hex = {digits[(glyph >> 12) & 0xF], digits[(glyph >> 8) & 0xF],
                           digits[(glyph >> 4) & 0xF], digits[glyph & 0xF]};
    used.glyphs.emplace(character, hex);
    return hex;
}

std::string FontsInUse::glyphs(std::size_t file, std::string_view utf8) {
    std::string text = "<";
    for (const char32_t character : codePoints(utf8)) {
        const HexDigits hex = glyph(m_used[file], file, character);
        text.append(hex.data(), hex.size());
    }
    return text + ">";
}

}  // namespace rackbook
