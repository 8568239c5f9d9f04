#include "sheets/MixBookSheet.h"

#include <gtest/gtest.h>

#include "InkSheetFacts.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

using test::mixBook;
using test::onDay;

const test::SheetMeasurer measurer;

MixBookFacts factsOf(const RecordSet& records, const char* day = "2026-03-20") {
    return mixBookFactsOf(records, std::nullopt, onDay(day));
}

// Its account is part of the facts: of facts that are made for the call nothing would be left.
const MixAccount& accountOf(MixBookFacts&&, const std::string&) = delete;

const MixAccount& accountOf(const MixBookFacts& facts, const std::string& id) {
    for (const MixesOfEdition& edition : facts.editions)
        for (const MixAccount& account : edition.mixes)
            if (account.mix.id == id)
                return account;
    throw std::out_of_range(id);
}

PageModel sheetOf(const MixBookFacts& facts, const std::string& language = "en") {
    return mixBookSheet(facts, test::shippedTemplate("mixes", mixBookSheetRules(), language),
                        measurer, test::fixedClock);
}

// By hand: 18 / 24 and 6 / 24; 24 − 2.3; 72 − 24; 0.48 / 24.48 = 1.961 %; 24.48 − 9 printed.
TEST(MixBookSheet, KeepsAccountsThatAddUp) {
    const MixBookFacts facts = factsOf(mixBook().records);
    const MixAccount& stock = accountOf(facts, "Straw stock");
    ASSERT_EQ(stock.in.size(), 2u);
    EXPECT_NEAR(stock.in[0].share.best, 0.75, 1e-12);
    EXPECT_NEAR(stock.in[1].share.best, 0.25, 1e-12);
    EXPECT_NEAR(stock.left_g.best, 21.7, 1e-9);
    EXPECT_NEAR(accountOf(facts, "Straw let-down").left_g.best, 48, 1e-9);
    const MixAccount& portion = accountOf(facts, "Straw portion");
    EXPECT_NEAR(portion.drierShare.best, 0.48 / 24.48, 1e-9);
    EXPECT_NEAR(portion.left_g.best, 15.48, 1e-9);
    const PageModel model = sheetOf(facts);
    EXPECT_TRUE(test::says(model, "Left by the book: 21.70 g"));
    EXPECT_TRUE(test::says(model, "with drier: 1.96 %"));
    EXPECT_TRUE(test::says(model, "→ printed: HB, layer 2, 8 sheets"));
}

// 50 g and 50 to 150 g: 25 to 50 %, and the other 50 to 75 %.
TEST(MixBookSheet, SaysHowBadlyAMassIsKnown) {
    const MixBookFacts facts = factsOf(mixBook().records);
    const MixAccount& guess = accountOf(facts, "guess");
    ASSERT_EQ(guess.in.size(), 2u);
    EXPECT_NEAR(guess.in[0].share.low, 0.25, 1e-12);
    EXPECT_NEAR(guess.in[0].share.high, 0.5, 1e-12);
    EXPECT_FALSE(guess.in[0].share.isKnown());
    EXPECT_NEAR(guess.in[1].share.low, 0.5, 1e-12);
    const PageModel model = sheetOf(facts);
    EXPECT_TRUE(test::says(model, "50.00–150.00"));
    EXPECT_TRUE(test::says(model, "25.00–50.00"));
}

TEST(MixBookSheet, FollowsMixesToTheLayersTheyWerePrintedIn) {
    const MixBookFacts facts = factsOf(mixBook().records);
    for (const char* id : {"Straw stock", "Straw let-down", "Straw portion"}) {
        const MixAccount& account = accountOf(facts, id);
        ASSERT_EQ(account.usedIn.size(), 1u) << id;
        EXPECT_EQ(account.usedIn[0].code, "HB");
        EXPECT_EQ(account.usedIn[0].layers, std::vector<int>{2}) << id;
    }
}

