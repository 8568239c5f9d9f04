// Recipes and the ledger against the same reckoning in exact fractions (GMP, mpq_class), over
// histories made at random from fixed seeds.
#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <numeric>

#include "calc/ExactBook.h"
#include "calc/MixLedger.h"
#include "calc/RecipeOf.h"
#include "calc/RecipeShares.h"
#include "calc/UseOfPulls.h"

namespace rackbook {
namespace {

constexpr double close = 1e-9;

std::vector<RecipeMix> unnamed(const History& history) {
    return std::vector<RecipeMix>(history.mixCount);
}

double shareIn(const std::vector<LotShare>& shares, int lot) {
    for (const LotShare& share : shares)
        if (share.lot == lot)
            return share.share;
    return 0;
}

void expectExactly(const std::vector<LotShare>& shares, const exact::Shares& expected) {
    for (const LotShare& share : shares)
        ASSERT_TRUE(expected.count(share.lot)) << "lot " << share.lot;
    for (const auto& [lot, share] : expected)
        ASSERT_NEAR(shareIn(shares, lot), share.get_d(), close) << "lot " << lot;
}

// What every recipe must be, whatever it was made of.
void expectWellFormed(const RecipeFound& found, const History& history) {
    ASSERT_EQ(found.recipe.stages.size(), found.mixOfStage.size());
    for (std::size_t i = 0; i < found.recipe.stages.size(); ++i) {
        const bool isLast = i + 1 == found.recipe.stages.size();
        double sum = 0;
        for (const RecipePart& part : found.recipe.stages[i].parts) {
            sum += part.share;
            ASSERT_GT(part.share, 0);
            ASSERT_NE(part.lot < 0, part.stage < 0);
            ASSERT_LT(part.stage, static_cast<int>(i));
            const bool isDrier =
                part.lot >= 0 && history.lots[static_cast<std::size_t>(part.lot)] == LotKind::drier;
            ASSERT_TRUE(isLast || !isDrier);
        }
        ASSERT_NEAR(sum, 1, close);
        ASSERT_TRUE(isLast || found.recipe.stages[i].parts.size() > 1);
    }
    for (const double share : sharesOfStages(found.recipe))
        ASSERT_GT(share, 0);
}

class RecipeExact : public testing::TestWithParam<unsigned> {};

TEST_P(RecipeExact, RecipesOfTangledMixesAgree) {
    const History history = exact::RandomBook(GetParam(), 12, 8, true).tangle(500).history;
    const exact::Ledger expected(history);
    const RecipeOf recipes(history, unnamed(history));
    ASSERT_GT(history.pulls.size(), 50U);
    for (std::size_t pull = 0; pull < history.pulls.size(); ++pull) {
        const RecipeFound found = recipes.atPull(pull);
        ASSERT_TRUE(found.isComputable());
        expectExactly(flattened(found.recipe), expected.atPull[pull]);
        expectWellFormed(found, history);
        if (HasFatalFailure())
            return;
    }
    for (std::size_t mix = 0; mix < history.mixCount; ++mix)
        expectExactly(flattened(recipes.atEnd(mix).recipe), expected.shares[mix]);
}

TEST_P(RecipeExact, EveryStageIsItsMixAsItWasThen) {
    const History history = exact::RandomBook(GetParam(), 9, 8, false).tangle(400).history;
    const exact::Ledger expected(history);
    const RecipeOf recipes(history, unnamed(history));
    for (std::size_t mix = 0; mix < history.mixCount; ++mix) {
        const RecipeFound found = recipes.atEnd(mix);
        Recipe upTo;
        for (std::size_t i = 0; i < found.recipe.stages.size(); ++i) {
            upTo.stages.push_back(found.recipe.stages[i]);
            expectExactly(flattened(upTo), expected.afterAddition.at(
                                               {found.mixOfStage[i], found.stageAsOf[i].earliest}));
            if (HasFatalFailure())
                return;
        }
    }
}

TEST_P(RecipeExact, RecipesHoldWhatTheLedgerSays) {
    const History history = exact::RandomBook(GetParam(), 12, 30, true).tangle(3000).history;
    const RecipeOf recipes(history, unnamed(history));
    const MixLedger ledger(ledgerByLot(history));
    for (std::size_t pull = 0; pull < history.pulls.size(); pull += 7) {
        const std::vector<LotShare> shares = flattened(recipes.atPull(pull).recipe);
        for (int lot = 0; lot < 12; ++lot)
            ASSERT_NEAR(shareIn(shares, lot), ledger.shareAtPull(pull, lot).best, close);
    }
}

// Two events one after the other that touch no common mix change places.
TEST_P(RecipeExact, TheOrderOfIndependentEventsIsIrrelevant) {
    const History before = exact::RandomBook(GetParam(), 12, 20, true).tangle(2000).history;
    History after = before;
    std::size_t swapped = 0;
    for (std::size_t i = 1; i < after.weighings.size(); ++i) {
        HistoryWeighing& a = after.weighings[i - 1];
        HistoryWeighing& b = after.weighings[i];
        const bool apart = a.mix != b.mix && a.mix != b.fromMix && a.fromMix != b.mix &&
                           (a.fromMix != b.fromMix || a.fromMix < 0);
        if (!apart || b.at.earliest != a.at.earliest + 1)
            continue;
        std::swap(a.at, b.at);
        ++swapped;
        ++i;
    }
    EXPECT_GT(swapped, 200U);
    const RecipeOf recipes(before, unnamed(before));
    const RecipeOf others(after, unnamed(after));
    for (std::size_t mix = 0; mix < before.mixCount; ++mix) {
        const std::vector<LotShare> shares = flattened(recipes.atEnd(mix).recipe);
        const std::vector<LotShare> same = flattened(others.atEnd(mix).recipe);
        ASSERT_EQ(shares.size(), same.size());
        for (const LotShare& share : shares)
            ASSERT_NEAR(share.share, shareIn(same, share.lot), 1e-12);
    }
}

TEST_P(RecipeExact, LaterAdditionsTouchNoEarlierWithdrawal) {
    const History history = exact::RandomBook(GetParam(), 12, 20, true).tangle(1500).history;
    const RecipeOf whole(history, unnamed(history));
    const CivilMinute middle = 700;
    const RecipeOf half(history, unnamed(history), middle);
    for (std::size_t pull = 0; pull < history.pulls.size(); ++pull) {
        if (history.pulls[pull].start.latest > middle)
            continue;
        const std::vector<LotShare> shares = flattened(whole.atPull(pull).recipe);
        const std::vector<LotShare> same = flattened(half.atPull(pull).recipe);
        ASSERT_EQ(shares.size(), same.size());
        for (std::size_t i = 0; i < shares.size(); ++i)
            ASSERT_EQ(shares[i].share, same[i].share);
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, RecipeExact, testing::Values(3U, 11U, 1979U));

// What went in, by lot, is what is left, what was withdrawn or discarded, and what was laid down.
void expectBalance(const History& history, const MixLedger& ledger, const exact::Ledger& expected) {
    std::vector<double> in(history.lots.size(), 0);
    std::vector<double> out(history.lots.size(), 0);
    const auto at = [](std::vector<double>& masses, int lot) -> double& {
        return masses[static_cast<std::size_t>(lot)];
    };
    for (const HistoryWeighing& weighing : history.weighings)
        if (weighing.lot >= 0)
            at(in, weighing.lot) += weighing.mass_g;
    for (const exact::Taken& taken : expected.taken)
        for (const auto& [lot, share] : taken.shares)
            at(out, lot) += share.get_d() * history.weighings[taken.weighing].mass_g;
    for (std::size_t mix = 0; mix < history.mixCount; ++mix) {
        const MixContents contents = ledger.atEnd(mix);
        ASSERT_NEAR(contents.total_g.best, expected.total_g[mix].get_d(), close);
        for (const MixPart& part : contents.parts)
            at(out, part.constituent) += part.share.best * contents.total_g.best;
    }
    const std::vector<int> sheets(history.pulls.size(), 1);
    const std::vector<double> prices(history.lots.size(), 0);
    for (const UseOfPull& use : useOfPulls({history, ledger, sheets, prices}).pulls)
        for (const LotInPull& lot : use.lots)
            at(out, lot.lot) += lot.laid_g.best;
    for (std::size_t lot = 0; lot < in.size(); ++lot)
        ASSERT_NEAR(out[lot], in[lot], close * in[lot]) << "lot " << lot;
}

TEST(RecipeExactLarge, AHundredThousandEventsAgreeAndBalance) {
    const History history =
        exact::RandomBook(2026, 10000, 12000, true).families(100000, 6, 5).history;
    const exact::Ledger expected(history);
    const MixLedger ledger(ledgerByLot(history));
    EXPECT_EQ(ledger.order().events.size(), 100000U);
    EXPECT_TRUE(ledger.overdraws().empty());
    expectBalance(history, ledger, expected);
    const auto begin = std::chrono::steady_clock::now();
    const RecipeOf recipes(history, unnamed(history));
    std::vector<std::vector<LotShare>> shares;
    for (std::size_t pull = 0; pull < history.pulls.size(); ++pull)
        shares.push_back(flattened(recipes.atPull(pull).recipe));
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    RecordProperty("took_ms", std::to_string(took.count()));
    // All recipes of some 20,000 pulls; generous for sanitizers and busy machines.
    EXPECT_LT(took.count(), 20000);
    for (std::size_t pull = 0; pull < history.pulls.size(); ++pull) {
        expectExactly(shares[pull], expected.atPull[pull]);
        for (const auto& [lot, share] : expected.atPull[pull])
            ASSERT_NEAR(ledger.shareAtPull(pull, lot).best, share.get_d(), close);
        if (HasFatalFailure())
            return;
    }
}

// One stock topped up a hundred thousand times: the longest history of a single mix.
TEST(RecipeExactLarge, OneMixWithAHundredThousandAdditions) {
    const History history = exact::RandomBook(8, 12, 2, true).tangle(100000).history;
    const RecipeOf recipes(history, unnamed(history));
    const MixLedger ledger(ledgerByLot(history));
    for (std::size_t mix = 0; mix < 2; ++mix) {
        const std::vector<LotShare> shares = flattened(recipes.atEnd(mix).recipe);
        for (int lot = 0; lot < 12; ++lot)
            EXPECT_NEAR(shareIn(shares, lot), ledger.shareAtEnd(mix, lot).best, close);
    }
}

}  // namespace
}  // namespace rackbook
