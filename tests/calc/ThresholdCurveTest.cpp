#include "calc/ThresholdCurve.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "FactRows.h"
#include "ThresholdFixture.h"
#include "base/Error.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

const ThresholdModel bothModels[] = {ThresholdModel::logNormal, ThresholdModel::weibull};

double logChance(const FactRow& row) {
    const ThresholdModel model = modelIn(row.text("model"));
    if (row.text("what") == "upTo")
        return logChanceUpTo(model, row.number("z"));
    if (row.text("what") == "above")
        return logChanceAbove(model, row.number("z"));
    return logChanceWithin(model, row.number("z"), row.number("step"));
}

// Against many digits; how they were made stands in the table.
TEST(ThresholdCurve, KeepsTheDigitsOfChancesTooSmallForANumber) {
    for (const FactRow& row : factRows("threshold-chances.csv")) {
        SCOPED_TRACE(row.text("model") + " " + row.text("what") + " " + row.text("z") + " " +
                     row.text("step"));
        const double expected = row.number("expected");
        EXPECT_NEAR(logChance(row), expected, 2e-8 * std::fabs(expected));
    }
}

TEST(ThresholdCurve, LeavesNoChanceWithoutALogarithm) {
    for (const ThresholdModel model : bothModels)
        for (const double step : {1e-12, 1e-6, 1e-3, 1.0, 100.0})
            for (double z = -1e6; z < 5e5; z = z < -1 ? z / 7 : (z < 0 ? 0 : 7 * z + 1)) {
                // The Weibull model's chance above is exp(−exp(z)).
                if (model == ThresholdModel::weibull && z > 700)
                    break;
                EXPECT_TRUE(std::isfinite(logChanceUpTo(model, -std::fabs(z)))) << z;
                EXPECT_TRUE(std::isfinite(logChanceAbove(model, z))) << z;
                EXPECT_TRUE(std::isfinite(logChanceWithin(model, z, step))) << z << " " << step;
            }
}

// Narrow steps are reckoned by the density: the two ways meet.
TEST(ThresholdCurve, HasNoJumpWhereStepsBecomeNarrow) {
    for (const ThresholdModel model : bothModels)
        for (const double z : {-30.0, -3.0, -0.3, 0.0, 0.7, 4.0}) {
            const double edge = 1e-5 / (1 + std::fabs(z));
            const double below = logChanceWithin(model, z, 0.9999 * edge) - std::log(0.9999);
            EXPECT_NEAR(logChanceWithin(model, z, 1.0001 * edge) - std::log(1.0001), below, 1e-7);
        }
}

// R 4.2.2: qlnorm(c(0.001, 0.5, 0.95), 1.2, 0.4); qweibull(the same, 1/0.4, exp(1.2)).
TEST(ThresholdCurve, HasTheQuantilesOfTheTwoDistributions) {
    const ThresholdCurve normal{ThresholdModel::logNormal, 1.2, 0.4};
    EXPECT_NEAR(normal.quantile_sunnyDays(0.001), 0.964550660892, 1e-9);
    EXPECT_NEAR(normal.quantile_sunnyDays(0.5), 3.32011692274, 1e-9);
    EXPECT_NEAR(normal.quantile_sunnyDays(0.95), 6.41052679447, 1e-9);
    const ThresholdCurve weibull{ThresholdModel::weibull, 1.2, 0.4};
    EXPECT_NEAR(weibull.quantile_sunnyDays(0.001), 0.209527134398, 1e-9);
    EXPECT_NEAR(weibull.quantile_sunnyDays(0.5), 2.86736884856, 1e-9);
    EXPECT_NEAR(weibull.quantile_sunnyDays(0.95), 5.14937568002, 1e-9);
}

TEST(ThresholdCurve, TakesSharesBackToDoses) {
    for (const ThresholdModel model : bothModels) {
        const ThresholdCurve curve = ThresholdCurve::around(model, std::log(4), 0.7);
        EXPECT_NEAR(curve.median_log(), std::log(4), 1e-14);
        EXPECT_NEAR(curve.width_log(), 0.7, 1e-14);
        EXPECT_NEAR(curve.quantile_sunnyDays(0.5), 4, 1e-12);
        for (const double share : {1e-9, 0.01, 0.4, 0.99})
            EXPECT_NEAR(curve.probabilityBy(curve.quantile_sunnyDays(share)), share,
                        1e-12 + 1e-9 * share);
        EXPECT_EQ(curve.probabilityBy(0), 0);
        EXPECT_EQ(curve.probabilityBy(never), 1);
    }
}

// The deviation of a hundred thousand logarithms of doses, to five of its standard errors.
TEST(ThresholdCurve, HasTheWidthItIsAskedFor) {
    std::mt19937 random(3);
    for (const ThresholdModel model : bothModels) {
        const ThresholdCurve curve = ThresholdCurve::around(model, 1, 0.5);
        constexpr int count = 100000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < count; ++i) {
            const double dose_log = std::log(drawnFrom(curve, random));
            sum += dose_log;
            squares += dose_log * dose_log;
        }
        EXPECT_NEAR(std::sqrt(squares / count - std::pow(sum / count, 2)), 0.5, 0.008);
    }
}

TEST(ThresholdCurve, RefusesWhatIsNoShareOrDose) {
    const ThresholdCurve curve;
    const double unknown = std::numeric_limits<double>::quiet_NaN();
    for (const double share : {0.0, 1.0, -0.1, unknown})
        EXPECT_THROW(curve.quantile_sunnyDays(share), InputError);
    for (const double dose : {-1.0, unknown})
        EXPECT_THROW(curve.probabilityBy(dose), InputError);
    EXPECT_EQ(messageOf<InputError>([&] { curve.quantile_sunnyDays(1); }),
              "share of prints: it is 1. Give one above 0 and below 1.");
    EXPECT_EQ(messageOf<InputError>([&] { curve.probabilityBy(-1); }),
              "dose: it is -1 sunny days. Give one of 0 or more.");
}

}  // namespace
}  // namespace rackbook
