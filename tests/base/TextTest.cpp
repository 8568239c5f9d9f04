#include "base/Text.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

using Offset = std::optional<std::size_t>;

// RFC 3629 sections 3 and 10, and table 3-7 of the Unicode Standard.
TEST(Text, AcceptsTheFirstAndLastOfEveryLength) {
    const char* sound[] = {"",
                           "plain",
                           "\x7F",
                           "\xC2\x80",
                           "\xDF\xBF",
                           "\xE0\xA0\x80",
                           "\xED\x9F\xBF",
                           "\xEE\x80\x80",
                           "\xEF\xBF\xBF",
                           "\xF0\x90\x80\x80",
                           "\xF4\x8F\xBF\xBF"};
    for (const char* text : sound)
        EXPECT_EQ(invalidUtf8At(text), Offset{}) << text;
    EXPECT_EQ(invalidUtf8At(std::string_view("\0", 1)), Offset{});
}

TEST(Text, FindsWhatIsNotUtf8) {
    const std::string_view broken[] = {
        "\x80",              // a lone continuation
        "\xC0\x80",          // overlong zero
        "\xC1\xBF",          // overlong
        "\xE0\x9F\xBF",      // overlong of three
        "\xF0\x8F\xBF\xBF",  // overlong of four
        "\xED\xA0\x80",      // a surrogate
        "\xED\xBF\xBF",      // the last surrogate
        "\xF4\x90\x80\x80",  // beyond U+10FFFF
        "\xF5\x80\x80\x80",
        "\xFE",
        "\xFF",
        "\xC3",  // cut short
        "\xE2\x82",
        "\xF0\x9F\x92",
        "\xC3(",
        "\xE2\x28\xA1",
    };
    for (const std::string_view text : broken) {
        EXPECT_EQ(invalidUtf8At(text), Offset{0});
        EXPECT_EQ(invalidUtf8At("ok\xC3\xA9" + std::string(text)), Offset{4});
    }
}

TEST(Text, ComposesToNormalFormC) {
    EXPECT_EQ(normalised("e\u0301"), "\u00E9");
    EXPECT_EQ(normalised("A\u030A"), "\u00C5");
    EXPECT_EQ(normalised("\u212B"), "\u00C5");              // the angstrom sign
    EXPECT_EQ(normalised("\u1E0B\u0323"), "\u1E0D\u0307");  // UAX #15, figure 5: order of marks
    EXPECT_EQ(normalised("\uFB01"), "\uFB01");  // a ligature is no canonical composition
    EXPECT_EQ(normalised("plain"), "plain");
}

TEST(Text, PrintsNothingThatSteersATerminal) {
    EXPECT_EQ(printable("a\x1B[31mb"), "a\\u001B[31mb");
    EXPECT_EQ(printable("a\nb\tc\r"), "a\\u000Ab\\u0009c\\u000D");
    EXPECT_EQ(printable("\x7F"), "\\u007F");
    EXPECT_EQ(printable("\u0085\u009B"), "\\u0085\\u009B");
    EXPECT_EQ(printable("\u202Eabc\u202C"), "\\u202Eabc\\u202C");
    EXPECT_EQ(printable("\u2066x\u2069"), "\\u2066x\\u2069");
    EXPECT_EQ(printable("\u2028\u2029"), "\\u2028\\u2029");
    EXPECT_EQ(printable(std::string_view("\0", 1)), "\\u0000");
    EXPECT_EQ(printable("\xFF\xC3"), "\\uFFFD\\uFFFD");
    EXPECT_EQ(printable("grå, 灰, \U0001F3A8"), "grå, 灰, \U0001F3A8");
}

