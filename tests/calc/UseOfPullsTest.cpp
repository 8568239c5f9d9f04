#include "calc/UseOfPulls.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <stdexcept>

#include "calc/ExactBook.h"
#include "calc/HistoryOf.h"
#include "support/Build.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using build::Book;

enum Lots { base, blue, cobalt };

// A portion of 30 g base and 10 g blue, pulled on impressions 1 and 2; base costs 0.2, blue 1.5.
class UseOfPullsTest : public testing::Test {
protected:
    UseOfPullsTest() {
        book.lot("base", LotKind::base).lot("blue", LotKind::ink).lot("cobalt", LotKind::drier);
        book.mix("portion", MixPurpose::portion);
        book.edition("e").layer("e", 1).layer("e", 2).impressions("e", 1, 3);
        book.addLot("portion", "base", 30, "2026-03-01T10:00");
        book.addLot("portion", "blue", 10, "2026-03-01T10:01");
    }

    void pull(const std::string& layer, const std::string& at, double ink_g,
              const std::vector<std::string>& impressions = {"e-1", "e-2"},
              const std::string& portion = "portion") {
        book.pull(layer, at, impressions, [&](Pull& r) {
            if (!portion.empty())
                r.portion = Ref<Mix>{portion};
            if (ink_g >= 0) {
                r.inkBefore_g = ink_g + 1;
                r.inkAfter_g = 1;
            }
        });
    }

    UseOfPulls uses() {
        history = historyOf(book.records);
        return useOfPulls(
            {history, MixLedger(ledgerByLot(history)), sheetsOfPulls(history), prices});
    }
    LotTrace trace(int lot) {
        history = historyOf(book.records);
        return traceOfLot(history, MixLedger(ledgerByLot(history)), lot);
    }

    Book book;
    History history;
    std::vector<double> prices = {0.2, 1.5, notKnown};
};

TEST_F(UseOfPullsTest, GramsAreTheInkUsedTimesTheShare) {
    pull("e-layer1", "2026-03-02T10:00", 8);
    const UseOfPull use = uses().pulls.at(0);
    ASSERT_EQ(use.lots.size(), 2U);
    EXPECT_EQ(use.lots[1].lot, blue);
    EXPECT_NEAR(use.lots[1].laid_g.best, 2, 1e-12);
    EXPECT_NEAR(use.lots[1].laid_g.low, 2, 1e-12);
    EXPECT_NEAR(use.lots[1].perSheet_g.best, 1, 1e-12);
    EXPECT_NEAR(use.lots[1].cost, 3, 1e-12);
    EXPECT_NEAR(use.cost.known, 6 * 0.2 + 3, 1e-12);
    EXPECT_EQ(use.cost.unpricedShare, 0);
    EXPECT_EQ(use.cost.unpriced_g.high, 0);
}

TEST_F(UseOfPullsTest, WhatHasNoPriceIsTold) {
    book.addLot("portion", "cobalt", 10, "2026-03-01T10:02");
    pull("e-layer1", "2026-03-02T10:00", 10);
    const UseOfPull use = uses().pulls.at(0);
    EXPECT_TRUE(std::isnan(use.lots.at(cobalt).cost));
    EXPECT_NEAR(use.cost.known, 6 * 0.2 + 2 * 1.5, 1e-12);
    EXPECT_NEAR(use.cost.unpriced_g.best, 2, 1e-12);
    EXPECT_NEAR(use.cost.unpricedShare, 0.2, 1e-12);
}

TEST_F(UseOfPullsTest, AnUnweighedPullHasSharesButNoGrams) {
    pull("e-layer1", "2026-03-02T10:00", -1);
    const UseOfPull use = uses().pulls.at(0);
    EXPECT_NEAR(use.lots.at(blue).share.best, 0.25, 1e-12);
    EXPECT_FALSE(use.lots.at(blue).laid_g.isKnown());
    EXPECT_TRUE(std::isnan(use.lots.at(blue).cost));
    EXPECT_EQ(use.cost.known, 0);
    EXPECT_NEAR(use.cost.unpricedShare, 1, 1e-12);
}

TEST_F(UseOfPullsTest, APullOnNoSheetsHasNoUsePerSheet) {
    pull("e-layer1", "2026-03-02T10:00", 8, {});
    EXPECT_FALSE(uses().pulls.at(0).lots.at(blue).perSheet_g.isKnown());
}

