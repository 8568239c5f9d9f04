#include "calc/DaylightDose.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "SkyFixture.h"
#include "calc/ClearSky.h"
#include "calc/SunDay.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::expectOrdered;
using test::later;
using test::utc;

constexpr double day_min = 1440;
const Oktas clear = Oktas::exactly(0);

double relative(const Estimate& a, const Estimate& b) {
    return b.best > 0 ? std::fabs(a.best / b.best - 1) : std::fabs(a.best);
}

// At a pole the sun keeps its height all day: 24 h of one irradiance.
TEST(DaylightDose, IsTimeTimesIrradianceAtThePole) {
    const UtcTime from = utc("2026-06-20T20:00:00Z");  // around the solstice
    const double height = sunAt({90, 0}, later(from, day_min / 2)).apparentElevation_deg;
    const DaylightDose dose = doseOnLevel({90, 0}, from, later(from, day_min), clear);
    EXPECT_NEAR(dose.irradiation_Whm2.best, 24 * haurwitzGlobal_Wm2(height), 0.5);
    // Half of each azimuth's day: direct light cos h/π of the normal, half of sky and ground.
    const SkyLight light = skyLightOf(sunAt({90, 0}, later(from, day_min / 2)), clear);
    const double expected =
        24 * (light.directNormal_Wm2.best * std::cos(height * 3.14159265358979323846 / 180) /
                  3.14159265358979323846 +
              0.5 * light.diffuse_Wm2.best + 0.1 * light.global_Wm2.best);
    const DaylightDose wall = doseOnUpright({90, 0}, {123, 0.2}, from, later(from, day_min), clear);
    EXPECT_NEAR(wall.irradiation_Whm2.best, expected, 2e-4 * expected);
}

// Against a plain sum over every 10 s.
TEST(DaylightDose, AgreesWithAFineSum) {
    const GeoPoint place{48.2, 16.4};
    const UtcTime from = utc("2026-09-01T22:00:00Z");
    double sum = 0;
    for (int i = 0; i < 8640; ++i) {
        const SunPosition sun = sunAt(place, later(from, (i + 0.5) / 6));
        sum += haurwitzGlobal_Wm2(sun.apparentElevation_deg) / 360;
    }
    const DaylightDose dose = doseOnLevel(place, from, later(from, day_min), clear);
    EXPECT_NEAR(dose.irradiation_Whm2.best, sum, 1e-5 * sum);
}

// Allen et al. 1998, FAO Irrigation and Drainage Paper 56, example 8 and equation 37 (from memory):
// 20° S on 3 September has 32.2 MJ/m² outside the air, of which clear skies leave three quarters.
TEST(DaylightDose, HasTheClearDayOfFao56WithinItsBounds) {
    const UtcTime from = utc("2026-09-03T00:00:00Z");
    const DaylightDose dose = doseOnLevel({-20, 0}, from, later(from, day_min), clear);
    const double fao_Whm2 = 0.75 * 32.2e6 / 3600;
    EXPECT_LE(dose.irradiation_Whm2.low, fao_Whm2);
    EXPECT_GE(dose.irradiation_Whm2.high, fao_Whm2);
    EXPECT_NEAR(dose.irradiation_Whm2.best, fao_Whm2, 0.07 * fao_Whm2);
}

TEST(DaylightDose, HardlyChangesWhenTheStepIsHalved) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> any(0, 1);
    for (int i = 0; i < 150; ++i) {
        const GeoPoint place{130 * any(random) - 65, 360 * any(random) - 180};
        const UtcTime from =
            later(utc("2020-01-01T00:00:00Z"), std::floor(7300 * any(random)) * day_min);
        const UtcTime until = later(from, day_min);
        const Oktas oktas = Oktas::exactly(std::floor(9 * any(random)));
        const UprightPlane wall{360 * any(random), 0.2};
        const DaylightDose level = doseOnLevel(place, from, until, oktas);
        if (level.irradiation_Whm2.best < 50)
            continue;
        const DaylightDose finer = doseOnLevel(place, from, until, oktas, 2.5);
        EXPECT_LT(relative(level.irradiation_Whm2, finer.irradiation_Whm2), 2e-5);
        EXPECT_LT(relative(level.exposure_lxh, finer.exposure_lxh), 2e-5);
        EXPECT_LT(relative(level.nearUltraviolet_Whm2, finer.nearUltraviolet_Whm2), 2e-5);
        EXPECT_LT(relative(doseOnUpright(place, wall, from, until, oktas).irradiation_Whm2,
                           doseOnUpright(place, wall, from, until, oktas, 2.5).irradiation_Whm2),
                  2e-4);
    }
}

