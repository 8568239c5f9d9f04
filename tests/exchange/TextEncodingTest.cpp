#include "exchange/TextEncoding.h"

#include <gtest/gtest.h>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

DecodedText decoded(const std::string& bytes, const std::optional<std::string>& encoding = {},
                    EncodingGuess guess = EncodingGuess::none) {
    return decodedText(bytes, encoding, guess, "t.csv");
}

std::string refusalOf(const std::string& bytes, const std::optional<std::string>& encoding = {}) {
    return test::messageOf<InputError>([&] { decoded(bytes, encoding); });
}

std::string bytesOf(std::initializer_list<int> values) {
    std::string bytes;
    for (const int value : values)
        bytes += static_cast<char>(value);
    return bytes;
}

// The byte order marks of the Unicode Standard, section 23.8.
TEST(TextEncoding, FollowsByteOrderMarks) {
    const DecodedText utf8 = decoded("\xEF\xBB\xBF\xC3\xBC;b");
    EXPECT_EQ(utf8.text, "ü;b");
    EXPECT_EQ(utf8.encoding, "utf-8");
    EXPECT_TRUE(utf8.hasMark);
    const DecodedText little = decoded(bytesOf({0xFF, 0xFE, 0xFC, 0, 'b', 0}));
    EXPECT_EQ(little.text, "üb");
    EXPECT_EQ(little.encoding, "utf-16le");
    const DecodedText big = decoded(bytesOf({0xFE, 0xFF, 0, 0xFC, 0xD8, 0x3D, 0xDE, 0x00}));
    EXPECT_EQ(big.text, "ü😀");
    EXPECT_EQ(big.encoding, "utf-16be");
}

TEST(TextEncoding, KnowsUtf16WithoutAMark) {
    EXPECT_EQ(decoded(bytesOf({'a', 0, ';', 0, 'b', 0, '\n', 0})).text, "a;b\n");
    EXPECT_EQ(decoded(bytesOf({0, 'a', 0, ';', 0, 'b', 0, '\n'})).text, "a;b\n");
}

// Code points from the table of Windows-1252 that the WHATWG Encoding Standard publishes.
TEST(TextEncoding, ReadsWindows1252WhereItIsSaidOrGuessed) {
    const std::string bytes = "\x80 \x84x\x93 \xE4\xF6\xFC\xDF \x96";
    const std::string text = "€ „x“ äöüß –";
    EXPECT_EQ(decoded(bytes, "windows-1252").text, text);
    EXPECT_FALSE(decoded(bytes, "windows-1252").isGuess);
    const DecodedText guess = decoded(bytes, {}, EncodingGuess::windows1252);
    EXPECT_EQ(guess.text, text);
    EXPECT_TRUE(guess.isGuess);
    EXPECT_FALSE(decoded("\xC3\xBC", {}, EncodingGuess::windows1252).isGuess);
}

TEST(TextEncoding, KnowsEveryEncodingThatItNames) {
    for (const std::string& name : knownEncodings())
        if (name.rfind("utf-16", 0) != 0) {
            EXPECT_EQ(decoded("a;b", name).text, "a;b") << name;
        }
}

TEST(TextEncoding, RefusesWhatIsNotThatText) {
    EXPECT_EQ(
        refusalOf("a\nb\xFC"),
        "t.csv:2: the text is not UTF-8. Say in the mapping what it is, such as \"encoding\": "
        "\"windows-1252\"; rackbook take-table FILE shows what it looks like.");
    EXPECT_EQ(refusalOf("a\n\x81", "windows-1252"),
              "t.csv:2: the file holds bytes that windows-1252 does not have. Say another "
              "encoding, or save the file as UTF-8.");
    EXPECT_EQ(refusalOf("\xEF\xBB\xBFx", "windows-1252"),
              "t.csv: the file begins with the mark of utf-8, and windows-1252 is said. Leave the "
              "encoding out.");
    EXPECT_EQ(refusalOf(bytesOf({0xFF, 0xFE, 'a'})),
              "t.csv:1: the file holds bytes that utf-16le does not have. Say another encoding, or "
              "save the file as UTF-8.");
    EXPECT_EQ(refusalOf("PK\x03\x04more"),
              "t.csv: this is a spreadsheet document or another archive, no CSV text. Open it in "
              "the spreadsheet and save its sheet as CSV.");
    EXPECT_EQ(refusalOf(" \n"), "t.csv: the file is empty. Export it again.");
    EXPECT_EQ(refusalOf("a\x01"),
              "t.csv:1: the file holds bytes that are no text. Give a table as CSV text, or say "
              "another encoding.");
}

TEST(TextEncoding, MakesLineBreaksOfLoneCarriageReturns) {
    EXPECT_EQ(decoded("a\rb\r").text, "a\nb\n");
    EXPECT_EQ(decoded("a\r\nb").text, "a\r\nb");
}

}  // namespace
}  // namespace rackbook
