#include "calc/LikeliestThreshold.h"

#include <gtest/gtest.h>

#include <cmath>

#include "FactRows.h"
#include "ThresholdFixture.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

const ThresholdModel bothModels[] = {ThresholdModel::logNormal, ThresholdModel::weibull};

std::string refusalOf(const Looks& looks, ThresholdModel model = ThresholdModel::logNormal) {
    return messageOf<InputError>([&] { likeliestThreshold(looks, model); });
}

// Published and invented sets; how the expected values were made stands in the table.
TEST(LikeliestThreshold, AgreesWithAnotherProgram) {
    for (const FactRow& row : factRows("threshold-survreg.csv")) {
        SCOPED_TRACE(row.text("name") + " " + row.text("model"));
        const Looks looks = looksIn(row.text("observations"));
        const LikeliestThreshold found = likeliestThreshold(looks, modelIn(row.text("model")));
        EXPECT_NEAR(found.curve.location_log, row.number("location_log"), 1e-5);
        EXPECT_NEAR(found.curve.scale_log, row.number("scale_log"), 1e-5);
        EXPECT_NEAR(found.logLikelihood, row.number("logLikelihood"), 1e-7);
        EXPECT_EQ(found.observations, looks.size());
        for (const auto& [share, column] :
             {std::pair(0.1, "quantile10"), {0.5, "quantile50"}, {0.9, "quantile90"}}) {
            const double expected = row.number(column);
            EXPECT_NEAR(found.curve.quantile_sunnyDays(share), expected, 3e-5 * expected);
            EXPECT_NEAR(found.curve.probabilityBy(expected), share, 1e-5);
        }
    }
}

TEST(LikeliestThreshold, GoesWithTheUnitOfDose) {
    std::mt19937 random(11);
    for (const ThresholdModel model : bothModels)
        for (const double factor : {1e-9, 0.01, 7.3, 1e12}) {
            const Looks looks = simulated({model, 1, 0.4}, 40, random);
            Looks scaled = looks;
            for (ThresholdObservation& look : scaled) {
                look.low_sunnyDays *= factor;
                look.high_sunnyDays *= factor;
            }
            const ThresholdCurve curve = likeliestThreshold(looks, model).curve;
            const ThresholdCurve other = likeliestThreshold(scaled, model).curve;
            for (const double share : {0.001, 0.3, 0.5, 0.95})
                EXPECT_NEAR(other.quantile_sunnyDays(share) / curve.quantile_sunnyDays(share),
                            factor, 1e-5 * factor);
        }
}

// Of many prints the truth is found; the standard error of the location is about scale/√prints.
TEST(LikeliestThreshold, FindsWhatWasSimulated) {
    std::mt19937 random(12);
    for (const ThresholdModel model : bothModels) {
        const ThresholdCurve truth{model, 1.2, 0.35};
        const ThresholdCurve found =
            likeliestThreshold(simulated(truth, 10000, random), model).curve;
        EXPECT_NEAR(found.location_log, truth.location_log, 0.02);
        EXPECT_NEAR(found.scale_log, truth.scale_log, 0.02);
    }
}

// Of looks that say only "by" or "not by", the mean log dose decides: here it is the same, then a
// little more where the colour had returned.
TEST(LikeliestThreshold, IsThereOnlyWhereMoreLightDidMore) {
    for (const ThresholdModel model : bothModels) {
        EXPECT_EQ(refusalOf({{0, 2}, {0, 8}, {4, never}}, model),
                  "dose at which colour returns: the prints whose colour had returned had no more "
                  "light than those whose had not. Check the doses, or state what is likely "
                  "beforehand.");
        const ThresholdCurve found = likeliestThreshold({{0, 2}, {0, 9}, {4, never}}, model).curve;
        EXPECT_GT(found.scale_log, 5);
    }
}

TEST(LikeliestThreshold, SaysWhyThereIsNone) {
    EXPECT_EQ(refusalOf({}),
              "dose at which colour returns: no observation says anything of it. Look at prints.");
    EXPECT_EQ(refusalOf({{0, never}}), refusalOf({}));
    EXPECT_EQ(refusalOf({{3, never}, {5, never}}),
              "dose at which colour returns: no print's colour has returned yet, so that none is "
              "too high. Look again after more light, or state what is likely beforehand.");
    EXPECT_EQ(refusalOf({{0, 3}, {0, 4}}),
              "dose at which colour returns: every print's colour had returned by the first look, "
              "so that none is too low. Look earlier at the next prints, or state what is likely "
              "beforehand.");
    const std::string alike =
        "dose at which colour returns: one and the same dose agrees with all observations, so that "
        "nothing tells how far prints differ. Look at more prints, or state what is likely "
        "beforehand.";
    EXPECT_EQ(refusalOf({{2, 2}, {2, 2}}), alike);
    EXPECT_EQ(refusalOf({{1, 4}, {3, 6}, {2, never}}), alike);
    EXPECT_EQ(refusalOf({{0, 5}, {5, 10}}), alike);
}

TEST(LikeliestThreshold, NamesTheObservationThatCannotBe) {
    const double unknown = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(refusalOf({{0, 1}, {5, 2}}),
              "observation 2: the colour is said to have returned after 5 and by 2 sunny days. "
              "Give the low dose, 0 or more, and a high one that is above 0 and not below the low "
              "one.");
    for (const ThresholdObservation& wrong :
         Looks{{unknown, 2}, {1, unknown}, {-1, 2}, {0, 0}, {never, never}, {-2, -1}})
        EXPECT_EQ(refusalOf({{0, 1}, {1, 2}, wrong}).substr(0, 15), "observation 3: ");
}

}  // namespace
}  // namespace rackbook