TEST(DaylightDose, AddsUpOverParts) {
    const GeoPoint place{-41.3, 174.8};
    const UtcTime from = utc("2026-02-01T11:00:00Z");
    const UtcTime middle = later(from, 700.25);
    const UtcTime until = later(from, day_min + 60);
    const Oktas oktas{2, 4, 6};
    const DaylightDose whole = doseOnLevel(place, from, until, oktas);
    const DaylightDose first = doseOnLevel(place, from, middle, oktas);
    const DaylightDose second = doseOnLevel(place, middle, until, oktas);
    const auto expectSum = [](const Estimate& a, const Estimate& b, const Estimate& sum) {
        EXPECT_NEAR(a.low + b.low, sum.low, 1e-4 * sum.low);
        EXPECT_NEAR(a.best + b.best, sum.best, 1e-4 * sum.best);
        EXPECT_NEAR(a.high + b.high, sum.high, 1e-4 * sum.high);
        expectOrdered(sum);
    };
    expectSum(first.irradiation_Whm2, second.irradiation_Whm2, whole.irradiation_Whm2);
    expectSum(first.exposure_lxh, second.exposure_lxh, whole.exposure_lxh);
    expectSum(first.nearUltraviolet_Whm2, second.nearUltraviolet_Whm2, whole.nearUltraviolet_Whm2);
}

TEST(DaylightDose, IsNothingByNightAndInNoTime) {
    const GeoPoint place{52, 5};
    const SunDay day = sunDayOf(place, utc("2026-05-10T12:00:00Z"));
    const UtcTime evening = later(*day.sunset, 10);
    const DaylightDose night = doseOnLevel(place, evening, later(evening, 300), clear);
    EXPECT_EQ(night.irradiation_Whm2.high, 0);
    EXPECT_EQ(night.exposure_lxh.high, 0);
    EXPECT_EQ(night.nearUltraviolet_Whm2.high, 0);
    EXPECT_EQ(doseOnLevel(place, day.noon, day.noon, clear).irradiation_Whm2.high, 0);
    const DaylightDose day24 =
        doseOnLevel(place, later(day.noon, -720), later(day.noon, 720), clear);
    const DaylightDose light = doseOnLevel(place, *day.sunrise, *day.sunset, clear);
    EXPECT_NEAR(light.irradiation_Whm2.best, day24.irradiation_Whm2.best, 1);
}

TEST(DaylightDose, IsGreaterOnTheSunnySide) {
    const UtcTime from = utc("2026-03-20T00:00:00Z");
    const auto onWall = [&](double latitude, double facing) {
        return doseOnUpright({latitude, 0}, {facing, 0.2}, from, later(from, day_min), clear)
            .irradiation_Whm2.best;
    };
    EXPECT_GT(onWall(50, 180), 3 * onWall(50, 0));
    EXPECT_GT(onWall(-50, 0), 3 * onWall(-50, 180));
    EXPECT_NEAR(onWall(50, 180), onWall(-50, 0), 0.02 * onWall(50, 180));
    EXPECT_NEAR(onWall(50, 90), onWall(50, 270), 0.02 * onWall(50, 90));
}

TEST(DaylightDose, GrowsSmallerWithCloud) {
    const UtcTime from = utc("2026-07-01T00:00:00Z");
    double before = std::numeric_limits<double>::infinity();
    for (double oktas = 0; oktas <= 8; ++oktas) {
        const DaylightDose dose =
            doseOnLevel({52, 5}, from, later(from, day_min), Oktas::exactly(oktas));
        EXPECT_LT(dose.irradiation_Whm2.best, before);
        before = dose.irradiation_Whm2.best;
    }
}

TEST(DaylightDose, RefusesWhatCannotBe) {
    const UtcTime noon = utc("2026-07-01T12:00:00Z");
    EXPECT_EQ(test::messageOf<InputError>([&] {
                  doseOnLevel({0, 0}, noon, later(noon, -1), clear);
              }),
              "daylight: the time ends before it begins. Give the earlier instant first.");
    EXPECT_EQ(test::messageOf<InputError>([&] {
                  doseOnLevel({0, 0}, noon, noon, clear, 0);
              }),
              "daylight: the step is 0 min. Give one above 0.");
    EXPECT_EQ(test::messageOf<InputError>([&] {
                  doseOnLevel({99, 0}, noon, noon, clear);
              }),
              "place on Earth: the latitude is 99°. Give -90 (South Pole) to 90 (North Pole).");
    EXPECT_EQ(test::messageOf<InputError>([&] {
                  doseOnLevel({0, 0}, noon, noon, Oktas::exactly(9));
              }),
              "cloud cover: it is 9 oktas. Give eighths of the sky, 0 to 8.");
    EXPECT_NE(test::messageOf<InputError>([&] {
                  doseOnUpright({0, 0}, {500, 0.2}, noon, later(noon, 1), clear);
              }),
              "(nothing was thrown)");
    const double unknown = std::numeric_limits<double>::quiet_NaN();
    EXPECT_NE(test::messageOf<InputError>([&] {
                  doseOnLevel({0, 0}, noon, {unknown}, clear);
              }),
              "(nothing was thrown)");
    EXPECT_NE(test::messageOf<InputError>([&] {
                  doseOnLevel({0, 0}, noon, noon, clear, unknown);
              }),
              "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