TEST(Text, FindsControlCharacters) {
    using Found = std::optional<char32_t>;
    EXPECT_EQ(controlCharacterIn("plain\n\ttext, ø"), Found{});
    EXPECT_EQ(controlCharacterIn("a\x07"), Found{U'\x07'});
    EXPECT_EQ(controlCharacterIn("a\r\n"), Found{U'\r'});
    EXPECT_EQ(controlCharacterIn("\u202E"), Found{U'\u202E'});
    EXPECT_EQ(controlCharacterIn("\u009B"), Found{U'\u009B'});
}

TEST(Text, KnowsWhatWouldNotBeSeen) {
    for (const char* blank : {"", " ", "\n\t", "\u00A0\u2003", "\u200B\uFEFF", "\u2800", "\u3164"})
        EXPECT_TRUE(isBlank(blank)) << blank;
    for (const char* seen : {".", " a ", "\u200B灰", "\u0301"})
        EXPECT_FALSE(isBlank(seen)) << seen;
}

TEST(Text, CountsCodePoints) {
    const std::string text = "aé灰\U0001F3A8";
    EXPECT_EQ(offsetOfCodePoint(text, 0), 0u);
    EXPECT_EQ(offsetOfCodePoint(text, 1), 1u);
    EXPECT_EQ(offsetOfCodePoint(text, 2), 3u);
    EXPECT_EQ(offsetOfCodePoint(text, 3), 6u);
    EXPECT_EQ(offsetOfCodePoint(text, 4), 10u);
    EXPECT_EQ(offsetOfCodePoint(text, 99), 10u);
    EXPECT_EQ(codePoints(text), U"aé灰\U0001F3A8");
}

TEST(Text, MeasuresColumns) {
    EXPECT_EQ(displayWidth(""), 0);
    EXPECT_EQ(displayWidth("grey"), 4);
    EXPECT_EQ(displayWidth("grå"), 3);
    EXPECT_EQ(displayWidth("gra\u030A"), 3);
    EXPECT_EQ(displayWidth("灰色"), 4);
    EXPECT_EQ(displayWidth("ｱ"), 1);   // half-width
    EXPECT_EQ(displayWidth("Ａ"), 2);  // full-width
    EXPECT_EQ(displayWidth("한"), 2);
    EXPECT_EQ(displayWidth("\U0001F3A8"), 2);
    EXPECT_EQ(displayWidth("a\u200Bb"), 2);
}

TEST(Text, FindsTheNameThatWasMeant) {
    using Name = std::optional<std::string>;
    const std::vector<std::string> names = {"mass_g", "massLow_g", "massHigh_g", "note", "lot"};
    EXPECT_EQ(nearestName("mas_g", names), Name("mass_g"));
    EXPECT_EQ(nearestName("MASS_G", names), Name("mass_g"));
    EXPECT_EQ(nearestName("masLow_g", names), Name("massLow_g"));
    EXPECT_EQ(nearestName("not", names), Name("note"));
    EXPECT_EQ(nearestName("weight", names), Name());
    EXPECT_EQ(nearestName("pigment", {"pigments"}), Name("pigments"));
    EXPECT_EQ(nearestName("abcdefghijkl", {"wxyzefghijkl"}), Name());  // four edits
    EXPECT_EQ(nearestName("abcdefghijkl", {"wxydefghijkl"}), Name("wxydefghijkl"));
    EXPECT_EQ(nearestName("farve", {"färve"}), Name("färve"));  // an edit is a letter, not a byte
    EXPECT_EQ(nearestName("note", {}), Name());
}

TEST(Text, PrefersTheFirstOfEquallyNearNames) {
    EXPECT_EQ(nearestName("lat", {"lot", "let"}), std::optional<std::string>("lot"));
}

TEST(Text, JoinsNames) {
    EXPECT_EQ(joined({}), "");
    EXPECT_EQ(joined({"a"}), "a");
    EXPECT_EQ(joined({"a", "b"}), "a and b");
    EXPECT_EQ(joined({"a", "b", "c"}, " or "), "a, b or c");
}

}  // namespace
}  // namespace rackbook
