#include "calc/LotUse.h"

#include <gtest/gtest.h>

#include <cmath>

#include "base/Edtf.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;

TimeSpan on(const std::string& text) {
    const EdtfDate date = EdtfDate::parse(text);
    return {date.earliest(), date.latest()};
}

// One tin of 250 g for 150, opened on the first of January 2026; a mix that takes from it.
class LotUseTest : public testing::Test {
protected:
    LotUseTest() {
        history.lots = {LotKind::ink};
        history.mixCount = 1;
        lots.resize(1);
        lots[0].netMass_g = 250;
        lots[0].price = 150;
        lots[0].opened = on("2026-01-01T00:00");
    }

    HistoryWeighing& take(const std::string& at, double mass_g) {
        HistoryWeighing row;
        row.mix = 0;
        row.lot = 0;
        row.at = on(at);
        row.mass_g = mass_g;
        history.weighings.push_back(row);
        return history.weighings.back();
    }

    LotUse use(const std::string& asOf, double life_days = notKnown) const {
        std::vector<LotFacts> lived = lots;
        for (LotFacts& lot : lived)
            lot.openedLife_days = life_days;
        return useOfLots({history, lived, takes, on(asOf).latest}).at(0);
    }

    History history;
    std::vector<LotFacts> lots;
    std::vector<HistoryStockTake> takes;
};

void expectEstimate(const Estimate& estimate, double low, double best, double high) {
    EXPECT_NEAR(estimate.low, low, 1e-9);
    EXPECT_NEAR(estimate.best, best, 1e-9);
    EXPECT_NEAR(estimate.high, high, 1e-9);
}

TEST_F(LotUseTest, WhatIsLeftIsNetMassLessWhatWasTaken) {
    take("2026-01-10T10:00", 20);
    take("2026-02-10T10:00", 30);
    take("2026-04-10T10:00", 40);
    const LotUse found = use("2026-03-01T00:00");
    ASSERT_EQ(found.takings.size(), 2U);
    EXPECT_EQ(found.takings[1].weighing, 1U);
    expectEstimate(found.used_g, 50, 50, 50);
    expectEstimate(found.left_g, 200, 200, 200);
}

TEST_F(LotUseTest, OnlyAdditionsFromTheLotTakeFromIt) {
    take("2026-01-10T10:00", 20).act = WeighingAct::discard;
    take("2026-01-10T10:00", 20).fromMix = 0;
    take("2026-01-10T10:00", 20).mix = -1;
    EXPECT_EQ(use("2026-03-01").used_g.high, 0);
}

TEST_F(LotUseTest, BadlyKnownMassesCarryTheirBounds) {
    take("2026-01-10T10:00", 20);
    HistoryWeighing& row = take("2026-01-11T10:00", notKnown);
    row.massLow_g = 5;
    row.massHigh_g = 8;
    LotUse found = use("2026-03-01");
    EXPECT_DOUBLE_EQ(found.left_g.low, 222);
    EXPECT_FALSE(found.left_g.isKnown());
    EXPECT_DOUBLE_EQ(found.left_g.high, 225);
    take("2026-01-12T10:00", notKnown);
    found = use("2026-03-01");
    EXPECT_DOUBLE_EQ(found.left_g.low, 0);
    EXPECT_DOUBLE_EQ(found.left_g.high, 225);
    EXPECT_FALSE(found.runsOut.has_value());
}

TEST_F(LotUseTest, AStockTakeStartsAnewAndShowsTheDifference) {
    take("2026-01-10T10:00", 20);
    takes = {{0, on("2026-02-01T10:00"), 222}, {0, on("2026-03-01T10:00"), 180}};
    take("2026-02-10T10:00", 30);
    take("2026-03-10T10:00", 5);
    const LotUse found = use("2026-04-01");
    ASSERT_EQ(found.differences.size(), 2U);
    expectEstimate(found.differences[0].expected_g, 230, 230, 230);
    expectEstimate(found.differences[0].difference_g, -8, -8, -8);
    expectEstimate(found.differences[1].difference_g, -12, -12, -12);
    expectEstimate(found.left_g, 175, 175, 175);
    expectEstimate(found.used_g, 55, 55, 55);
    EXPECT_EQ(use("2026-02-15").differences.size(), 1U);
}

TEST_F(LotUseTest, AWeighingOnTheDayOfAStockTakeMayComeBeforeOrAfter) {
    take("2026-02-01T10:00", 20);
    takes = {{0, on("2026-02-01"), 225}};
    const LotUse found = use("2026-03-01");
    expectEstimate(found.left_g, 205, 225, 225);
    expectEstimate(found.differences.at(0).expected_g, 230, 230, 250);
    expectEstimate(found.differences.at(0).difference_g, -25, -5, -5);
}

