#include "cli/Wrap.h"

#include <gtest/gtest.h>

#include "base/Text.h"

namespace rackbook {
namespace {

using Lines = std::vector<std::string>;

TEST(Wrap, FillsLinesToTheWidthAndNoFurther) {
    EXPECT_EQ(wrapped("one two three", 7), Lines({"one two", "three"}));
    EXPECT_EQ(wrapped("one two three", 6), Lines({"one", "two", "three"}));
}

TEST(Wrap, CountsRunsOfSpaceAsOne) {
    EXPECT_EQ(wrapped("  a \t\n b  ", 10), Lines({"a b"}));
    EXPECT_EQ(wrapped("", 10), Lines({""}));
    EXPECT_EQ(wrapped(" ", 10), Lines({""}));
}

TEST(Wrap, KeepsWordsWhole) {
    EXPECT_EQ(wrapped("a incomprehensible b", 5), Lines({"a", "incomprehensible", "b"}));
    EXPECT_EQ(widestPiece("a incomprehensible b"), 16);
    EXPECT_EQ(wrapped("word", 0), Lines({"word"}));
}

TEST(Wrap, MeasuresColumnsNotBytes) {
    EXPECT_EQ(wrapped("éé éé éé", 5), Lines({"éé éé", "éé"}));
    EXPECT_EQ(wrapped("e\u0301e\u0301 e\u0301e\u0301", 5),
              Lines({"e\u0301e\u0301 e\u0301e\u0301"}));
}

TEST(Wrap, KeepsNoBreakSpaces) {
    EXPECT_EQ(wrapped("aa 12\u00A0mm", 6), Lines({"aa", "12\u00A0mm"}));
}

TEST(Wrap, BreaksBetweenWideCharacters) {
    EXPECT_EQ(wrapped("木版画の記録", 8), Lines({"木版画の", "記録"}));
    EXPECT_EQ(widestPiece("木版画"), 2);
}

TEST(Wrap, KeepsMarksWithTheirWideCharacters) {
    EXPECT_EQ(wrapped("木版画。記録", 6), Lines({"木版", "画。記", "録"}));
    EXPECT_EQ(wrapped("木版「画」", 6), Lines({"木版", "「画」"}));
    EXPECT_EQ(wrapped("か\u3099か\u3099", 2), Lines({"か\u3099", "か\u3099"}));
}

TEST(Wrap, SeparatesParagraphsAndKeepsIndentedLines) {
    EXPECT_EQ(wrappedParagraphs("one\ntwo three\n\n\nfour:\n  1-12,  15\nfive", 9, 2),
              "  one two\n"
              "  three\n"
              "\n"
              "  four:\n"
              "    1-12,  15\n"
              "  five\n");
    EXPECT_EQ(wrappedParagraphs("", 10), "");
    EXPECT_EQ(wrappedParagraphs("\n\na\n\n", 10), "a\n");
}

}  // namespace
}  // namespace rackbook
