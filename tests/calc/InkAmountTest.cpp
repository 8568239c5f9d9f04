#include "calc/InkAmount.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;

constexpr double infinite = std::numeric_limits<double>::infinity();

// 0.1 m², half of it inked, 20 sheets: 1 m² of ink.
PulledFilm pulled(double ink_g, int edition = 0, int layer = 0) {
    return {edition, layer, ink_g, 20, 0.1, 0.5};
}

// Expected values: statistics.quantiles(data, n=4, method='inclusive') of CPython 3.11.7, which is
// type 7.
TEST(InkAmount, QuartilesAreOfTypeSeven) {
    const auto expect = [](const std::vector<double>& data, double lower, double median,
                           double upper) {
        const Quartiles quartiles = quartilesOf(data);
        EXPECT_DOUBLE_EQ(quartiles.lower, lower);
        EXPECT_DOUBLE_EQ(quartiles.median, median);
        EXPECT_DOUBLE_EQ(quartiles.upper, upper);
    };
    expect({41, 7, 39, 15, 40, 36}, 20.25, 37.5, 39.75);
    expect({1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, 3.25, 5.5, 7.75);
    expect({4.2, 3.9, 6.1, 5.5, 9.75}, 4.2, 5.5, 6.1);
}

TEST(InkAmount, QuartilesOfLittleOrNothing) {
    EXPECT_TRUE(std::isnan(quartilesOf({}).median));
    EXPECT_DOUBLE_EQ(quartilesOf({8}).lower, 8);
    EXPECT_DOUBLE_EQ(quartilesOf({8}).upper, 8);
}

TEST(InkAmount, FilmWeightIsInkOverInkedArea) {
    EXPECT_DOUBLE_EQ(filmWeightOf(pulled(6)), 6);
}

TEST(InkAmount, APullThatLacksSomethingSaysNothing) {
    const auto weight = [](auto change) {
        PulledFilm pull = pulled(6);
        change(pull);
        return filmWeightOf(pull);
    };
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.inkUsed_g = notKnown; })));
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.inkUsed_g = -1; })));
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.inkUsed_g = infinite; })));
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.sheets = 0; })));
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.area_m2 = notKnown; })));
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.area_m2 = -0.1; })));
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.coverage = 0; })));
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.coverage = notKnown; })));
    EXPECT_TRUE(std::isnan(weight([](PulledFilm& p) { p.coverage = 1.1; })));
}

TEST(InkAmount, LearnsFromTheNearestPullsThatAreEnough) {
    std::vector<PulledFilm> pulls = {pulled(4, 0, 0), pulled(5, 0, 0), pulled(notKnown, 0, 0)};
    EXPECT_EQ(filmWeightFor(pulls, 0, 0).from, FilmWeightFrom::commonPractice);
    pulls.push_back(pulled(9, 1, 2));
    const FilmWeight studio = filmWeightFor(pulls, 0, 0);
    EXPECT_EQ(studio.from, FilmWeightFrom::studio);
    EXPECT_EQ(studio.pulls, 3U);
    EXPECT_DOUBLE_EQ(studio.weight_gm2.best, 5);
    pulls.push_back(pulled(7, 0, 1));
    EXPECT_EQ(filmWeightFor(pulls, 0, 0).from, FilmWeightFrom::edition);
    EXPECT_DOUBLE_EQ(filmWeightFor(pulls, 0, 0).weight_gm2.best, 5);
    pulls.push_back(pulled(12, 0, 0));
    const FilmWeight layer = filmWeightFor(pulls, 0, 0);
    EXPECT_EQ(layer.from, FilmWeightFrom::layer);
    EXPECT_DOUBLE_EQ(layer.weight_gm2.low, 4.5);
    EXPECT_DOUBLE_EQ(layer.weight_gm2.best, 5);
    EXPECT_DOUBLE_EQ(layer.weight_gm2.high, 8.5);
}

TEST(InkAmount, WithoutPullsTheRangeOfCommonPracticeHolds) {
    const FilmWeight weight = filmWeightFor({}, 0, 0);
    EXPECT_DOUBLE_EQ(weight.weight_gm2.low, 3);
    EXPECT_FALSE(weight.weight_gm2.isKnown());
    EXPECT_DOUBLE_EQ(weight.weight_gm2.high, 15);
    EXPECT_EQ(weight.pulls, 0U);
    // Pulls of no known layer are not those of another unknown one.
    EXPECT_EQ(filmWeightFor({pulled(4, -1, -1), pulled(4, -1, -1), pulled(4, -1, -1)}, -1, -1).from,
              FilmWeightFrom::studio);
}

