#include "commands/TemplateAccess.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include "Script.h"
#include "base/Files.h"
#include "sheets/EditionSheet.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

// What a studio would write by hand, in a folder of its own.
class TemplateAccess : public ::testing::Test {
protected:
    static void write(const std::string& file, const std::string& text) {
        makeFolder(folderOf(file));
        writeFileSafely(file, text);
    }

    static std::string shippedWords(const std::string& file) {
        return readFile(std::string(RACKBOOK_SOURCE) + "/templates/words/" + file, 1 << 20);
    }

    static SheetTemplate read(const std::string& file) {
        TemplateWish wish;
        wish.sheet = "edition";
        wish.file = file;
        const TemplateSource source = templatesInFiles(std::string(RACKBOOK_SOURCE) + "/templates");
        return SheetTemplate::read(gatherTemplate(source, wish), editionSheetRules());
    }

    FreshFolder m_folder;
};

TEST_F(TemplateAccess, ReadsATemplateThatIsBasedOnAShippedOne) {
    write("own/mine.json", R"({"basedOn": "wide.json", "labels": {"signatures": "By hand"}})");
    write("own/wide.json", R"({"basedOn": "edition.json", "margins_mm": {"left": 30}})");
    const SheetTemplate mine = read("own/mine.json");
    EXPECT_EQ(mine.label("signatures"), "By hand");
    EXPECT_EQ(mine.label("statement"), "Statement");
    EXPECT_DOUBLE_EQ(mine.flowSetup().margins.left_mm, 30);
    EXPECT_DOUBLE_EQ(mine.flowSetup().margins.right_mm, 18);
}

TEST_F(TemplateAccess, RefusesWhatIsNoTemplate) {
    const auto refusal = [](const std::string& text) {
        write("own/mine.json", text);
        return test::messageOf([] { read("own/mine.json"); });
    };
    const std::string noObject =
        "own/mine.json: this is not an object. Write the members in braces.";
    EXPECT_EQ(refusal("[]"), noObject);
    EXPECT_EQ(refusal("null"), noObject);
    const std::string noName =
        "own/mine.json /basedOn: this is no name of a file. Name a file beside this one, or one "
        "that comes with the program.";
    EXPECT_EQ(refusal(R"({"basedOn": ""})"), noName);
    EXPECT_EQ(refusal(R"({"basedOn": "a\u0000b"})"), noName);
    ASSERT_EQ(mkfifo("own/pipe.json", 0600), 0);
    EXPECT_EQ(test::messageOf([] { read("own/pipe.json"); }),
              "own/pipe.json: it is no file. Name a file.");
    EXPECT_EQ(refusal(R"({"basedOn": "pipe.json"})"), "own/pipe.json: it is no file. Name a file.");
}

TEST_F(TemplateAccess, FindsALanguageBesideAStudiosTemplate) {
    for (const char* name : {"common.json", "edition.json"}) {
        std::string words = shippedWords(std::string("en/") + name);
        words.replace(words.find("\"en\""), 4, "\"nl\"");
        write(std::string("own/words/nl/") + name, words);
    }
    write("own/mine.json", R"({"basedOn": "edition.json", "language": "nl"})");
    const SheetTemplate mine = read("own/mine.json");
    EXPECT_EQ(mine.language(), "nl");
    EXPECT_EQ(mine.locale().monthInDate(3), "maart");
    EXPECT_EQ(mine.locale().decimalSign(), ",");
}

}  // namespace
}  // namespace rackbook