TEST(MixBookSheet, EndsWhereMixesFormARing) {
    build::Book book = mixBook();
    book.addMix("Straw stock", "Straw portion", 1, "2026-01-13");
    const MixBookFacts facts = factsOf(book.records);
    EXPECT_EQ(accountOf(facts, "Straw stock").usedIn.size(), 1u);
}

TEST(MixBookSheet, PointsOutDrierWhereThereShouldBeNone) {
    build::Book book = mixBook();
    book.addLot("Straw let-down", "cobalt", 1, "2026-01-13");
    const MixBookFacts facts = factsOf(book.records);
    EXPECT_EQ(accountOf(facts, "Straw stock").drier, DrierIn::declaredFree);
    EXPECT_EQ(accountOf(facts, "Straw let-down").drier, DrierIn::broken);
    EXPECT_TRUE(test::says(sheetOf(facts), "meant to be drier-free, but drier is in it"));
}

TEST(MixBookSheet, LeavesOutWhatCameLater) {
    const MixBookFacts early = factsOf(mixBook().records, "2026-01-06");
    const MixAccount& stock = accountOf(early, "Straw stock");
    EXPECT_NEAR(stock.left_g.best, 24, 1e-9);
    EXPECT_TRUE(stock.out.empty());
    EXPECT_TRUE(stock.usedIn.empty());
    EXPECT_THROW(accountOf(early, "Straw portion"), std::out_of_range);
}

TEST(MixBookSheet, ListsForOneEditionWhatItWasPrintedFrom) {
    build::Book book = mixBook();
    book.edition("ZZ").layer("ZZ", 1, [](Layer& r) { r.mix = Ref<Mix>{"Straw let-down"}; });
    const MixBookFacts facts = mixBookFactsOf(book.records, "ZZ", onDay("2026-03-20"));
    EXPECT_NO_THROW(accountOf(facts, "Straw let-down"));
    EXPECT_NO_THROW(accountOf(facts, "Straw stock"));
    EXPECT_THROW(accountOf(facts, "Straw portion"), std::out_of_range);
    EXPECT_THROW(accountOf(facts, "guess"), std::out_of_range);
}

TEST(MixBookSheet, SaysWhereNothingIsRecorded) {
    build::Book book;
    EXPECT_TRUE(test::says(sheetOf(factsOf(book.records)), "No mix is recorded."));
    book.mix("old", MixPurpose::stock);
    const PageModel model = sheetOf(factsOf(book.records));
    EXPECT_TRUE(test::says(model, "What went in was never weighed"));
    EXPECT_TRUE(test::says(model, "drier not known"));
    EXPECT_TRUE(test::says(model, "Left by the book: not known"));
}

TEST(MixBookSheet, TellsNothingPrivate) {
    const std::string all = test::wordsOf(sheetOf(factsOf(mixBook().records)));
    for (const char* word : {"Secret", "private"})
        EXPECT_EQ(all.find(word), std::string::npos) << word;
}

TEST(MixBookSheet, IsTidyOverManyPages) {
    build::Book book = mixBook();
    for (int i = 0; i < 80; ++i) {
        const std::string id =
            "A mix with a name that is long enough for two lines, of the many "
            "that were tried and put aside before one was found, number " +
            std::to_string(i);
        book.mix(id, MixPurpose::letDown);
        for (int part = 0; part < i % 20; ++part)
            book.addLot(id, part % 2 ? "ochre" : "clear", 1 + part,
                        "2026-01-" + std::string(part < 9 ? "0" : "") + std::to_string(part + 1));
    }
    for (const char* language : {"en", "de", "fr", "es", "ja"}) {
        const PageModel model = sheetOf(factsOf(book.records), language);
        expectTidy(model, Margins{});
        EXPECT_GT(model.pages.size(), 3u);
    }
}

TEST(MixBookSheet, WarnsWherePortionsHoldDrier) {
    EXPECT_TRUE(
        test::says(sheetOf(factsOf(test::mixBook().records)), "Portions with drier: gloves"));
}

}  // namespace
}  // namespace rackbook
