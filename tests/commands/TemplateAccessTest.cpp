#include "commands/TemplateAccess.h"

#include <gtest/gtest.h>

#include "Script.h"
#include "base/Files.h"
#include "sheets/EditionSheet.h"

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