TEST(InkAmount, InkIsAreaTimesCoverageTimesSheetsTimesFilm) {
    const Estimate ink = inkNeeded({0.06, 0.4, 30, 0.1, {4, 5, 8}});
    EXPECT_NEAR(ink.low, 0.06 * 0.4 * 33 * 4, 1e-12);
    EXPECT_NEAR(ink.best, 3.96, 1e-12);
    EXPECT_NEAR(ink.high, 6.336, 1e-12);
}

TEST(InkAmount, NothingIsNeededForNothing) {
    EXPECT_EQ(inkNeeded({0.06, 0.4, 0, 0.1, {4, 5, 8}}).high, 0);
    EXPECT_EQ(inkNeeded({0.06, 0, 30, 0.1, {4, 5, 8}}).high, 0);
}

TEST(InkAmount, WithoutAreaOrCoverageItCanBeAnything) {
    for (const InkQuestion& question : {InkQuestion{notKnown, 0.4, 30, 0, {4, 5, 8}},
                                        InkQuestion{0.06, notKnown, 30, 0, {4, 5, 8}}}) {
        const Estimate ink = inkNeeded(question);
        EXPECT_EQ(ink.low, 0);
        EXPECT_FALSE(ink.isKnown());
        EXPECT_TRUE(std::isinf(ink.high));
    }
}

TEST(InkAmount, RefusesWhatCannotBe) {
    const auto refusal = [](InkQuestion question) {
        return messageOf([&] { inkNeeded(question); });
    };
    const Estimate film = {4, 5, 8};
    for (const double area_m2 : {0.0, -0.06, infinite})
        EXPECT_EQ(refusal({area_m2, 0.4, 30, 0, film}),
                  "image area: it is not above 0. Give the image's size in mm.");
    for (const double coverage : {-0.1, 1.01, infinite})
        EXPECT_EQ(refusal({0.06, coverage, 30, 0, film}),
                  "coverage: it is outside 0 … 1. Give the inked share of the image.");
    EXPECT_EQ(refusal({0.06, 0.4, -1, 0, film}),
              "sheets: their number is below 0. Give how many are wanted.");
    for (const double spoils : {-0.1, notKnown, infinite})
        EXPECT_EQ(refusal({0.06, 0.4, 30, spoils, film}),
                  "spoil share: it is not a number of 0 or more. "
                  "Give the spoils for each good sheet: 0.1 for one in ten.");
}

TEST(InkAmount, AddsUpWhatIsNeededOfEachMix) {
    const LayerInk first = {{8, 10, 20}, {3, 1}, {Estimate::exactly(1), Estimate::exactly(0.2)}};
    const LayerInk second = {{4, notKnown, 6}, {1}, {Estimate::exactly(0.5)}};
    const std::vector<MixNeed> needs = inkByMix({first, second});
    ASSERT_EQ(needs.size(), 2U);
    EXPECT_EQ(needs[0].mix, 1);
    EXPECT_EQ(needs[0].layers, 2U);
    EXPECT_NEAR(needs[0].mass_g.low, 3.6, 1e-12);
    EXPECT_FALSE(needs[0].mass_g.isKnown());
    EXPECT_NEAR(needs[0].mass_g.high, 7, 1e-12);
    EXPECT_DOUBLE_EQ(needs[1].mass_g.best, 10);
    EXPECT_TRUE(inkByMix({}).empty());
    EXPECT_EQ(messageOf<std::invalid_argument>([&] {
                  inkByMix({{{8, 10, 20}, {3}, {}}});
              }),
              "inkByMix: a layer has not a share for each mix");
}

TEST(InkAmount, FindsTheMixesThatAnInkIsMadeFrom) {
    History history;
    history.lots = {LotKind::ink, LotKind::base};
    history.mixCount = 3;
    const auto add = [&](int mix, int lot, int fromMix, double mass_g) {
        const auto minute = static_cast<CivilMinute>(history.weighings.size());
        history.weighings.push_back(
            {mix, WeighingAct::add, lot, fromMix, {minute, minute}, 0, mass_g});
    };
    add(0, 0, -1, 50);
    add(1, -1, 0, 10);
    add(1, 1, -1, 30);
    const MixStages stages(history);
    const std::vector<MixNeed> needs = inkByMix({inkFromMix(stages, 1, Estimate::exactly(20)),
                                                 inkFromMix(stages, 0, Estimate::exactly(7)),
                                                 inkFromMix(stages, 2, Estimate::exactly(4))});
    ASSERT_EQ(needs.size(), 3U);
    EXPECT_DOUBLE_EQ(needs[0].mass_g.best, 12);
    EXPECT_DOUBLE_EQ(needs[1].mass_g.best, 20);
    EXPECT_DOUBLE_EQ(needs[2].mass_g.best, 4);
}

}  // namespace
}  // namespace rackbook
