#include "cli/HarmlessStream.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "cli/Console.h"

namespace rackbook {
namespace {

std::string shown(const std::string& text, bool colours = false) {
    std::ostringstream out;
    {
        HarmlessStream stream(out, colours);
        stream << text;
    }
    return out.str();
}

TEST(HarmlessStream, LeavesTextAlone) {
    for (const std::string text :
         {"", "plain\n\ttext\n", "a\r\nb\r\n", "ü 版画 🎨 \u200B\u00AD", "\uFEFFa"})
        EXPECT_EQ(shown(text), text);
}

// C0 and C1 are those of ECMA-48, the directional characters those of Unicode's annex 9.
TEST(HarmlessStream, WritesWhatSteersAsEscapes) {
    EXPECT_EQ(shown("a\x1b[2Jb"), "a\\u001B[2Jb");
    EXPECT_EQ(shown("\a\b\v\f\x7F"), "\\u0007\\u0008\\u000B\\u000C\\u007F");
    EXPECT_EQ(shown(std::string("a\0b", 3)), "a\\u0000b");
    EXPECT_EQ(shown("\u0085\u009b31m\u009d0;x\u009c"), "\\u0085\\u009B31m\\u009D0;x\\u009C");
    EXPECT_EQ(shown("\u202Ea\u202C\u2066\u2069\u2028\u2029"),
              "\\u202Ea\\u202C\\u2066\\u2069\\u2028\\u2029");
    EXPECT_EQ(shown("50 %\rall"), "50 %\\u000Dall");
    EXPECT_EQ(shown("a\r"), "a\\u000D");
}

TEST(HarmlessStream, WritesBytesThatAreNoTextAsMarks) {
    EXPECT_EQ(shown("a\x9b"
                    "31m"),
              "a\\uFFFD31m");
    EXPECT_EQ(shown("a\xc3"), "a\\uFFFD");
    EXPECT_EQ(shown("\xf0\x9f\x8e"), "\\uFFFD\\uFFFD\\uFFFD");
    EXPECT_EQ(shown("\xed\xa0\x80x"), "\\uFFFD\\uFFFD\\uFFFDx");
    EXPECT_EQ(shown("\xc3\x1b[m"), "\\uFFFD\\u001B[m");
}

// However it comes: at once or byte by byte.
TEST(HarmlessStream, PutsTogetherWhatComesInPieces) {
    const std::string text =
        "a\u009b ü 🎨\r\nb\r\x1b[1mbold\x1b[0m \x1b[31mred\x1b[0m\x1b[32m\x1b\x1b[1m\xf0\x9f x\x1b[";
    for (const bool colours : {false, true}) {
        std::ostringstream out;
        {
            HarmlessStream stream(out, colours);
            for (const char c : text)
                stream << c << std::flush;
        }
        EXPECT_EQ(out.str(), shown(text, colours));
    }
    EXPECT_EQ(shown(text, true),
              "a\\u009B ü 🎨\r\nb\\u000D\x1b[1mbold\x1b[0m \x1b[31mred\x1b[0m\\u001B[32m\\u001B"
              "\x1b[1m\\uFFFD\\uFFFD x\\u001B[");
}

TEST(HarmlessStream, LetsTheConsolesOwnColoursThrough) {
    std::ostringstream out;
    HarmlessStream stream(out, true);
    ConsoleTraits traits;
    traits.outIsTerminal = traits.errIsTerminal = traits.allowsColour = true;
    const Console console(stream, stream, traits);
    stream << console.emphasis("a") << console.warningColour("b");
    EXPECT_EQ(out.str(), console.emphasis("a") + console.warningColour("b"));
    EXPECT_NE(out.str().find('\x1b'), std::string::npos);
}

TEST(HarmlessStream, TellsThatNothingMoreCanBeWritten) {
    std::ofstream full("/dev/full");
    HarmlessStream stream(full, false);
    stream << "a";
    stream.flush();
    EXPECT_FALSE(stream);
}

TEST(HarmlessStream, GivesWayToBytes) {
    std::ostringstream out;
    HarmlessStream stream(out, false);
    streamBehind(stream) << "%PDF\xff\r\x1b";
    EXPECT_EQ(out.str(), "%PDF\xff\r\x1b");
    EXPECT_EQ(&streamBehind(out), &out);
}

}  // namespace
}  // namespace rackbook
