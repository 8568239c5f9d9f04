#include "calc/PredictionSpread.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "InventedInks.h"

namespace rackbook {
namespace {

using namespace test;

const std::vector<LotShare> violet = {{clearBase, 0.88}, {coldRed, 0.08}, {deepBlue, 0.04}};

SpreadQuestion questionFor(const Characterisation& inks) {
    return {inks, violet, {}, 5, 0, whitePaper()};
}

PredictionSpread spreadFor(const SpreadQuestion& question) {
    return spreadOf(question, inventedKinds());
}

// Our own film, apart from the code's: the hyperbolic form of Kubelka (1948) between the surface of
// Saunderson (1942), K and S by share (Duncan 1940).
Lab colourApart(const std::vector<LotShare>& shares, double filmWeight_gm2) {
    const std::vector<InkOptics> lots = inventedOptics();
    const FilmSurface surface;
    const double passed = (1 - surface.outerReflection) * (1 - surface.innerReflection);
    Spectrum spectrum{380, 10, {}};
    for (std::size_t band = 0; band < bandCount; ++band) {
        double k = 0;
        double s = 0;
        for (const LotShare& part : shares) {
            k += part.share * lots[static_cast<std::size_t>(part.lot)].absorption_m2g[band];
            s += part.share * lots[static_cast<std::size_t>(part.lot)].scattering_m2g[band];
        }
        const double read = whitePaper()[band];
        const double below = read / (passed + surface.innerReflection * read);
        const double a = 1 + k / s;
        const double b = std::sqrt(a * a - 1);
        const double c = b / std::tanh(b * s * filmWeight_gm2);
        const double inside = (1 - below * (a - c)) / (a - below + c);
        spectrum.values.push_back(passed * inside / (1 - surface.innerReflection * inside));
    }
    return labOf(spectrum, ViewingLight::D50, Observer::deg2);
}

double apart(const std::vector<LotShare>& shares, double filmWeight_gm2) {
    return deltaE00(colourApart(violet, 5), colourApart(shares, filmWeight_gm2));
}

// One share as it is given, the others in the proportions they had.
std::vector<LotShare> withShare(std::size_t moved, double share) {
    std::vector<LotShare> shares = violet;
    for (std::size_t i = 0; i < shares.size(); ++i)
        shares[i].share =
            i == moved ? share : violet[i].share * (1 - share) / (1 - violet[moved].share);
    return shares;
}

TEST(PredictionSpread, IsNothingWhereAllIsKnown) {
    const Characterisation inks = knownInks();
    SpreadQuestion question = questionFor(inks);
    for (const std::vector<double>& none : {std::vector<double>{}, {0, 0, 0}}) {
        question.shareUncertainties = none;
        const PredictionSpread spread = spreadFor(question);
        EXPECT_EQ(spread.filmWeight_dE00, 0);
        EXPECT_EQ(spread.weighing_dE00, 0);
        EXPECT_FALSE(spread.inks_dE00);
        EXPECT_EQ(spread.together_dE00, 0);
    }
}

TEST(PredictionSpread, MovesTheFilmWeightUpAndDown) {
    const Characterisation inks = knownInks();
    SpreadQuestion question = questionFor(inks);
    for (const double u_gm2 : {0.01, 0.3, 1.5}) {
        question.filmWeightUncertainty_gm2 = u_gm2;
        const PredictionSpread spread = spreadFor(question);
        const double up = apart(violet, 5 + u_gm2);
        const double down = apart(violet, 5 - u_gm2);
        EXPECT_NEAR(spread.filmWeight_dE00, std::max(up, down), 1e-6);
        // Thinner shows more than thicker does: lightness flattens out.
        EXPECT_GT(down, up);
        EXPECT_EQ(spread.weighing_dE00, 0);
        EXPECT_NEAR(spread.together_dE00, spread.filmWeight_dE00, 1e-12);
    }
}

TEST(PredictionSpread, MovesOneShareAtATime) {
    const Characterisation inks = knownInks();
    SpreadQuestion question = questionFor(inks);
    // The base, of which there is most, follows from the others: what they are off by is its too.
    const double u[] = {0.004, 0.002, 0.001};
    double squares = 0;
    for (std::size_t moved = 0; moved < 3; ++moved) {
        question.shareUncertainties.assign(3, 0);
        question.shareUncertainties[moved] = u[moved];
        const double expected =
            moved == 0 ? 0
                       : std::max(apart(withShare(moved, violet[moved].share + u[moved]), 5),
                                  apart(withShare(moved, violet[moved].share - u[moved]), 5));
        EXPECT_NEAR(spreadFor(question).weighing_dE00, expected, 1e-6);
        squares += expected * expected;
    }
    EXPECT_GT(squares, 0.05);
    question.shareUncertainties.assign(u, u + 3);
    EXPECT_NEAR(spreadFor(question).weighing_dE00, std::sqrt(squares), 1e-6);
}

TEST(PredictionSpread, KeepsSharesBetweenNothingAndAll) {
    const Characterisation inks = knownInks();
    SpreadQuestion question = questionFor(inks);
    // More than there is of blue: it may be missing altogether, and no less.
    question.shareUncertainties = {0, 0, 0.05};
    const double expected = std::max(apart(withShare(2, 0.09), 5), apart(withShare(2, 0), 5));
    EXPECT_NEAR(spreadFor(question).weighing_dE00, expected, 1e-6);
    // One lot alone is all of the ink, whatever was weighed.
    question.shares = {{coldRed, 1}};
    question.shareUncertainties = {0.1};
    EXPECT_EQ(spreadFor(question).weighing_dE00, 0);
}

void leaveOut(Characterisation& inks, int lot, const std::vector<LeftOutDrawdown>& drawdowns) {
    LotOptics& its = inks.lots[static_cast<std::size_t>(lot)];
    its.leftOutOf = drawdowns;
    its.leftOut = PredictionCheck{drawdowns.size(), 1, 1};
}

// Of the same film, with nothing in the place of one lot.
double effectOf(std::size_t lot) {
    std::vector<LotShare> without = violet;
    without.erase(without.begin() + static_cast<std::ptrdiff_t>(lot));
    return apart(without, 5);
}

// A lot that is known to a tenth of what it does is off by a tenth of what it does here.
TEST(PredictionSpread, TakesForEachInkAShareOfWhatItDoes) {
    Characterisation inks = knownInks();
    leaveOut(inks, clearBase, {{9, 5, 0, 0, 10}});
    leaveOut(inks, coldRed, {{0, 0.05, 2, 2, 20}});
    leaveOut(inks, deepBlue, {{3, 0.02, 3, 3, 60}});
    PredictionSpread spread = spreadFor(questionFor(inks));
    const double expected = std::hypot(0.1 * effectOf(1), 0.05 * effectOf(2));
    EXPECT_NEAR(*spread.inks_dE00, expected, 1e-9);
    EXPECT_TRUE(spread.uncheckedLots.empty());
    EXPECT_NEAR(spread.together_dE00, expected, 1e-9);
    // Several drawdowns: those count in which it does most, √((2² + 9²)/(20² + 30²)).
    inks.lots[coldRed].leftOutOf.push_back({1, 0.4, 9, 9, 30});
    spread = spreadFor(questionFor(inks));
    EXPECT_NEAR(*spread.inks_dE00,
                std::hypot(std::sqrt(85.0 / 1300) * effectOf(1), 0.05 * effectOf(2)), 1e-9);
    // Mixes that were predicted badly count for mixes.
    inks.mixRelativeError = 0.2;
    EXPECT_GT(*spreadFor(questionFor(inks)).inks_dE00, *spread.inks_dE00 + 0.5);
}

TEST(PredictionSpread, TakesALotThatWasNotCheckedForTheWorstKnownInk) {
    Characterisation inks = knownInks();
    PredictionSpread spread = spreadFor(questionFor(inks));
    EXPECT_FALSE(spread.inks_dE00);
    EXPECT_EQ(spread.uncheckedLots, (std::vector<int>{clearBase, coldRed, deepBlue}));
    leaveOut(inks, deepBlue, {{1, 0.2, 3, 3, 60}});
    spread = spreadFor(questionFor(inks));
    EXPECT_NEAR(*spread.inks_dE00,
                std::hypot(0.05 * effectOf(0), 0.05 * effectOf(1), 0.05 * effectOf(2)), 1e-9);
    EXPECT_EQ(spread.uncheckedLots, (std::vector<int>{clearBase, coldRed}));
    EXPECT_EQ(assumedRelativeError(inks, coldRed, inventedKinds()), 0.05);
    // A lot of which nothing is in need not be checked.
    SpreadQuestion question = questionFor(inks);
    question.shares = {{clearBase, 0.96}, {coldRed, 0}, {deepBlue, 0.04}};
    EXPECT_EQ(spreadFor(question).uncheckedLots, std::vector<int>{clearBase});
    // One that is not known at all is not checked either.
    inks.lots.erase(inks.lots.begin() + deepBlue);
    EXPECT_EQ(spreadFor(questionFor(inks)).uncheckedLots,
              (std::vector<int>{clearBase, coldRed, deepBlue}));
}

TEST(PredictionSpread, NamesLotsThatWereTakenAsClear) {
    Characterisation inks = knownInks();
    EXPECT_TRUE(spreadFor(questionFor(inks)).takenAsClear.empty());
    inks.lots[clearBase].source = OpticsSource::takenAsClear;
    inks.lots[honeyDrier].source = OpticsSource::takenAsClear;
    SpreadQuestion question = questionFor(inks);
    EXPECT_EQ(spreadFor(question).takenAsClear, std::vector<int>{clearBase});
    question.shares.push_back({honeyDrier, 0});
    EXPECT_EQ(spreadFor(question).takenAsClear, std::vector<int>{clearBase});
    question.shares.back().share = 0.02;
    EXPECT_EQ(spreadFor(question).takenAsClear, (std::vector<int>{clearBase, honeyDrier}));
    EXPECT_EQ(spreadFor(question).uncheckedLots, (std::vector<int>{coldRed, deepBlue}));
}

// JCGM 100:2008, 5.1.2: independent causes add as squares.
TEST(PredictionSpread, AddsItsCausesAsSquares) {
    Characterisation inks = knownInks();
    leaveOut(inks, coldRed, {{0, 0.4, 2, 2, 20}});
    SpreadQuestion question = questionFor(inks);
    question.filmWeightUncertainty_gm2 = 0.4;
    question.shareUncertainties = {0, 0.003, 0.001};
    const PredictionSpread spread = spreadFor(question);
    EXPECT_GT(spread.filmWeight_dE00, 0.1);
    EXPECT_GT(spread.weighing_dE00, 0.1);
    EXPECT_NEAR(spread.together_dE00 * spread.together_dE00,
                spread.filmWeight_dE00 * spread.filmWeight_dE00 +
                    spread.weighing_dE00 * spread.weighing_dE00 +
                    *spread.inks_dE00 * *spread.inks_dE00,
                1e-9);
}

}  // namespace
}  // namespace rackbook
