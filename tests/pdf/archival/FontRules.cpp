// Rules about fonts (6.2.11). All fonts of sheets are composite with TrueType outlines and two-byte
// codes; another kind is a finding, since no rule here would look at it.
#include <cmath>
#include <regex>
#include <set>
#include <stdexcept>

#include "ArchivalRules.h"
#include "FontProgram.h"
#include "UnicodeMap.h"

namespace rackbook {

namespace {

using nlohmann::json;
using Codes = std::set<unsigned>;

void addCodes(const std::string& text, Codes& codes) {
    for (std::size_t i = 0; i + 1 < text.size(); i += 2)
        codes.insert(codeIn(text.substr(i, 2)));
}

// The codes that are shown with each font.
std::map<std::string, Codes> usedCodes(ArchivalCase& checked) {
    static const std::set<std::string> showing = {"Tj", "TJ", "'", "\""};
    std::map<std::string, Codes> used;
    for (const ContentStep& step : checked.steps) {
        if (showing.count(step.operation.name) == 0 || step.operation.operands.empty())
            continue;
        if (step.font.empty()) {
            checked.add("32000-1, 9.3.1",
                        "page " + std::to_string(step.page) + ": text is shown without a font");
            continue;
        }
        const Operand& shown = step.operation.operands.back();
        addCodes(shown.text, used[step.font]);
        for (const Operand& part : shown.items)
            addCodes(part.text, used[step.font]);
    }
    return used;
}

// ISO 32000-1, 9.7.4.3.
std::map<unsigned, double> widthsIn(const json& runs) {
    std::map<unsigned, double> widths;
    for (std::size_t i = 0; i + 1 < runs.size();) {
        const auto first = runs[i].get<unsigned>();
        if (runs[i + 1].is_array()) {
            for (std::size_t k = 0; k < runs[i + 1].size(); ++k)
                widths[first + static_cast<unsigned>(k)] = runs[i + 1][k].get<double>();
            i += 2;
        } else {
            for (unsigned code = first; i + 2 < runs.size() && code <= runs[i + 1]; ++code)
                widths[code] = runs[i + 2].get<double>();
            i += 3;
        }
    }
    return widths;
}

struct FontCase {
    ArchivalCase& checked;
    std::string reference;
    const json& descendant;
    const json& descriptor;
    const Codes& codes;

