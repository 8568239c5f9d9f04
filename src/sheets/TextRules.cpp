#include "sheets/TextRules.h"

#include <array>

#include "base/Error.h"
#include "base/Finding.h"
#include "base/Text.h"

namespace rackbook {

namespace {

// Unicode 14, Blocks.txt; neighbouring blocks of one kind are joined under one name.
constexpr std::array<ScriptRange, 41> unsettable = {{
    {0x0590, 0x05FF, "Hebrew"},
    {0x0600, 0x06FF, "Arabic"},
    {0x0700, 0x074F, "Syriac"},
    {0x0750, 0x077F, "Arabic"},
    {0x0780, 0x07BF, "Thaana"},
    {0x07C0, 0x07FF, "N'Ko"},
    {0x0800, 0x083F, "Samaritan"},
    {0x0840, 0x085F, "Mandaic"},
    {0x0860, 0x086F, "Syriac"},
    {0x0870, 0x08FF, "Arabic"},
    {0x0900, 0x097F, "Devanagari"},
    {0x0980, 0x09FF, "Bengali"},
    {0x0A00, 0x0A7F, "Gurmukhi"},
    {0x0A80, 0x0AFF, "Gujarati"},
    {0x0B00, 0x0B7F, "Oriya"},
    {0x0B80, 0x0BFF, "Tamil"},
    {0x0C00, 0x0C7F, "Telugu"},
    {0x0C80, 0x0CFF, "Kannada"},
    {0x0D00, 0x0D7F, "Malayalam"},
    {0x0D80, 0x0DFF, "Sinhala"},
    {0x0E00, 0x0E7F, "Thai"},
    {0x0E80, 0x0EFF, "Lao"},
    {0x0F00, 0x0FFF, "Tibetan"},
    {0x1000, 0x109F, "Myanmar"},
    {0x1100, 0x11FF, "old Hangul"},
    {0x1700, 0x177F, "Philippine scripts"},
    {0x1780, 0x17FF, "Khmer"},
    {0x1800, 0x18AF, "Mongolian"},
    {0x1900, 0x1AAF, "South and South-East Asian scripts"},
    {0x1B00, 0x1C4F, "South and South-East Asian scripts"},
    {0x1CC0, 0x1CFF, "South and South-East Asian scripts"},
    {0x200E, 0x200F, "direction mark"},
    {0xA800, 0xA8DF, "South and South-East Asian scripts"},
    {0xA8E0, 0xA8FF, "Devanagari"},
    {0xA900, 0xAAFF, "South and South-East Asian scripts"},
    {0xABC0, 0xABFF, "South and South-East Asian scripts"},
    {0xFB1D, 0xFB4F, "Hebrew"},
    {0xFB50, 0xFDFF, "Arabic"},
    {0xFE70, 0xFEFE, "Arabic"},
    {0x10800, 0x10FFF, "right-to-left scripts"},
    {0x1E800, 0x1EFFF, "right-to-left scripts"},
}};

// Soft hyphen, zero-width space, word joiner, byte order mark: they ask for nothing that is drawn.
bool isInvisible(char32_t c) {
    return c == 0x00AD || c == 0x200B || c == 0x2060 || c == 0xFEFF;
}

std::string withoutInvisible(std::string_view text, const std::u32string& points) {
    std::string kept;
    std::size_t at = 0;
    for (const char32_t c : points) {
        const std::size_t length = offsetOfCodePoint(text.substr(at), 1);
        if (c == '\t')
            kept += ' ';
        else if (!isInvisible(c))
            kept += text.substr(at, length);
        at += length;
    }
    return kept;
}

std::string quoted(std::string_view text) {
    return "\"" + excerpt(std::string(text)) + "\"";
}

void refuseBadEncoding(std::string_view text, const std::string& where) {
    if (invalidUtf8At(text))
        throw RenderError(where, "the text " + quoted(text) + " is not UTF-8",
                          "Write the text again in UTF-8.");
    if (const auto control = controlCharacterIn(text))
        throw RenderError(
            where,
            "the text " + quoted(text) + " holds the control character " + codePointName(*control),
            "Take the character out.");
}

void refuseScripts(const std::u32string& points, std::string_view text, const std::string& where) {
    for (const char32_t c : points)
        if (const auto script = unsettableScript(c))
            throw RenderError(where,
                              "the text " + quoted(text) + " holds " + codePointName(c) + " (" +
                                  script->name +
                                  "), which runs from right to left or joins its letters; a sheet "
                                  "cannot set it",
                              "Write the text in a script whose letters stand apart and run from "
                              "left to right.");
}

}  // namespace

std::optional<ScriptRange> unsettableScript(char32_t character) {
    for (const ScriptRange& range : unsettable)
        if (character >= range.first && character <= range.last)
            return range;
    return std::nullopt;
}

std::string codePointName(char32_t character) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string name = "U+";
    bool started = false;
    for (int shift = 20; shift >= 0; shift -= 4) {
        const auto digit = (character >> shift) & 0xF;
        started = started || digit != 0 || shift <= 12;
        if (started)
            name += digits[digit];
    }
    return name;
}

std::string settable(const TextMeasurer& measurer, FontRole role, std::string_view text,
                     const std::string& where) {
    refuseBadEncoding(text, where);
    const std::string normal = normalised(text);
    const std::u32string points = codePoints(normal);
    refuseScripts(points, normal, where);
    std::string kept = withoutInvisible(normal, points);
    std::string drawn = kept;
    for (char& c : drawn)
        if (c == '\n')
            c = ' ';
    if (const auto missing = measurer.missingGlyph(role, drawn))
        throw RenderError(
            where, "no font of this sheet has " + codePointName(*missing) + " in " + quoted(kept),
            "Write the text without it, or add a font family that has it to the "
            "template.");
    return kept;
}

}  // namespace rackbook
