#include "sheets/LineBreaker.h"

#include <gtest/gtest.h>

#include "EvenMeasurer.h"

namespace rackbook {
namespace {

using Lines = std::vector<std::string>;

// Room for that many characters of the even measurer.
Lines brokenAt(std::size_t characters, const std::string& text) {
    const EvenMeasurer measurer;
    const double width_mm = measurer.width_mm(FontRole::body, 10, std::string(characters, 'x'));
    return breakLines(measurer, FontRole::body, 10, text, width_mm);
}

TEST(LineBreaker, FillsLinesToTheLastCharacter) {
    EXPECT_EQ(brokenAt(7, "one two three"), (Lines{"one two", "three"}));
    EXPECT_EQ(brokenAt(6, "one two three"), (Lines{"one", "two", "three"}));
}

TEST(LineBreaker, MakesOneSpaceOfMany) {
    EXPECT_EQ(brokenAt(20, "  one   two "), (Lines{"one two"}));
}

TEST(LineBreaker, KeepsAnEmptyLineForNoText) {
    EXPECT_EQ(brokenAt(5, ""), (Lines{""}));
}

TEST(LineBreaker, BeginsANewLineAtALineFeed) {
    EXPECT_EQ(brokenAt(9, "one\n\ntwo"), (Lines{"one", "", "two"}));
}

TEST(LineBreaker, BreaksLongWordsBetweenCodePoints) {
    EXPECT_EQ(brokenAt(4, "a Жёлтыйцвет"), (Lines{"a", "Жёлт", "ыйцв", "ет"}));
}

// Some fonts give marks a width.
class WideMarks : public EvenMeasurer {
public:
    double width_mm(FontRole, double size_pt, std::string_view utf8) const override {
        return static_cast<double>(codePoints(utf8).size()) * 0.5 * size_pt * mmPerPoint;
    }
};

TEST(LineBreaker, NeverPartsAMarkFromItsLetter) {
    EXPECT_EQ(brokenAt(2, "aбв\u0301г"), (Lines{"aб", "в\u0301г"}));
    const WideMarks wide;
    EXPECT_EQ(breakLines(wide, FontRole::body, 10, "aв\u0301г", 2 * 5 * mmPerPoint),
              (Lines{"a", "в\u0301", "г"}));
}

TEST(LineBreaker, GivesACharacterWiderThanTheLineALineOfItsOwn) {
    const EvenMeasurer measurer;
    EXPECT_EQ(breakLines(measurer, FontRole::body, 10, "abc", 0.1), (Lines{"a", "b", "c"}));
}

TEST(LineBreaker, BreaksAfterHyphensBetweenLettersOnly) {
    EXPECT_EQ(brokenAt(8, "linseed-oil"), (Lines{"linseed-", "oil"}));
    EXPECT_EQ(brokenAt(6, "proof 7/30"), (Lines{"proof", "7/30"}));
    EXPECT_EQ(brokenAt(9, "in 2004-06"), (Lines{"in", "2004-06"}));
}

TEST(LineBreaker, HoldsWordsTogetherAtNoBreakSpaces) {
    EXPECT_EQ(brokenAt(6, "at 52\u00A0g"), (Lines{"at", "52\u00A0g"}));
}

TEST(LineBreaker, BreaksBetweenEastAsianCharacters) {
    EXPECT_EQ(brokenAt(3, "木版画摺師"), (Lines{"木版画", "摺師"}));
}

// The rules of JIS X 4051 for the beginnings and ends of lines, from memory.
TEST(LineBreaker, BeginsNoLineWithAStopASmallKanaOrAClosingBracket) {
    EXPECT_EQ(brokenAt(4, "版木と紙、摺り"), (Lines{"版木と", "紙、摺り"}));
    EXPECT_EQ(brokenAt(3, "ステッカー"), (Lines{"ステッ", "カー"}));
    EXPECT_EQ(brokenAt(3, "カーテン"), (Lines{"カーテ", "ン"}));
    EXPECT_EQ(brokenAt(3, "紙板メディア"), (Lines{"紙板メ", "ディア"}));
    EXPECT_EQ(brokenAt(3, "色は「青緑」だ"), (Lines{"色は", "「青", "緑」だ"}));
    EXPECT_EQ(brokenAt(3, "色は（青）だ"), (Lines{"色は", "（青）", "だ"}));
}

TEST(LineBreaker, BreaksJapaneseBesideLatinLettersButNotBehindAFigure) {
    EXPECT_EQ(brokenAt(5, "顔料PB15青"), (Lines{"顔料", "PB15青"}));
    EXPECT_EQ(brokenAt(7, "2026年3月20日"), (Lines{"2026年3月", "20日"}));
    EXPECT_EQ(brokenAt(4, "紙は5\u00A0g"), (Lines{"紙は", "5\u00A0g"}));
}

}  // namespace
}  // namespace rackbook