    void add(const std::string& clause, const std::string& what) const {
        checked.add(clause, "font " + reference + ": " + what);
    }
};

void checkNames(const FontCase& font) {
    const PdfJson& file = font.checked.file;
    const std::string name = file.at(font.reference, "/BaseFont").dump();
    static const std::regex subset("\"/[A-Z]{6}\\+[^+]+\"");
    if (!std::regex_match(name, subset))
        font.add("32000-1, 9.6.4", name + " is not the name of a subset");
    if (file.at(font.descendant, "/BaseFont").dump() != name ||
        file.at(font.descriptor, "/FontName").dump() != name)
        font.add("32000-1, 9.7.6.2", "its parts have different names");
}

void checkEncoding(const FontCase& font) {
    const PdfJson& file = font.checked.file;
    if (file.at(font.reference, "/Encoding") != "/Identity-H")
        font.add("6.2.11.3.3", "the encoding is not Identity-H");
    if (file.at(font.descendant, "/CIDToGIDMap") != "/Identity")
        font.add("6.2.11.3.2", "no CIDToGIDMap, or not Identity");
    const json& system = file.at(font.descendant, "/CIDSystemInfo");
    if (textOf(file.at(system, "/Registry")) != "Adobe" ||
        textOf(file.at(system, "/Ordering")) != "Identity")
        font.add("6.2.11.3.1", "the character collection is not Adobe-Identity");
}

// 6.2.11.7.2, which level B does not ask for; our sheets are to be searched and read aloud.
void checkUnicode(const FontCase& font) {
    const PdfJson::Object* stream =
        font.checked.file.stream(font.checked.file.raw(font.reference, "/ToUnicode"));
    if (!stream)
        return font.add("6.2.11.7.2", "no ToUnicode");
    const std::map<unsigned, std::string> known = unicodeMapIn(stream->data);
    for (const unsigned code : font.codes) {
        const auto found = known.find(code);
        if (found == known.end() || found->second.empty())
            font.add("6.2.11.7.2", "no Unicode for the code " + std::to_string(code));
        else if (found->second == std::string(2, '\0') || found->second == "\xFE\xFF" ||
                 found->second == "\xFF\xFE")
            font.add("6.2.11.7.2", "no real Unicode for the code " + std::to_string(code));
    }
}

void checkGlyphs(const FontCase& font, const TrueTypeProgram& program) {
    const std::map<unsigned, double> widths = widthsIn(font.checked.file.at(font.descendant, "/W"));
    const json& usual = font.checked.file.at(font.descendant, "/DW");
    for (const unsigned code : font.codes) {
        const std::string glyph = "the glyph " + std::to_string(code);
        if (code == 0)
            font.add("6.2.11.8", "shows .notdef");
        if (code >= program.glyphs()) {
            font.add("6.2.11.4.1", glyph + " is not in the program");
            continue;
        }
        const auto found = widths.find(code);
        const double said = found != widths.end() ? found->second
                            : usual.is_number()   ? usual.get<double>()
                                                  : 1000;
        if (std::abs(said - program.width(code)) > 1)
            font.add("6.2.11.5", glyph + " is " + std::to_string(program.width(code)) +
                                     " wide in the program, " + std::to_string(said) +
                                     " in the file");
    }
}

// Which text shows ink is known by its Unicode; here: a glyph without outline is as wide as a
// space.
void checkOutlines(const FontCase& font, const TrueTypeProgram& program) {
    const PdfJson::Object* stream =
        font.checked.file.stream(font.checked.file.raw(font.reference, "/ToUnicode"));
    if (!stream)
        return;
    static const std::set<unsigned> blank = {0x20,   0xA0,   0x2002, 0x2003,
                                             0x2007, 0x2009, 0x200A, 0x202F};
    for (const auto& [code, unicode] : unicodeMapIn(stream->data))
        if (font.codes.count(code) > 0 && code < program.glyphs() && !program.hasOutline(code) &&
            blank.count(codeIn(unicode)) == 0)
            font.add("6.2.11.4.1", "no outline for the glyph " + std::to_string(code));
}

void checkGlyphSet(const FontCase& font, const TrueTypeProgram& program) {
    const json& reference = font.checked.file.raw(font.descriptor, "/CIDSet");
    if (reference.is_null()) {
        if (font.checked.isFirstPart())
            font.add("19005-1, 6.3.5", "no CIDSet");
        return;
    }
    const PdfJson::Object* set = font.checked.file.stream(reference);
    if (!set)
        return font.add("6.2.11.4.2", "CIDSet is no stream");
    for (unsigned code = 0; code < std::max(program.glyphs(), set->data.size() * 8); ++code) {
        const bool inSet =
            code / 8 < set->data.size() &&
            (static_cast<unsigned char>(set->data[code / 8]) & (0x80U >> (code % 8))) != 0;
        const bool isShown = code == 0 || font.codes.count(code) > 0;
        const bool isThere = code < program.glyphs();
        // Of an empty glyph that no page shows the program does not tell whether it is one of its.
        if (isThere && !isShown && !program.hasOutline(code))
            continue;
        if (inSet != (isShown || isThere))
            return font.add("6.2.11.4.2",
                            "CIDSet is wrong about the glyph " + std::to_string(code));
    }
}

void checkProgram(const FontCase& font) {
    const PdfJson::Object* stream =
        font.checked.file.stream(font.checked.file.raw(font.descriptor, "/FontFile2"));
    if (!stream)
        return font.add("6.2.11.4.1", "it is not embedded");
    try {
        const TrueTypeProgram program(stream->data);
        checkGlyphs(font, program);
        checkOutlines(font, program);
        checkGlyphSet(font, program);
    } catch (const std::runtime_error& error) {
        font.add("6.2.11.2", error.what());
    }
}

}  // namespace

void checkFonts(ArchivalCase& checked) {
    for (const auto& [reference, codes] : usedCodes(checked)) {
        const json& list = checked.file.at(reference, "/DescendantFonts");
        if (checked.file.at(reference, "/Subtype") != "/Type0" || list.size() != 1 ||
            checked.file.at(list[0], "/Subtype") != "/CIDFontType2") {
            checked.add("house", "font " + reference + " is not composite with TrueType outlines");
            continue;
        }
        const FontCase font{checked, reference, checked.file.resolved(list[0]),
                            checked.file.at(list[0], "/FontDescriptor"), codes};
        checkNames(font);
        checkEncoding(font);
        checkUnicode(font);
        checkProgram(font);
    }
}

}  // namespace rackbook
