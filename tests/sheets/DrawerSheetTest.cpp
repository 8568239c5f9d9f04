#include "sheets/DrawerSheet.h"

#include <gtest/gtest.h>

#include "DrawerBook.h"
#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

const test::SheetMeasurer measurer;

PageModel sheetOf(const DrawerFacts& facts, const std::string& language = "en") {
    const SheetTemplate shipped = test::shippedTemplate("drawer", drawerSheetRules(), language);
    return drawerSheet(facts, shipped, measurer, test::fixedClock);
}

std::string lineWith(const PageModel& model, const std::string& text) {
    const std::string all = test::linesOf(model);
    const std::size_t at = all.find("  " + text);
    if (at == std::string::npos)
        return "(no such line)";
    return all.substr(at + 2, all.find('\n', at) - at - 2);
}

TEST(DrawerSheet, SaysTheDayAndWhatLiesThere) {
    const PageModel model = sheetOf(test::drawerFacts());
    EXPECT_TRUE(test::says(model, "Plan chest, drawer 3 What lies there on 20 March 2026"));
    EXPECT_EQ(lineWith(model, "Lie there"), "Lie there | 6, with room for 60");
    EXPECT_EQ(lineWith(model, "May still"), "May still need light | 3");
    EXPECT_EQ(lineWith(model, "To be aired now"), "To be aired now | 2");
    EXPECT_EQ(lineWith(model, "Not known"), "Not known to be dry | 2");
    EXPECT_TRUE(test::says(model, "Harbour (HB)"));
    EXPECT_TRUE(test::says(model, "Other (ZZ)"));
    EXPECT_EQ(lineWith(model, "3/5"), "3/5 | 3 | 2026-03-01 | yes | dry | ready");
    EXPECT_EQ(lineWith(model, "not signed | 9"),
              "not signed | 9 | by 2019-12-31 | no | no look | spoiled");
    expectTidy(model, Margins{});
}

TEST(DrawerSheet, GathersWhatMustComeOut) {
    const PageModel model = sheetOf(test::drawerFacts());
    EXPECT_EQ(lineWith(model, "HB 1, 2"), "HB 1, 2 | 1/5, 2/5 | 2026-02-03 | 2026-03-05, due");
    EXPECT_EQ(lineWith(model, "ZZ 4"), "ZZ 4 | not signed | 2026-03-10 | 2026-04-09");
    const std::string all = test::wordsOf(model);
    EXPECT_LT(all.find("Bring out into light"), all.find("Look at it, and touch a corner"));
    EXPECT_TRUE(test::says(model, "aired after 30 days in the dark (our guess, no source)"));
}

TEST(DrawerSheet, SaysWhatLiesBesideSoftPrints) {
    const PageModel model = sheetOf(test::drawerFacts());
    EXPECT_TRUE(test::says(model, "HB 1, 2"));
    EXPECT_TRUE(test::says(model, "tacky"));
    EXPECT_TRUE(test::says(model, "(interleaved)"));
    EXPECT_TRUE(test::says(model, "ZZ 4, 5"));
    EXPECT_TRUE(test::says(model, "may stick to what lies on it"));
}

TEST(DrawerSheet, SaysWhereItIsTooFullOrEmpty) {
    DrawerFacts facts = test::drawerFacts();
    facts.capacity = 5;
    EXPECT_EQ(lineWith(sheetOf(facts), "Lie there"),
              "Lie there | 6, more than the 5 that it is meant for");
    facts.capacity.reset();
    EXPECT_EQ(lineWith(sheetOf(facts), "Lie there"), "Lie there | 6");
    facts.prints.clear();
    facts.soft.clear();
    const PageModel empty = sheetOf(facts);
    EXPECT_EQ(lineWith(empty, "Lie there"), "Lie there | none");
    EXPECT_TRUE(test::says(empty, "No impression lies there."));
    EXPECT_FALSE(test::says(empty, "Nothing:"));
}

TEST(DrawerSheet, SaysSoWhereNothingMustComeOut) {
    DrawerFacts facts = test::drawerFacts();
    facts.soft.clear();
    for (DrawerPrint& print : facts.prints) {
        print.mayNeedLight = print.isAiringDue = false;
        print.verdict = Verdict::ready;
    }
    const PageModel model = sheetOf(facts);
    EXPECT_TRUE(test::says(model, "Nothing: whatever lies there is ready"));
    EXPECT_TRUE(test::says(model, "Nothing: a look found everything dry"));
}

TEST(DrawerSheet, IsTidyWithThreeHundredPrintsInEveryLanguage) {
    DrawerFacts facts = test::drawerFacts();
    DrawerPrint print = facts.prints.front();
    for (int number = 100; number < 400; ++number) {
        print.workingNumber = number;
        print.designation = "AP " + std::to_string(number) + "/CCC";
        facts.prints.push_back(print);
    }
    for (const char* language : {"de", "en", "es", "fr", "ja"})
        expectTidy(sheetOf(facts, language), Margins{});
    const std::string all = test::wordsOf(sheetOf(facts));
    for (int number = 100; number < 400; ++number)
        EXPECT_NE(all.find("\nAP " + std::to_string(number) + "/CCC\n"), std::string::npos);
}

}  // namespace
}  // namespace rackbook
