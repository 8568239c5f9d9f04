#include "calc/ReturnChance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "ThresholdFixture.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

// What the house rules say, what few looks and what many say.
std::vector<LightThreshold> thresholds() {
    const ThresholdPrior byRule{1, std::log(5) / 1.6449, 0.5, 0.5};
    std::mt19937 random(5);
    const ThresholdCurve truth{ThresholdModel::logNormal, std::log(0.3), 0.4};
    std::vector<LightThreshold> all;
    for (const int prints : {0, 4, 60})
        all.emplace_back(simulated(truth, prints, random), ThresholdModel::logNormal, byRule);
    return all;
}

TEST(ReturnChance, IsThatOfTheThreshold) {
    for (const LightThreshold& threshold : thresholds()) {
        const ReturnChance chance(threshold);
        for (double dose = 1.3e-4; dose < 9e3; dose *= 1.37)
            EXPECT_NEAR(chance.by(dose), threshold.predictedBy(dose), 1e-3) << dose;
    }
}

TEST(ReturnChance, GrowsWithTheDose) {
    for (const LightThreshold& threshold : thresholds()) {
        const ReturnChance chance(threshold);
        EXPECT_EQ(chance.by(0.0), 0);
        double before = 0;
        for (double dose = 1e-7; dose < 1e7; dose *= 1.11) {
            const double now = chance.by(dose);
            EXPECT_GE(now, before) << dose;
            EXPECT_LE(now, 1);
            before = now;
        }
        EXPECT_GE(chance.by(std::numeric_limits<double>::infinity()), before);
        EXPECT_GT(before, 0.999);
    }
}

TEST(ReturnChance, IsTurnedAroundByTheDoseForAChance) {
    for (const LightThreshold& threshold : thresholds()) {
        const ReturnChance chance(threshold);
        for (const double wanted : {0.01, 0.1, 0.25, 0.5, 0.8, 0.95, 0.99})
            EXPECT_NEAR(chance.by(chance.doseFor_sunnyDays(wanted)), wanted, 1e-9);
    }
    // By hand: half of a log-normal prior lies below its median.
    const ReturnChance byRule(thresholds().front());
    EXPECT_NEAR(byRule.doseFor_sunnyDays(0.5), 1, 0.01);
}

// A dose that is known without spread is the dose.
TEST(ReturnChance, OfAnExactDoseIsThatOfTheDose) {
    const ReturnChance chance(thresholds().front());
    for (const double dose : {0.05, 0.3, 1.0, 4.0})
        EXPECT_NEAR(chance.by(Estimate::exactly(dose)), chance.by(dose), 1e-12);
}

// Against the mean over the dose's spread in 2,000 equal parts of a log-normal. The five parts of
// the quick one hold a little less of the spread.
TEST(ReturnChance, IsTheMeanOverTheSpreadOfTheDose) {
    for (const LightThreshold& threshold : thresholds()) {
        const ReturnChance chance(threshold);
        for (const double dose : {0.1, 0.3, 1.0, 3.0}) {
            constexpr double times = 3;  // nine cases of ten within a factor of 3
            const double spread = std::log(times) / 1.6448536;
            constexpr int parts = 2000;
            double mean = 0;
            for (int i = 0; i < parts; ++i) {
                const double z =
                    ThresholdCurve{ThresholdModel::logNormal, 0, 1}.quantile_log((i + 0.5) / parts);
                mean += chance.by(dose * std::exp(spread * z)) / parts;
            }
            EXPECT_NEAR(chance.by(Estimate{dose / times, dose, dose * times}), mean, 0.03) << dose;
        }
    }
}

TEST(ReturnChance, IsPulledTowardsTheMiddleByTheSpread) {
    const ReturnChance chance(thresholds().front());
    for (const double dose : {0.1, 0.3, 3.0, 10.0}) {
        double before = std::abs(chance.by(dose) - 0.5);
        for (const double times : {1.5, 3.0, 10.0}) {
            const double now =
                std::abs(chance.by(Estimate{dose / times, dose, dose * times}) - 0.5);
            EXPECT_LT(now, before) << dose << " times " << times;
            before = now;
        }
    }
}

TEST(ReturnChance, IsNotKnownOfADoseThatMayBeAnything) {
    const ReturnChance chance(thresholds().front());
    constexpr double endless = std::numeric_limits<double>::infinity();
    EXPECT_TRUE(std::isnan(chance.by(Estimate{0, notKnown, endless})));
    EXPECT_TRUE(std::isnan(chance.by(Estimate{0, notKnown, 1})));
    // Unless even the most of it is next to nothing.
    EXPECT_LT(chance.by(Estimate{0, notKnown, 0.001}), 0.01);
    EXPECT_EQ(chance.by(Estimate{0, notKnown, 0}), 0);
    EXPECT_EQ(chance.by(Estimate::exactly(0)), 0);
    // With a best value, an open bound is no obstacle.
    EXPECT_GT(chance.by(Estimate{0, 2, endless}), 0.3);
    EXPECT_LT(chance.by(Estimate{0, 2, endless}), 1);
}

}  // namespace
}  // namespace rackbook
