#include "pdf/GlyphSets.h"

#include <podofo/podofo.h>

#include <cstdlib>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "base/Error.h"

namespace rackbook {

namespace {

using PoDoFo::PdfArray;
using PoDoFo::PdfObject;

[[noreturn]] void refuse() {
    throw RenderError("PDF", "the glyphs of a font subset cannot be read",
                      "Report this fault of the program.");
}

// Reads big-endian numbers of a TrueType font program (OpenType, "The OpenType Font File").
class FontProgram {
public:
    explicit FontProgram(std::string bytes) : m_bytes(std::move(bytes)) {}

    std::set<std::size_t> glyphsWithOutlines() const {
        const bool longOffsets = number(table("head") + 50, 2) != 0;
        const std::size_t count = number(table("maxp") + 4, 2);
        const std::size_t offsets = table("loca");
        const auto offset = [&](std::size_t glyph) {
            return longOffsets ? number(offsets + 4 * glyph, 4) : number(offsets + 2 * glyph, 2);
        };
        std::set<std::size_t> glyphs;
        for (std::size_t glyph = 0; glyph < count; ++glyph)
            if (offset(glyph + 1) > offset(glyph))
                glyphs.insert(glyph);
        return glyphs;
    }

private:
    std::size_t number(std::size_t at, std::size_t length) const {
        if (at + length > m_bytes.size())
            refuse();
        std::size_t value = 0;
        for (std::size_t i = 0; i < length; ++i)
            value = value * 256 + static_cast<unsigned char>(m_bytes[at + i]);
        return value;
    }

    std::size_t table(const std::string& tag) const {
        const std::size_t tables = number(4, 2);
        for (std::size_t i = 0; i < tables; ++i)
            if (m_bytes.compare(12 + 16 * i, 4, tag) == 0)
                return number(12 + 16 * i + 8, 4);
        refuse();
    }

    std::string m_bytes;
};

std::string programOf(const PdfObject& descriptor) {
    const PdfObject* file = descriptor.GetIndirectKey("FontFile2");
    if (!file || !file->HasStream())
        refuse();
    char* buffer = nullptr;
    PoDoFo::pdf_long length = 0;
    file->GetStream()->GetFilteredCopy(&buffer, &length);
    const std::unique_ptr<char, decltype(&PoDoFo::podofo_free)> owner(buffer, &PoDoFo::podofo_free);
    return std::string(buffer, static_cast<std::size_t>(length));
}

// Both forms of a run: "first [w w …]" and "first last w" (ISO 32000-1, 9.7.4.3).
void addGlyphsWithWidths(const PdfObject& font, std::set<std::size_t>& glyphs) {
    const PdfObject* widths = font.GetIndirectKey("W");
    if (!widths || !widths->IsArray())
        return;
    const PdfArray& runs = widths->GetArray();
    std::size_t i = 0;
    while (i + 1 < runs.size()) {
        const auto first = static_cast<std::size_t>(runs[i].GetNumber());
        const bool isList = runs[i + 1].IsArray();
        const std::size_t past = isList ? first + runs[i + 1].GetArray().size()
                                        : static_cast<std::size_t>(runs[i + 1].GetNumber()) + 1;
        for (std::size_t glyph = first; glyph < past; ++glyph)
            glyphs.insert(glyph);
        i += isList ? 2 : 3;
    }
}

// One bit a glyph, the highest bit of a byte first.
std::string bitsOf(const std::set<std::size_t>& glyphs) {
    std::string bits(*glyphs.rbegin() / 8 + 1, '\0');
    for (const std::size_t glyph : glyphs)
        bits[glyph / 8] =
            static_cast<char>(static_cast<unsigned char>(bits[glyph / 8]) | (0x80U >> (glyph % 8)));
    return bits;
}

}  // namespace

void dropGlyphSets(PoDoFo::PdfMemDocument& document) {
    std::vector<PoDoFo::PdfReference> sets;
    for (PdfObject* object : document.GetObjects()) {
        if (!object->IsDictionary() || !object->GetDictionary().HasKey("CIDSet"))
            continue;
        const PdfObject* set = object->GetDictionary().GetKey("CIDSet");
        if (set->IsReference())
            sets.push_back(set->GetReference());
        object->GetDictionary().RemoveKey("CIDSet");
    }
    for (const PoDoFo::PdfReference& set : sets)
        const std::unique_ptr<PdfObject> removed(document.GetObjects().RemoveObject(set));
}

void setExactGlyphSets(PoDoFo::PdfMemDocument& document) {
    dropGlyphSets(document);
    std::vector<PdfObject*> fonts;
    for (PdfObject* object : document.GetObjects())
        if (object->IsDictionary() && object->GetDictionary().HasKey("CIDToGIDMap"))
            fonts.push_back(object);
    for (const PdfObject* font : fonts) {
        PdfObject* descriptor = font->GetIndirectKey("FontDescriptor");
        if (!descriptor)
            refuse();
        std::set<std::size_t> glyphs = FontProgram(programOf(*descriptor)).glyphsWithOutlines();
        glyphs.insert(0);
        addGlyphsWithWidths(*font, glyphs);
        const std::string bits = bitsOf(glyphs);
        PdfObject* set = document.GetObjects().CreateObject();
        set->GetStream()->Set(bits.data(), static_cast<PoDoFo::pdf_long>(bits.size()));
        descriptor->GetDictionary().AddKey("CIDSet", set->Reference());
    }
}

}  // namespace rackbook
