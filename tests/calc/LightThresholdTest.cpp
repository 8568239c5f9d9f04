#include "calc/LightThreshold.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "FactRows.h"
#include "ThresholdFixture.h"
#include "calc/LikeliestThreshold.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

const ThresholdModel bothModels[] = {ThresholdModel::logNormal, ThresholdModel::weibull};
constexpr double normal95 = 1.6448536;

// To 0.004 of the length of the interval, in logarithms.
void expectDoses(const Estimate& found, const FactRow& row, const std::string& name) {
    const double low = std::log(row.number(name + "5"));
    const double high = std::log(row.number(name + "95"));
    const double close = 0.004 * (high - low);
    EXPECT_NEAR(std::log(found.low), low, close);
    EXPECT_NEAR(std::log(found.best), std::log(row.number(name + "50")), close);
    EXPECT_NEAR(std::log(found.high), high, close);
}

// How the expected values were made stands in the table.
TEST(LightThreshold, AgreesWithAFineGridInAnotherProgram) {
    for (const FactRow& row : factRows("threshold-posterior.csv")) {
        SCOPED_TRACE(row.text("name") + " " + row.text("model"));
        const LightThreshold found(looksIn(row.text("observations")), modelIn(row.text("model")));
        expectDoses(found.quantile_sunnyDays(0.5), row, "median");
        expectDoses(found.quantile_sunnyDays(0.9), row, "dose");
        const Estimate share = found.probabilityBy(4);
        EXPECT_NEAR(share.low, row.number("share5"), 2e-3);
        EXPECT_NEAR(share.best, row.number("share50"), 2e-3);
        EXPECT_NEAR(share.high, row.number("share95"), 2e-3);
        EXPECT_NEAR(found.predictedBy(4), row.number("predicted"), 5e-4);
    }
}

TEST(LightThreshold, IsThePriorWithoutObservations) {
    const ThresholdPrior prior{5, 0.8, 0.3, 0.6};
    for (const ThresholdModel model : bothModels)
        for (const Looks& looks : {Looks{}, Looks{{0, never}}}) {
            const LightThreshold found(looks, model, prior);
            EXPECT_NEAR(found.curve().median_log(), std::log(5), 1e-4);
            EXPECT_NEAR(found.curve().width_log(), 0.3, 1e-4);
            EXPECT_EQ(found.observations(), looks.size());
            EXPECT_EQ(found.logLikelihood(), 0);
            const Estimate median = found.quantile_sunnyDays(0.5);
            EXPECT_NEAR(std::log(median.best), std::log(5), 0.01);
            EXPECT_NEAR(std::log(median.high), std::log(5) + normal95 * 0.8, 0.02);
            EXPECT_NEAR(std::log(median.low), std::log(5) - normal95 * 0.8, 0.02);
        }
}

// With a prior that says nothing to speak of, the peak is where the likelihood has it.
TEST(LightThreshold, HasItsPeakAtTheLikeliestCurveUnderAFlatPrior) {
    for (const FactRow& row : factRows("threshold-survreg.csv")) {
        SCOPED_TRACE(row.text("name") + " " + row.text("model"));
        const double close = row.text("name") == "contradictory" ? 0.5 : 0.03;
        const LightThreshold found(looksIn(row.text("observations")), modelIn(row.text("model")),
                                   {row.number("quantile50"), 10, 1, 10});
        EXPECT_NEAR(found.curve().location_log, row.number("location_log"), close);
        EXPECT_NEAR(found.curve().scale_log, row.number("scale_log"), close);
        EXPECT_NEAR(found.logLikelihood(), row.number("logLikelihood"), 0.01);
    }
}

// Truths drawn from the prior lie in intervals of 80 % in 80 cases of 100, whatever was seen: 400
// trials, to 2.5 standard errors of that share (0.02).
TEST(LightThreshold, HoldsTheTruthAsOftenAsItSays) {
    std::mt19937 random(21);
    std::normal_distribution<double> normal(0, 1);
    constexpr int trials = 400;
    const ThresholdPrior prior;
    for (const ThresholdModel model : bothModels) {
        int medians = 0;
        int highs = 0;
        int lows = 0;
        for (int i = 0; i < trials; ++i) {
            const double median_log =
                std::log(prior.median_sunnyDays) + prior.medianSpread_log * normal(random);
            const double width_log =
                prior.width_log * std::exp(prior.widthSpread_log * normal(random));
            const ThresholdCurve truth = ThresholdCurve::around(model, median_log, width_log);
            Looks looks;
            for (int print = 0; print < i % 25; ++print)
                looks.push_back(lookedAt(drawnFrom(truth, random), 3, random));
            const LightThreshold found(looks, model, prior);
            const auto holds = [](const Estimate& estimate, double value) {
                return estimate.low <= value && value <= estimate.high;
            };
            medians += holds(found.quantile_sunnyDays(0.5, 0.8), truth.quantile_sunnyDays(0.5));
            highs += holds(found.quantile_sunnyDays(0.9, 0.8), truth.quantile_sunnyDays(0.9));
            lows += holds(found.quantile_sunnyDays(0.1, 0.8), truth.quantile_sunnyDays(0.1));
        }
        for (const int held : {lows, medians, highs})
            EXPECT_NEAR(held, 0.8 * trials, 0.05 * trials);
    }
}

