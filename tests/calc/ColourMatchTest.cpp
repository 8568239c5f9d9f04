#include "calc/ColourMatch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "MatchFixture.h"

namespace rackbook {
namespace {

using namespace test;

// What a colour more has to come nearer by (ColourMatch.h).
constexpr double worthAColour_dE00 = 0.25;

// One to four inks in base, each of them enough to show.
std::vector<LotShare> planted(std::size_t colours, Chance& chance) {
    std::set<int> lots;
    while (lots.size() < colours)
        lots.insert(firstInk + static_cast<int>(chance.below(inkCount)));
    std::vector<LotShare> shares = {{clearBase, 1}};
    for (const int lot : lots) {
        const double share = chance.between(0.02, 0.15);
        shares.push_back({lot, share});
        shares.front().share -= share;
    }
    return shares;
}

// Those of the recipe and others, up to `count`.
std::vector<int> coloursAround(const std::vector<LotShare>& recipe, std::size_t count,
                               Chance& chance) {
    std::set<int> lots;
    for (const LotShare& part : recipe)
        if (part.lot >= firstInk)
            lots.insert(part.lot);
    while (lots.size() < count)
        lots.insert(firstInk + static_cast<int>(chance.below(inkCount)));
    return {lots.begin(), lots.end()};
}

// Each colour can be met exactly, as it was made of the lots that may be taken.
TEST(ColourMatch, MeetsColoursThatWereMadeOfItsInks) {
    Chance chance(2);
    int met = 0;
    for (std::size_t round = 0; round < 20; ++round) {
        const std::vector<LotShare> recipe = planted(1 + round % 4, chance);
        SCOPED_TRACE(testing::Message() << "round " << round);
        const MatchQuestion question =
            questionFor(targetMadeOf(recipe), coloursAround(recipe, 6, chance));
        const std::vector<MatchFound> found = matchesFor(question, 3);
        ASSERT_FALSE(found.empty());
        for (const MatchFound& one : found)
            expectSound(one, question);
        const double miss_dE00 = found.front().miss.underD50_dE00;
        const std::size_t colours = coloursIn(found.front()).size();
        if (colours >= recipe.size() - 1) {
            EXPECT_LT(miss_dE00, 0.05);
        } else {
            // Each colour less may cost what a colour has to be worth.
            EXPECT_LT(miss_dE00,
                      worthAColour_dE00 * static_cast<double>(recipe.size() - 1 - colours));
        }
        met += miss_dE00 < 0.05 ? 1 : 0;
    }
    EXPECT_GE(met, 15);
}

TEST(ColourMatch, MeetsAColourWithFourOfTwelve) {
    const std::vector<LotShare> recipe = {{clearBase, 0.76},
                                          {coldYellow, 0.08},
                                          {coldRed, 0.05},
                                          {greenBlue, 0.07},
                                          {thinWhite, 0.04}};
    const MatchQuestion question = questionFor(targetMadeOf(recipe), allInks());
    const std::vector<MatchFound> found = matchesFor(question, 5);
    ASSERT_FALSE(found.empty());
    EXPECT_LT(found.front().miss.underD50_dE00, 0.05);
    expectSound(found.front(), question);
}

double rootOfCost(const Bands& predicted, const ColourTarget& target) {
    return std::sqrt(costOf(missOf(predicted, target)));
}

// Our own search over all pairs, each share on a grid of even factors.
double leastOfPairs(const MatchQuestion& question) {
    double least = std::numeric_limits<double>::infinity();
    constexpr int steps = 24;
    for (std::size_t a = 0; a < question.colours.size(); ++a)
        for (std::size_t b = a + 1; b < question.colours.size(); ++b)
            for (int i = 0; i <= steps; ++i)
                for (int j = 0; j <= steps; ++j) {
                    const double partA = 0.003 * std::pow(300, i / double{steps});
                    const double partB = 0.003 * std::pow(300, j / double{steps});
                    const double whole = 1 + partA + partB;
                    const Bands made = readingOver(question.paper,
                                                   {{clearBase, 1 / whole},
                                                    {question.colours[a], partA / whole},
                                                    {question.colours[b], partB / whole}},
                                                   question.filmWeightLeast_gm2);
                    least = std::min(least, rootOfCost(made, question.target));
                }
    return least;
}

// Colours that these inks cannot meet.
TEST(ColourMatch, IsNotBeatenByAGridOverPairs) {
    const std::vector<int> colours = {coldYellow, coldRed, greenBlue, softBlack};
    for (const std::vector<LotShare>& recipe :
         {letDown(firstInk + 5, 0.2), letDown(firstInk + 2, 0.12), letDown(firstInk + 9, 0.2)}) {
        MatchQuestion question = questionFor(targetMadeOf(recipe), colours);
        question.mostColours = 2;
        const std::vector<MatchFound> found = matchesFor(question, 1);
        ASSERT_EQ(found.size(), 1u);
        const double reached = rootOfCost(found[0].predicted, question.target);
        EXPECT_GT(reached, 0.5);
        EXPECT_LT(reached, leastOfPairs(question) + 0.02);
    }
}

TEST(ColourMatch, HoldsBaseAndDrierExactly) {
    MatchQuestion question = questionFor(
        targetMadeOf({{clearBase, 0.8}, {honeyDrier, 0.03}, {coldRed, 0.1}, {deepBlue, 0.07}}),
        {coldRed, deepBlue, coldYellow});
    question.held = {{honeyDrier, 0.03}};
    for (const MatchFound& one : matchesFor(question, 3)) {
        EXPECT_DOUBLE_EQ(shareOf(one, honeyDrier), 0.03);
        expectSound(one, question);
    }
    question.baseShare = 0.8;
    const std::vector<MatchFound> fixed = matchesFor(question, 3);
    ASSERT_FALSE(fixed.empty());
    for (const MatchFound& one : fixed) {
        EXPECT_DOUBLE_EQ(shareOf(one, honeyDrier), 0.03);
        EXPECT_DOUBLE_EQ(shareOf(one, clearBase), 0.8);
        expectSound(one, question);
    }
    EXPECT_LT(fixed.front().miss.underD50_dE00, 0.05);
    EXPECT_NEAR(shareOf(fixed.front(), coldRed), 0.1, 0.002);
}

TEST(ColourMatch, WorksWithoutBaseAndWithAColourThatIsHeld) {
    const std::vector<LotShare> recipe = {{coldYellow, 0.35}, {thinWhite, 0.65}};
    MatchQuestion question = questionFor(targetMadeOf(recipe), {coldYellow, thinWhite, deepBlue});
    question.base = -1;
    const std::vector<MatchFound> found = matchesFor(question, 2);
    ASSERT_FALSE(found.empty());
    expectSound(found.front(), question);
    EXPECT_LT(found.front().miss.underD50_dE00, 0.05);
    EXPECT_EQ(shareOf(found.front(), clearBase), 0);

    MatchQuestion held = questionFor(targetMadeOf(letDown(coldYellow, 0.2)), {coldYellow, coldRed});
    held.held = {{coldYellow, 0.1}};
    const MatchFound more = matchesFor(held, 1).at(0);
    expectSound(more, held);
    EXPECT_NEAR(shareOf(more, coldYellow), 0.2, 0.002);
}

TEST(ColourMatch, KeepsTheFilmWithinItsRange) {
    const std::vector<LotShare> recipe = {{clearBase, 0.8}, {coldRed, 0.12}, {deepBlue, 0.08}};
    MatchQuestion question = questionFor(targetMadeOf(recipe, 9), {coldRed, deepBlue, coldYellow});
    question.filmWeightLeast_gm2 = 3;
    question.filmWeightGreatest_gm2 = 6;
    question.baseShare = 0.8;
    const std::vector<MatchFound> found = matchesFor(question, 4);
    for (const MatchFound& one : found)
        expectSound(one, question);
    // A film of 9 is wanted.
    EXPECT_NEAR(found.front().filmWeight_gm2, 6, 0.05);
    question.filmWeightGreatest_gm2 = 15;
    const MatchFound wide = matchesFor(question, 1).at(0);
    EXPECT_LT(wide.miss.underD50_dE00, 0.05);
    EXPECT_NEAR(wide.filmWeight_gm2, 9, 0.1);
}

TEST(ColourMatch, GivesTheBestFirstAndEachOfOtherLots) {
    const std::vector<int> colours = {coldYellow, warmRed, coldRed, deepBlue, greenBlue};
    const MatchQuestion question = questionFor(targetMadeOf(letDown(firstInk + 9, 0.2)), colours);
    const std::vector<MatchFound> found = matchesFor(question, 100);
    ASSERT_GT(found.size(), 4u);
    std::set<std::vector<int>> lots;
    for (std::size_t i = 0; i < found.size(); ++i) {
        EXPECT_TRUE(lots.insert(coloursIn(found[i])).second);
        if (i > 0) {
            EXPECT_LE(costOf(found[i - 1].miss), costOf(found[i].miss));
        }
    }
    for (const std::size_t most : {0u, 1u, 3u})
        EXPECT_EQ(matchesFor(question, most).size(), most);
}

// What one with fewer of the same colours reaches is searched for again, among those alone.
TEST(ColourMatch, TakesMoreColoursOnlyWhereTheyAreWorthIt) {
    const std::vector<int> colours = {coldYellow, coldRed, deepBlue, softBlack};
    const MatchQuestion question = questionFor(
        targetMadeOf({{clearBase, 0.85}, {coldYellow, 0.1}, {firstInk + 5, 0.05}}), colours);
    int compared = 0;
    for (const MatchFound& one : matchesFor(question, 100)) {
        const std::vector<int> its = coloursIn(one);
        for (const int without : its) {
            MatchQuestion fewer = question;
            fewer.colours.clear();
            for (const int lot : its)
                if (lot != without)
                    fewer.colours.push_back(lot);
            if (fewer.colours.empty())
                continue;
            const MatchFound best = matchesFor(fewer, 1).at(0);
            // The searches differ by thousandths.
            EXPECT_GT(std::sqrt(costOf(best.miss)),
                      std::sqrt(costOf(one.miss)) + worthAColour_dE00 - 0.005);
            ++compared;
        }
    }
    EXPECT_GT(compared, 3);
}

TEST(ColourMatch, NeedsNoSecondColourWhereOneMeetsIt) {
    const MatchQuestion question =
        questionFor(targetMadeOf(letDown(coldRed, 0.07)), {coldYellow, coldRed, deepBlue});
    const std::vector<MatchFound> found = matchesFor(question, 100);
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(coloursIn(found.front()), std::vector<int>{coldRed});
    EXPECT_NEAR(shareOf(found.front(), coldRed), 0.07, 0.001);
    for (std::size_t i = 1; i < found.size(); ++i) {
        const std::vector<int> lots = coloursIn(found[i]);
        EXPECT_EQ(std::count(lots.begin(), lots.end(), coldRed), 0);
    }
}

TEST(ColourMatch, LeavesOutATraceAndTakesWhatShows) {
    const auto withBlue = [](double share) {
        return targetMadeOf({{clearBase, 0.93 - share}, {coldRed, 0.07}, {deepBlue, share}});
    };
    MatchQuestion question = questionFor(withBlue(0.0003), {coldRed, deepBlue});
    const MatchFound trace = matchesFor(question, 1).at(0);
    EXPECT_EQ(coloursIn(trace), std::vector<int>{coldRed});
    // It would come nearer with blue, but not by enough.
    EXPECT_GT(trace.miss.underD50_dE00, 0.05);
    EXPECT_LT(trace.miss.underD50_dE00, worthAColour_dE00);
    question.target = withBlue(0.0005);
    const MatchFound shown = matchesFor(question, 1).at(0);
    EXPECT_EQ(coloursIn(shown), (std::vector<int>{coldRed, deepBlue}));
    EXPECT_NEAR(shareOf(shown, deepBlue), 0.0005, 0.00002);
}

const std::vector<int> otherThree = {firstInk + 1, firstInk + 5, firstInk + 8};

// Three others meet it too under D50, and no longer in other light: the spectrum tells.
TEST(ColourMatch, PrefersTheRecipeThatHoldsInOtherLight) {
    const ColourTarget target = targetMadeOf(plantedGrey);
    MatchQuestion question = questionFor(target, otherThree);
    question.mostColours = 3;
    const MatchFound metameric = matchesFor(question, 1).at(0);
    ASSERT_LT(metameric.miss.underD50_dE00, 0.3);
    ASSERT_GT(std::max(*metameric.miss.underA_dE00, *metameric.miss.underFL11_dE00), 1);

    question.colours.insert(question.colours.end(), plantedThree.begin(), plantedThree.end());
    std::sort(question.colours.begin(), question.colours.end());
    const MatchFound best = matchesFor(question, 1).at(0);
    EXPECT_EQ(coloursIn(best), plantedThree);
    EXPECT_LT(best.miss.underD50_dE00, 0.05);
    EXPECT_LT(*best.miss.underA_dE00, 0.1);
    EXPECT_LT(*best.miss.underFL11_dE00, 0.1);
}

TEST(ColourMatch, MatchesAColourOfWhichOnlyCielabIsKnown) {
    ColourTarget target;
    target.lab_D50 = labOf(readingOver(whitePaper(), plantedGrey, 5), ViewingLight::D50);
    const MatchQuestion question = questionFor(target, plantedThree);
    const std::vector<MatchFound> found = matchesFor(question, 3);
    ASSERT_FALSE(found.empty());
    EXPECT_LT(found.front().miss.underD50_dE00, 0.05);
    for (const MatchFound& one : found) {
        EXPECT_FALSE(one.miss.underA_dE00);
        EXPECT_FALSE(one.miss.underFL11_dE00);
        expectSound(one, question);
    }
}

TEST(ColourMatch, IsTheSameForTheSameQuestion) {
    const MatchQuestion question = questionFor(targetMadeOf(plantedGrey), plantedThree);
    const std::vector<MatchFound> one = matchesFor(question, 9);
    const std::vector<MatchFound> other = matchesFor(question, 9);
    ASSERT_EQ(one.size(), other.size());
    for (std::size_t i = 0; i < one.size(); ++i)
        EXPECT_EQ(one[i].predicted, other[i].predicted);
}

}  // namespace
}  // namespace rackbook
