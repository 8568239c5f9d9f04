#include "calc/BalanceReading.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

#include "base/Error.h"

namespace rackbook {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();

std::string refusal(const BalanceFigures& balance) {
    try {
        massUncertainty_g(balance);
    } catch (const InputError& error) {
        return error.what();
    }
    return {};
}

TEST(BalanceReading, HasTheResolutionVarianceOfTheGuide) {
    // JCGM 100:2008, F.2.2.1: a display that goes by 1 g has u² = 1/12 g², u = 0.29 g, for one
    // reading; a tared mass has two.
    const double u_g = massUncertainty_g({1, 0});
    EXPECT_NEAR(u_g / std::sqrt(2.0), 0.29, 0.005);
    EXPECT_DOUBLE_EQ(u_g * u_g, 2.0 / 12);
}

TEST(BalanceReading, AgreesWithAWeighingByDifferenceFromAHandbook) {
    // EURACHEM/CITAC guide CG 4, example A2: ±0.15 mg, rectangular, counted twice for tare and
    // gross, repeatability kept apart: u(m_KHP) = 0.00013 g in table A2.1.
    EXPECT_NEAR(massUncertainty_g({0.00030, 0}), 0.00013, 0.00001);
}

TEST(BalanceReading, AddsTheRepeatabilityInQuadrature) {
    // JCGM 100:2008, 5.1.2: variances of independent inputs add.
    EXPECT_NEAR(massUncertainty_g({0.1, 0.1}), std::sqrt(0.02 / 12 + 0.01), 1e-15);
    EXPECT_NEAR(massUncertainty_g({1e-9, 0.3}), 0.3, 1e-9);
}

TEST(BalanceReading, RoundsToWhatTheDisplayShows) {
    const BalanceFigures tenths{0.1, 0};
    EXPECT_EQ(roundedToReadability_g(1.84, tenths), 1.8);
    EXPECT_EQ(roundedToReadability_g(0.31, tenths), 0.3);
    EXPECT_EQ(roundedToReadability_g(0.04, tenths), 0);
    EXPECT_EQ(roundedToReadability_g(61.3, {0.5, 0}), 61.5);
    EXPECT_EQ(roundedToReadability_g(61.3, {2, 0}), 62);
    EXPECT_EQ(roundedToReadability_g(7.4, {0.3, 0}), 25 * 0.3);
}

TEST(BalanceReading, RaisesToTheNextStepButLeavesWholeStepsAlone) {
    const BalanceFigures tenths{0.1, 0};
    EXPECT_EQ(raisedToReadability_g(1.81, tenths), 1.9);
    for (int steps = 1; steps < 5000; ++steps)
        ASSERT_EQ(raisedToReadability_g(0.1 * steps, tenths), steps / 10.0) << steps;
}

TEST(BalanceReading, RefusesABalanceThatCannotBe) {
    EXPECT_EQ(refusal({0, 0}),
              "balance: the readability is 0 g. Give the smallest step of its display, above 0 g.");
    EXPECT_EQ(
        refusal({-0.1, 0}),
        "balance: the readability is -0.1 g. Give the smallest step of its display, above 0 g.");
    EXPECT_NE(refusal({notANumber, 0}), "");
    EXPECT_NE(refusal({infinite, 0}), "");
    EXPECT_EQ(refusal({0.1, -0.1}),
              "balance: the repeatability is -0.1 g. Give a standard deviation of 0 g or more.");
    EXPECT_NE(refusal({0.1, notANumber}), "");
    EXPECT_NE(refusal({0.1, infinite}), "");
    EXPECT_EQ(refusal({0.1, 0}), "");
}

}  // namespace
}  // namespace rackbook