// By the dose at the upper end of an interval, the share is at the lower end of its own.
TEST(LightThreshold, TellsDosesAndSharesAlike) {
    const Looks looks = {{0, 2}, {1, 5}, {3, never}, {4, 4}};
    for (const ThresholdModel model : bothModels) {
        const LightThreshold found(looks, model);
        for (const double share : {0.1, 0.5, 0.95})
            for (const double within : {0.5, 0.9, 0.99}) {
                const Estimate dose = found.quantile_sunnyDays(share, within);
                EXPECT_NEAR(found.probabilityBy(dose.high, within).low, share, 1e-3);
                EXPECT_NEAR(found.probabilityBy(dose.best, within).best, share, 1e-3);
                EXPECT_NEAR(found.probabilityBy(dose.low, within).high, share, 1e-3);
            }
    }
}

TEST(LightThreshold, FindsAKnownThresholdAmongManyPrints) {
    std::mt19937 random(22);
    for (const ThresholdModel model : bothModels) {
        const ThresholdCurve truth = ThresholdCurve::around(model, std::log(6), 0.3);
        int held = 0;
        for (int i = 0; i < 60; ++i) {
            const LightThreshold found(simulated(truth, 80, random), model);
            const Estimate dose = found.quantile_sunnyDays(0.9, 0.9);
            EXPECT_LT(dose.high / dose.low, 1.6);
            held += dose.low <= truth.quantile_sunnyDays(0.9) &&
                    truth.quantile_sunnyDays(0.9) <= dose.high;
        }
        // 54 expected, standard error 2.3.
        EXPECT_GE(held, 48);
    }
}

// Each curve's chance is weighed by the share that has not returned by the dose, so that every
// point of what is likely for that share falls: exactly so, whatever was seen before.
TEST(LightThreshold, ExpectsLessByADoseThatWasNotEnough) {
    std::mt19937 random(23);
    std::uniform_real_distribution<double> anyDose(0.3, 20);
    for (int i = 0; i < 60; ++i) {
        const ThresholdModel model = bothModels[i % 2];
        Looks looks = simulated(ThresholdCurve::around(model, 1, 0.2 + 0.02 * i), i % 12, random);
        const double dose = anyDose(random);
        const LightThreshold before(looks, model);
        looks.push_back({dose, never});
        const LightThreshold after(looks, model);
        EXPECT_LE(after.predictedBy(dose), before.predictedBy(dose) + 1e-9);
        const Estimate was = before.probabilityBy(dose);
        const Estimate is = after.probabilityBy(dose);
        EXPECT_LE(is.low, was.low + 2e-3);
        EXPECT_LE(is.best, was.best + 2e-3);
        EXPECT_LE(is.high, was.high + 2e-3);
    }
}

// From the median up, where the prints had more light than nearly all were thought to need. The
// dose of a small share may fall, as prints then differ by more; and a print that has not returned
// by a dose that few need tells that they differ by less.
TEST(LightThreshold, DoesNotFallWithMorePrintsThatNeedMoreLight) {
    std::mt19937 random(26);
    std::uniform_real_distribution<double> times(1, 4);
    for (int i = 0; i < 60; ++i) {
        const ThresholdModel model = bothModels[i % 2];
        Looks looks = simulated(ThresholdCurve::around(model, 1, 0.2 + 0.02 * i), i % 12, random);
        const LightThreshold before(looks, model);
        looks.push_back({times(random) * before.curve().quantile_sunnyDays(0.95), never});
        const LightThreshold after(looks, model);
        for (const double share : {0.5, 0.8, 0.95}) {
            EXPECT_GE(after.curve().quantile_sunnyDays(share),
                      before.curve().quantile_sunnyDays(share));
            EXPECT_GE(after.quantile_sunnyDays(share).best, before.quantile_sunnyDays(share).best);
        }
    }
}

// Without a prior, three looks would have nine prints in ten return by a million sunny days, or
// allow no curve at all.
TEST(LightThreshold, KeepsThreeLooksFromRunningWild) {
    const Looks few = {{0, 2}, {0, 4.6}, {3, never}};
    const Looks fewer = {{0, 2}, {0, 4.4}, {3, never}};
    const ThresholdModel model = ThresholdModel::logNormal;
    EXPECT_GT(likeliestThreshold(few, model).curve.quantile_sunnyDays(0.9), 1e6);
    EXPECT_THROW(likeliestThreshold(fewer, model), InputError);
    for (const Looks& looks : {few, fewer}) {
        const Estimate dose = LightThreshold(looks, model).quantile_sunnyDays(0.9);
        EXPECT_GT(dose.low, 2);
        EXPECT_LT(dose.best, 10);
        EXPECT_LT(dose.high, 40);
        EXPECT_GT(dose.high / dose.low, 3);
    }
}

