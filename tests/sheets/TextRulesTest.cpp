#include "sheets/TextRules.h"

#include <gtest/gtest.h>

#include "ErrorText.h"
#include "EvenMeasurer.h"

namespace rackbook {
namespace {

const EvenMeasurer measurer;

std::string set(const std::string& text) {
    return settable(measurer, FontRole::body, text, "sheet \"A\"");
}

std::string refusal(const std::string& text) {
    return messageOf<RenderError>([&] { set(text); });
}

TEST(TextRules, ComposesToNormalFormC) {
    EXPECT_EQ(set("Ve\u030Cer"), "V\u011Ber");
}

TEST(TextRules, LeavesOutWhatIsNotDrawnAndTurnsTabsToSpaces) {
    EXPECT_EQ(set("re\u00ADlief\tprint\u200B\uFEFFing\nnext"), "relief printing\nnext");
}

TEST(TextRules, RefusesBytesThatAreNotUtf8) {
    EXPECT_EQ(refusal("ink\xFF"),
              "sheet \"A\": the text \"ink\\uFFFD\" is not UTF-8. Write the text again in UTF-8.");
}

TEST(TextRules, RefusesControlCharacters) {
    EXPECT_EQ(refusal("ink\x07"),
              "sheet \"A\": the text \"ink\\u0007\" holds the control character U+0007. Take the "
              "character out.");
}

TEST(TextRules, RefusesScriptsThatItWouldSpoil) {
    EXPECT_EQ(refusal("Abend \u05D0"),
              "sheet \"A\": the text \"Abend \u05D0\" holds U+05D0 (Hebrew), which runs from right "
              "to left or joins its letters; a sheet cannot set it. Write the text in a script "
              "whose letters stand apart and run from left to right.");
}

// Code charts of the Unicode Standard: alef, beh, ka, ka, ko kai, presentation form of beh.
TEST(TextRules, KnowsTheScriptOfEachRefusal) {
    EXPECT_STREQ(unsettableScript(0x0627)->name, "Arabic");
    EXPECT_STREQ(unsettableScript(0x0915)->name, "Devanagari");
    EXPECT_STREQ(unsettableScript(0x0B95)->name, "Tamil");
    EXPECT_STREQ(unsettableScript(0x0E01)->name, "Thai");
    EXPECT_STREQ(unsettableScript(0xFE8F)->name, "Arabic");
    EXPECT_STREQ(unsettableScript(0x200F)->name, "direction mark");
    EXPECT_FALSE(unsettableScript(0x0439));
    EXPECT_FALSE(unsettableScript(0x03A9));
    EXPECT_FALSE(unsettableScript(0x6F22));
}

TEST(TextRules, NamesTheCharacterThatNoFontHas) {
    EXPECT_EQ(refusal("Blue \U0001F600 ink"),
              "sheet \"A\": no font of this sheet has U+1F600 in \"Blue \U0001F600 ink\". Write "
              "the text without it, or add a font family that has it to the template.");
}

TEST(TextRules, NamesCodePointsInAtLeastFourDigits) {
    EXPECT_EQ(codePointName(0x41), "U+0041");
    EXPECT_EQ(codePointName(0x10FFFF), "U+10FFFF");
}

}  // namespace
}  // namespace rackbook