TEST_F(LotUseTest, WithoutANetMassAStockTakeSaysWhatIsLeft) {
    lots[0].netMass_g = notKnown;
    take("2026-01-10T10:00", 20);
    LotUse found = use("2026-03-01");
    EXPECT_FALSE(found.left_g.isKnown());
    EXPECT_TRUE(std::isinf(found.left_g.high));
    takes = {{0, on("2026-02-01T10:00"), 100}};
    found = use("2026-03-01");
    expectEstimate(found.left_g, 100, 100, 100);
    EXPECT_TRUE(std::isnan(found.differences.at(0).difference_g.best));
}

// 730.56 days are 24 months; 365.28 days are 12.
TEST_F(LotUseTest, RatesOfTheLastYearAndSinceOpened) {
    lots[0].opened = on("2024-01-01T00:00");
    take("2024-03-01T10:00", 60);
    take("2025-06-01T10:00", 12);
    take("2025-09-01T10:00", 24);
    history.weighings.push_back(history.weighings.front());
    const CivilMinute asOf = on("2024-01-01T00:00").latest + 1051961;  // 730.5285 days
    const LotUse found = useOfLots({history, lots, takes, asOf + 45}).at(0);
    EXPECT_NEAR(found.sinceOpened.days, 730.56, 1e-3);
    EXPECT_EQ(found.sinceOpened.weighings, 4U);
    EXPECT_NEAR(found.sinceOpened.perMonth_g.best, 156.0 / 24, 1e-4);
    EXPECT_EQ(found.lastYear.weighings, 2U);
    EXPECT_NEAR(found.lastYear.days, 365.28, 1e-9);
    EXPECT_NEAR(found.lastYear.perMonth_g.best, 3, 1e-9);
    ASSERT_TRUE(found.runsOut.has_value());
    const double days = static_cast<double>(found.runsOut->latest - asOf) / minutesPerDay;
    EXPECT_NEAR(days, 94.0 / 3 * 30.44, 0.1);
    const double soonest = static_cast<double>(found.runsOut->earliest - asOf) / minutesPerDay;
    EXPECT_NEAR(soonest, 94.0 / 6.5 * 30.44, 0.1);
}

TEST_F(LotUseTest, ALotOpenedLatelyIsNotSpreadOverAYear) {
    take("2026-01-10T10:00", 20);
    const LotUse found = use("2026-03-02T21:07");  // 60.88 days
    EXPECT_NEAR(found.lastYear.days, 60.88, 1e-3);
    EXPECT_NEAR(found.lastYear.perMonth_g.best, 10, 1e-3);
}

TEST_F(LotUseTest, WithoutADateOfOpeningTheFirstWeighingCounts) {
    lots[0].opened.reset();
    take("2026-01-31T00:00", 20);
    const LotUse found = use("2026-03-02T00:00", 365);
    EXPECT_NEAR(found.sinceOpened.days, 30, 1e-9);
    EXPECT_FALSE(found.lifeEnds.has_value());
}

TEST_F(LotUseTest, ADayOrLessTellsNoRate) {
    take("2026-01-01T10:00", 20);
    const LotUse found = use("2026-01-01T12:00");
    EXPECT_FALSE(found.sinceOpened.perMonth_g.isKnown());
    EXPECT_FALSE(found.runsOut.has_value());
    EXPECT_EQ(found.sinceOpened.weighings, 1U);
}

TEST_F(LotUseTest, AnUnusedLotHasNoRateAndNoEnd) {
    const LotUse found = use("2026-06-01");
    EXPECT_EQ(found.sinceOpened.perMonth_g.best, 0);
    EXPECT_FALSE(found.runsOut.has_value());
    EXPECT_FALSE(found.costPerGram.isKnown());
}

TEST_F(LotUseTest, SaysWhetherItIsUsedUpBeforeItIsPast) {
    take("2026-01-10T10:00", 100);  // 100 g in 60.88 days: the rest lasts 91.32 days more
    EXPECT_EQ(use("2026-03-02T21:07", 152).runsOutBeforeLifeEnds, BeforeLifeEnds::no);
    EXPECT_EQ(use("2026-03-02T21:07", 153).runsOutBeforeLifeEnds, BeforeLifeEnds::yes);
    EXPECT_EQ(use("2026-03-02T21:07").runsOutBeforeLifeEnds, BeforeLifeEnds::cannotTell);
    lots[0].opened = on("2026-01-01");
    EXPECT_EQ(use("2026-03-02T21:07", 151.5).runsOutBeforeLifeEnds, BeforeLifeEnds::cannotTell);
}

