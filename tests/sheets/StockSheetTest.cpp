#include "sheets/StockSheet.h"

#include <gtest/gtest.h>

#include "InkSheetFacts.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

const test::SheetMeasurer measurer;

PageModel sheetOf(const StockSheetFacts& facts, const std::string& language = "en") {
    return stockSheet(facts, test::shippedTemplate("stock", stockSheetRules(), language), measurer,
                      test::fixedClock);
}

// From 2023-06-10 to 2026-03-20 are 1014 days: 2.776 years of 365.25 days. From 2024-10-11 are
// 17 months of the calendar and 9 days. 730 days are two years, 1825 are five.
TEST(StockSheet, TellsAgesAndUsualLives) {
    const PageModel model = sheetOf(test::stockFacts());
    for (const char* words : {"2.7 years", "usually 2 years", "17 months", "usually 5 years"})
        EXPECT_TRUE(test::says(model, std::string(" ") + words + " ")) << words;
    EXPECT_TRUE(test::says(model, "Open longer than it usually keeps: look under the skin"));
    EXPECT_TRUE(test::says(model, "Less than a month of use left"));
    EXPECT_TRUE(test::says(model, "common practice, no source") ||
                test::says(model, "our guess, no source"));
}

TEST(StockSheet, CallsADayADayAndABadlyKnownAgeARange) {
    StockSheetFacts facts = test::stockFacts();
    facts.open[test::blue].lot.openedOn = build::on("2026-03-19");
    facts.open[test::red].lot.openedOn = build::on("1998");
    const PageModel model = sheetOf(facts);
    EXPECT_TRUE(test::says(model, " 1 day "));
    // 1998-12-31 and 1998-01-01 to 2026-03-20: 27.2 and 28.2 years.
    EXPECT_TRUE(test::says(model, "27.2–28.2 years"));
}

TEST(StockSheet, PutsWhatIsOldOrLowFirst) {
    const std::string all = test::wordsOf(sheetOf(test::stockFacts()));
    const std::size_t lists = all.find("\nOpen, or not yet opened\n");
    const std::string first = all.substr(0, lists);
    EXPECT_NE(first.find("blue-1"), std::string::npos);
    EXPECT_NE(first.find("red-1"), std::string::npos);
    EXPECT_EQ(first.find("base-1"), std::string::npos);
    EXPECT_LT(first.find("blue-1"), first.find("red-1"));
    StockSheetFacts calm = test::stockFacts();
    for (StockLine& line : calm.open)
        line.isOld = line.isRunningLow = false;
    EXPECT_TRUE(test::says(sheetOf(calm), "Nothing: no open lot is old or running low."));
}

TEST(StockSheet, GivesTheRangeOfWhatIsLeftAndTheCount) {
    const PageModel model = sheetOf(test::stockFacts());
    EXPECT_TRUE(test::says(model, "3.0 (2.5–3.5)"));
    EXPECT_TRUE(test::says(model, "found 4.0 g, 2026-03-10"));
}

TEST(StockSheet, ListsWhatIsFinishedApart) {
    const std::string all = test::wordsOf(sheetOf(test::stockFacts()));
    const std::size_t finished = all.find("\nFinished\n");
    ASSERT_NE(finished, std::string::npos);
    EXPECT_EQ(all.substr(0, finished).find("yellow-1"), std::string::npos);
    EXPECT_NE(all.find("yellow-1", finished), std::string::npos);
}

TEST(StockSheet, TellsNoPriceNoSupplierAndNoPlaceOutOfTheStudio) {
    const PageModel model = sheetOf(test::stockFacts());
    const std::string all = test::wordsOf(model);
    for (const char* word : {"1234", "1,234", "Secret", "private"})
        EXPECT_EQ(all.find(word), std::string::npos) << word;
    EXPECT_TRUE(test::says(model, " not in "));
}

TEST(StockSheet, WarnsOfDriers) {
    EXPECT_TRUE(test::says(sheetOf(test::stockFacts()), "Driers hold metal compounds"));
    StockSheetFacts facts = test::stockFacts();
    facts.open.erase(facts.open.begin() + test::drier);
    EXPECT_FALSE(test::says(sheetOf(facts), "Driers hold metal compounds"));
}

TEST(StockSheet, SaysNotKnownWhereNothingIsRecorded) {
    StockSheetFacts facts;
    facts.open.emplace_back();
    facts.open.back().lot.id = "mystery";
    facts.open.back().lot.colourWords = "Label lost";
    facts.open.back().usualLife_days = 730;
    facts.open.back().lacksMass = true;
    const PageModel model = sheetOf(facts);
    EXPECT_TRUE(test::says(model, "What was in it is not recorded"));
    EXPECT_TRUE(test::says(model, "not known"));
    EXPECT_TRUE(test::says(model, "not recorded"));
    EXPECT_TRUE(test::says(sheetOf(StockSheetFacts{}), "No lot is open, by the book."));
}

TEST(StockSheet, IsTidyOverManyPages) {
    StockSheetFacts facts = test::stockFacts();
    for (int i = 0; i < 120; ++i) {
        StockLine line = facts.open[static_cast<std::size_t>(i) % 4];
        line.lot.id = "a-lot-with-a-rather-long-name-" + std::to_string(i);
        line.place = "The shelf behind the door of the inner room, second from below";
        facts.open.push_back(std::move(line));
    }
    for (const char* language : {"en", "de", "fr", "es", "ja"}) {
        const PageModel model = sheetOf(facts, language);
        expectTidy(model, Margins{});
        EXPECT_GT(model.pages.size(), 4u);
    }
}

// Counted by the calendar: on 19 March 2026 what was opened on 19 January has been open for two
// months (59 days), on the 18th of March not yet; from 31 December the last day of February makes
// two. Where nothing was weighed out, nothing is called so.
TEST(StockSheet, CountsMonthsByTheCalendar) {
    StockSheetFacts facts = test::stockFacts();
    const auto ageOn = [&](const char* opened, const char* day) {
        facts.open[test::red].lot.openedOn = build::on(opened);
        facts.asOf = test::onDay(day);
        return test::wordsOf(sheetOf(facts));
    };
    EXPECT_NE(ageOn("2026-01-19", "2026-03-19").find("\n2 months\n"), std::string::npos);
    EXPECT_NE(ageOn("2026-01-19", "2026-03-18").find("\n58 days\n"), std::string::npos);
    EXPECT_NE(ageOn("2025-12-31", "2026-02-28").find("\n2 months\n"), std::string::npos);
    EXPECT_NE(ageOn("2024-10-11", "2026-03-11").find("\n17 months\n"), std::string::npos);
    EXPECT_NE(ageOn("2024-10-11", "2026-03-10").find("\n16 months\n"), std::string::npos);
    facts.finished.front().used_g = Estimate::exactly(0);
    const std::string all = test::linesOf(sheetOf(facts));
    EXPECT_EQ(all.find("| 0.0"), std::string::npos) << all;
}

}  // namespace
}  // namespace rackbook