TEST_F(UseOfPullsTest, LayersAddUpTheirPulls) {
    pull("e-layer1", "2026-03-02T10:00", 8);
    book.addLot("portion", "cobalt", 32, "2026-03-02T11:00");
    pull("e-layer1", "2026-03-02T12:00", 4);
    pull("e-layer2", "2026-03-02T13:00", 2);
    const UseOfPulls found = uses();
    const UseOfLayer& layer = found.layers.at(0);
    EXPECT_EQ(layer.pulls, 2U);
    EXPECT_DOUBLE_EQ(layer.ink_g.best, 12);
    ASSERT_EQ(layer.lots.size(), 3U);
    EXPECT_NEAR(layer.lots[0].laid_g.best, 7.5, 1e-12);
    EXPECT_NEAR(layer.lots[1].laid_g.best, 2.5, 1e-12);
    EXPECT_NEAR(layer.lots[2].laid_g.best, 2, 1e-12);
    EXPECT_NEAR(layer.cost.known, 7.5 * 0.2 + 2.5 * 1.5, 1e-12);
    EXPECT_NEAR(layer.cost.unpricedShare, 2.0 / 12, 1e-12);
    EXPECT_EQ(found.layers.at(1).pulls, 1U);
}

TEST_F(UseOfPullsTest, WithoutAPortionNothingIsKnown) {
    pull("e-layer1", "2026-03-02T10:00", 8, {"e-1"}, "");
    const UseOfPull use = uses().pulls.at(0);
    EXPECT_TRUE(use.lots.empty());
    EXPECT_EQ(use.unrecordedShare.high, 1);
    EXPECT_TRUE(std::isnan(use.cost.unpricedShare));
    EXPECT_DOUBLE_EQ(use.cost.unpriced_g.high, 8);
}

TEST_F(UseOfPullsTest, RefusesListsThatDoNotFit) {
    pull("e-layer1", "2026-03-02T10:00", 8);
    prices.pop_back();
    EXPECT_EQ(test::messageOf<std::invalid_argument>([&] { uses(); }),
              "useOfPulls: a list does not fit the history");
}

TEST_F(UseOfPullsTest, ATraceFindsThePullsAndImpressionsThatHoldALot) {
    pull("e-layer1", "2026-03-02T10:00", 8);
    book.addLot("portion", "cobalt", 0.5, "2026-03-02T11:00");
    pull("e-layer2", "2026-03-02T12:00", 4, {"e-2", "e-3"});
    const LotTrace found = trace(cobalt);
    ASSERT_EQ(found.pulls.size(), 1U);
    EXPECT_EQ(found.pulls[0].pull, 1U);
    EXPECT_EQ(found.pulls[0].holding, Holding::holds);
    EXPECT_NEAR(found.pulls[0].share.best, 0.5 / 32.5, 1e-12);
    ASSERT_EQ(found.impressions.size(), 2U);
    EXPECT_EQ(found.impressions[0].impression, 1U);
    EXPECT_EQ(found.impressions[1].impression, 2U);
    EXPECT_EQ(trace(blue).impressions.size(), 3U);
}

TEST_F(UseOfPullsTest, ATraceTellsWhatIsSureFromWhatIsNot) {
    book.addLot("portion", "cobalt", 1, "2026-03-01T11:00", [](Weighing& r) { r.mass_g.reset(); });
    book.mix("old jar", MixPurpose::stock);
    pull("e-layer1", "2026-03-02T10:00", 8, {"e-1", "e-2"});
    pull("e-layer2", "2026-03-02T12:00", 4, {"e-2", "e-3"}, "old jar");
    const LotTrace found = trace(cobalt);
    ASSERT_EQ(found.pulls.size(), 2U);
    EXPECT_EQ(found.pulls[0].holding, Holding::mayHold);
    EXPECT_EQ(found.pulls[1].holding, Holding::cannotRuleOut);
    ASSERT_EQ(found.impressions.size(), 3U);
    EXPECT_EQ(found.impressions[1].holding, Holding::mayHold);
    EXPECT_EQ(found.impressions[2].holding, Holding::cannotRuleOut);
}

TEST(UseOfPullsSpeed, AHundredThousandEventsTakeNoTime) {
    const History history = exact::RandomBook(4, 10000, 12000, true).families(100000, 6, 5).history;
    const MixLedger ledger(ledgerByLot(history));
    const std::vector<int> sheets(history.pulls.size(), 10);
    const std::vector<double> prices(history.lots.size(), 1);
    const auto begin = std::chrono::steady_clock::now();
    const UseOfPulls uses = useOfPulls({history, ledger, sheets, prices});
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    RecordProperty("took_ms", std::to_string(took.count()));
    EXPECT_LT(took.count(), 2000);
    double ink_g = 0;
    double cost = 0;
    for (std::size_t pull = 0; pull < uses.pulls.size(); ++pull) {
        ink_g += history.pulls[pull].inkUsed_g;
        cost += uses.pulls[pull].cost.known;
    }
    EXPECT_NEAR(uses.layers.at(0).ink_g.best, ink_g, 1e-9 * ink_g);
    EXPECT_NEAR(cost, ink_g, 1e-9 * ink_g);
}

}  // namespace
}  // namespace rackbook