TEST(LightThreshold, StaysFiniteWhateverWasSeen) {
    const Looks extremes[] = {{{1e-300, never}},
                              {{1e300, never}, {1e299, never}},
                              {{0, 1e-300}},
                              {{1e-310, 1e308}},
                              {{2, 2}, {2, 2}, {2, 2}},
                              Looks(3000, {5, 5}),
                              {{5, std::nextafter(5, 6)}, {7, std::nextafter(7, 8)}},
                              {{0, 0.001}, {1000, never}, {0, 0.001}, {1000, never}},
                              {{1e-6, 1e-6}, {1e6, 1e6}},
                              Looks(500, {100, never}),
                              Looks(500, {0, 0.01})};
    for (const ThresholdModel model : bothModels)
        for (const Looks& looks : extremes) {
            SCOPED_TRACE(std::to_string(looks[0].low_sunnyDays) + " " +
                         std::to_string(looks[0].high_sunnyDays));
            const LightThreshold found(looks, model);
            EXPECT_TRUE(std::isfinite(found.logLikelihood()));
            const Estimate dose = found.quantile_sunnyDays(0.9);
            EXPECT_GE(dose.low, 0);
            EXPECT_LE(dose.low, dose.best);
            EXPECT_LE(dose.best, dose.high);
            const Estimate share = found.probabilityBy(3);
            EXPECT_LE(share.low, share.best);
            EXPECT_LE(share.best, share.high);
            const double predicted = found.predictedBy(3);
            EXPECT_GE(predicted, 0);
            EXPECT_LE(predicted, 1);
            EXPECT_EQ(found.predictedBy(0), 0);
            EXPECT_EQ(found.probabilityBy(never).low, 1);
        }
}

TEST(LightThreshold, IsTheSameInAnyOrder) {
    std::mt19937 random(24);
    Looks looks = simulated({ThresholdModel::logNormal, 1, 0.6}, 50, random);
    const Estimate dose = LightThreshold(looks, ThresholdModel::weibull).quantile_sunnyDays(0.8);
    std::shuffle(looks.begin(), looks.end(), random);
    const Estimate again = LightThreshold(looks, ThresholdModel::weibull).quantile_sunnyDays(0.8);
    EXPECT_EQ(dose.low, again.low);
    EXPECT_EQ(dose.high, again.high);
}

TEST(LightThreshold, GoesThroughTenThousandPrints) {
    std::mt19937 random(25);
    const ThresholdCurve truth = ThresholdCurve::around(ThresholdModel::logNormal, 1.5, 0.4);
    const LightThreshold found(simulated(truth, 10000, random), ThresholdModel::logNormal);
    const Estimate dose = found.quantile_sunnyDays(0.9, 0.99);
    EXPECT_LT(dose.high / dose.low, 1.1);
    EXPECT_LE(dose.low, truth.quantile_sunnyDays(0.9));
    EXPECT_GE(dose.high, truth.quantile_sunnyDays(0.9));
}

TEST(LightThreshold, RefusesWhatCannotBe) {
    const double unknown = std::numeric_limits<double>::quiet_NaN();
    const auto refusal = [](const ThresholdPrior& prior) {
        return messageOf<InputError>([&] { LightThreshold({}, ThresholdModel::weibull, prior); });
    };
    EXPECT_EQ(refusal({0, 1, 1, 1}),
              "what is likely beforehand: the median dose is 0. Give a number above 0, at most "
              "1000000.");
    EXPECT_EQ(refusal({1, unknown, 1, 1}),
              "what is likely beforehand: the spread of the median dose is nan. Give a number "
              "above 0, at most 10.");
    EXPECT_NE(refusal({1, 1, -1, 1}).find("the width is -1"), std::string::npos);
    EXPECT_NE(refusal({1, 1, 1, never}).find("the spread of the width is inf"), std::string::npos);
    const LightThreshold found({}, ThresholdModel::weibull);
    for (const double within : {0.0, 1.0, unknown})
        EXPECT_THROW(found.quantile_sunnyDays(0.5, within), InputError);
    EXPECT_EQ(messageOf<InputError>([&] { found.probabilityBy(1, 2); }),
              "interval: its chance is 2. Give one above 0 and below 1.");
    EXPECT_THROW(found.quantile_sunnyDays(1), InputError);
    EXPECT_THROW(found.probabilityBy(-1), InputError);
    EXPECT_THROW(found.predictedBy(unknown), InputError);
    EXPECT_THROW(LightThreshold({{3, 2}}, ThresholdModel::weibull), InputError);
}

}  // namespace
}  // namespace rackbook
