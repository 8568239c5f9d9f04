// The formula against numerical differentiation and against a simulation, on random stages.
#include "calc/ShareAnalysis.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "calc/BalanceReading.h"

namespace rackbook {
namespace {

constexpr int lots = 4;
const std::vector<bool> isInk = {true, true, false, false};

using Stages = std::vector<WeighedStage>;

// Some of what goes into a stage comes from stages before it.
Stages randomStages(unsigned seed, std::size_t count) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> mass_g(5, 50);
    Stages stages(count);
    for (std::size_t i = 0; i < count; ++i) {
        for (int lot = 0; lot < lots; ++lot)
            if (random() % 2 == 0 || lot == static_cast<int>(i) % lots)
                stages[i].parts.push_back({lot, -1, mass_g(random)});
        for (std::size_t before = 0; before < i; ++before)
            if (random() % 2 == 0 || before + 1 == i)
                stages[i].parts.push_back({-1, static_cast<int>(before), mass_g(random)});
        for (const WeighedPart& part : stages[i].parts)
            stages[i].total_g += part.mass_g;
    }
    return stages;
}

// Straight from the meaning of a share, by recursion over the parts.
double shareOf(const Stages& stages, std::size_t stage, std::size_t column) {
    double sum_g = 0;
    double holds_g = 0;
    for (const WeighedPart& part : stages[stage].parts) {
        const bool isLot = part.constituent >= 0;
        const bool counts =
            isLot &&
            (column == lots ? part.constituent < 2 : part.constituent == static_cast<int>(column));
        const double content = isLot
                                   ? (counts ? 1.0 : 0.0)
                                   : shareOf(stages, static_cast<std::size_t>(part.stage), column);
        sum_g += part.mass_g;
        holds_g += part.mass_g * content;
    }
    return holds_g / sum_g;
}

class ShareAnalysisProperty : public testing::TestWithParam<unsigned> {};

TEST_P(ShareAnalysisProperty, GivesTheShareOfEveryConstituent) {
    const Stages stages = randomStages(GetParam(), 4);
    const ShareAnalysis analysis(stages, isInk);
    for (std::size_t column = 0; column <= lots; ++column)
        EXPECT_NEAR(analysis.share(column), shareOf(stages, 3, column), 1e-14);
}

TEST_P(ShareAnalysisProperty, DerivesAsCentralDifferencesDo) {
    Stages stages = randomStages(GetParam(), 4);
    const ShareAnalysis analysis(stages, isInk);
    constexpr double step_g = 1e-4;
    for (std::size_t stage = 0; stage < stages.size(); ++stage)
        for (WeighedPart& part : stages[stage].parts)
            for (std::size_t column = 0; column <= lots; ++column) {
                const double derivative = analysis.sensitivity(stage, part, column);
                const double mass_g = part.mass_g;
                part.mass_g = mass_g + step_g;
                const double above = shareOf(stages, 3, column);
                part.mass_g = mass_g - step_g;
                const double below = shareOf(stages, 3, column);
                part.mass_g = mass_g;
                ASSERT_NEAR(derivative, (above - below) / (2 * step_g), 1e-9);
            }
}

TEST_P(ShareAnalysisProperty, SpreadsAsSimulatedWeighingsDo) {
    // Propagation of distributions, JCGM 101:2008: each reading rectangular over the readability,
    // the repeatability normal.
    const Stages stages = randomStages(GetParam(), 3);
    const BalanceFigures balance{0.1, 0.08};
    const ShareAnalysis analysis(stages, isInk);
    std::mt19937 random(GetParam() + 1000);
    std::uniform_real_distribution<double> reading(-balance.readability_g / 2,
                                                   balance.readability_g / 2);
    std::normal_distribution<double> repeated(0, balance.repeatability_g);
    constexpr int trials = 20000;
    std::vector<double> sums(lots + 1);
    std::vector<double> squares(lots + 1);
    for (int i = 0; i < trials; ++i) {
        Stages shaken = stages;
        for (WeighedStage& stage : shaken)
            for (WeighedPart& part : stage.parts)
                part.mass_g += reading(random) + reading(random) + repeated(random);
        for (std::size_t column = 0; column <= lots; ++column) {
            const double change = shareOf(shaken, 2, column) - analysis.share(column);
            sums[column] += change;
            squares[column] += change * change;
        }
    }
    for (std::size_t column = 0; column <= lots; ++column) {
        const double mean = sums[column] / trials;
        const double spread = std::sqrt(std::max(0.0, squares[column] / trials - mean * mean));
        // The spread of 20,000 trials is itself known to 0.5 %.
        EXPECT_NEAR(analysis.uncertainty(column, massUncertainty_g(balance)), spread,
                    0.02 * spread + 1e-12);
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, ShareAnalysisProperty,
                         testing::Values(1U, 2U, 3U, 5U, 8U, 13U, 21U, 34U));

TEST(ShareAnalysis, AgreesWithTheQuotientWorkedByHand) {
    // X = a/(a + b): u² = ((1 − X)² + X²) u²(m)/M².
    Stages stages(1);
    stages[0] = {{{0, -1, 3}, {1, -1, 7}}, 10, 10};
    const ShareAnalysis analysis(stages, {true, false});
    EXPECT_NEAR(analysis.uncertainty(0, 0.1), 0.1 / 10 * std::sqrt(0.49 + 0.09), 1e-15);
    EXPECT_NEAR(analysis.weight(0), 1, 0);
}

TEST(ShareAnalysis, IsUnmovedByAWeighingOfNothingNew) {
    Stages stages(2);
    stages[0] = {{{0, -1, 10}}, 10, 5};
    stages[1] = {{{-1, 0, 5}, {0, -1, 5}}, 10, 10};
    const ShareAnalysis analysis(stages, {true});
    EXPECT_EQ(analysis.share(0), 1);
    EXPECT_EQ(analysis.uncertainty(0, 0.1), 0);
}

}  // namespace
}  // namespace rackbook