TEST_F(LotUseTest, AFinishedLotCostsItsPriceOverWhatWasUsed) {
    take("2026-01-10T10:00", 100);
    lots[0].finished = on("2026-02-01T00:00");
    const LotUse found = use("2026-06-01");
    EXPECT_FALSE(found.costIsProjected);
    expectEstimate(found.costPerGram, 1.5, 1.5, 1.5);
    expectEstimate(found.left_g, 0, 0, 0);
    EXPECT_FALSE(found.runsOut.has_value());
    EXPECT_NEAR(found.sinceOpened.days, 31, 1e-9);
}

TEST_F(LotUseTest, AnOpenLotCostsWhatItWillHaveGiven) {
    take("2026-01-10T10:00", 20);  // 10 g a month
    LotUse found = use("2026-03-02T21:07", 60.88 + 304.4);
    EXPECT_TRUE(found.costIsProjected);
    EXPECT_NEAR(found.costPerGram.best, 150.0 / 120, 1e-4);
    found = use("2026-03-02T21:07", 10000);
    EXPECT_NEAR(found.costPerGram.best, 0.6, 1e-9);
    found = use("2026-03-02T21:07");
    EXPECT_NEAR(found.costPerGram.best, 0.6, 1e-9);
    found = use("2026-03-02T21:07", 10);
    EXPECT_NEAR(found.costPerGram.best, 7.5, 1e-9);
    lots[0].price = notKnown;
    EXPECT_FALSE(use("2026-03-02T21:07", 10).costPerGram.isKnown());
}

TEST_F(LotUseTest, RefusesWhatCannotBe) {
    const auto refusal = [&](const HistoryStockTake& take) {
        takes = {take};
        return messageOf([&] { use("2026-06-01"); });
    };
    EXPECT_EQ(refusal({1, on("2026-02-01"), 5}),
              "stock-take 1: it names no lot. Name a lot of the book.");
    EXPECT_EQ(refusal({-1, on("2026-02-01"), 5}),
              "stock-take 1: it names no lot. Name a lot of the book.");
    for (const double mass_g : {-1.0, notKnown, std::numeric_limits<double>::infinity()})
        EXPECT_EQ(refusal({0, on("2026-02-01"), mass_g}),
                  "stock-take 1: its mass is not a number of 0 or more. Give the net mass in g.");
    takes.clear();
    EXPECT_EQ(messageOf([&] { use("2026-06-01", 0); }),
              "opened life: it is not above 0. Give it in days.");
}

// 6 g a month for 304.4 days are 60 g.
TEST(LotOffers, ABigTinIsDearWhereItOutlivesItsInk) {
    const OfferCost tin = costOfOffer({150, 250, 304.4}, 6);
    EXPECT_NEAR(tin.used_g, 60, 1e-9);
    EXPECT_NEAR(tin.wasted_g, 190, 1e-9);
    EXPECT_NEAR(tin.costPerGram, 2.5, 1e-9);
    const OfferCost tube = costOfOffer({90, 60, 600}, 6);
    EXPECT_NEAR(tube.used_g, 60, 1e-9);
    EXPECT_NEAR(tube.costPerGram, 1.5, 1e-9);
    EXPECT_NEAR(costOfOffer({150, 250, notKnown}, 6).costPerGram, 0.6, 1e-9);
}

TEST(LotOffers, WhatIsNotKnownStaysSo) {
    EXPECT_TRUE(std::isnan(costOfOffer({notKnown, 60, 600}, 6).costPerGram));
    EXPECT_TRUE(std::isnan(costOfOffer({90, notKnown, 600}, 6).costPerGram));
}

TEST(LotOffers, RefusesWhatCannotBe) {
    const auto refusal = [](const LotOffer& offer, double perMonth_g) {
        return messageOf([&] { costOfOffer(offer, perMonth_g); });
    };
    const std::string remedy = " Give a number that can be, or leave it out where it is not known.";
    EXPECT_EQ(refusal({-1, 60, 600}, 6), "offer: the price is below 0." + remedy);
    EXPECT_EQ(refusal({90, 0, 600}, 6), "offer: the net mass is not above 0." + remedy);
    EXPECT_EQ(refusal({90, 60, 0}, 6), "offer: the opened life is not above 0." + remedy);
    for (const double use : {0.0, -1.0, notKnown, std::numeric_limits<double>::infinity()})
        EXPECT_EQ(refusal({90, 60, 600}, use),
                  "use: the grams per month are not above 0. Give the ink used in 30.44 days.");
}

}  // namespace
}  // namespace rackbook
