#include "calc/LuminousEfficacy.h"

#include <gtest/gtest.h>

#include <limits>

#include "FactRows.h"
#include "SkyFixture.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::expectOrdered;
using test::FactRow;

TEST(LuminousEfficacy, HasTheFiguresOfTheTableWithinItsBounds) {
    int checked = 0;
    for (const FactRow& row : test::factRows("irradiance.csv")) {
        SCOPED_TRACE(row.text("row"));
        const std::string& quantity = row.text("quantity");
        const double expected = row.number("expected");
        Estimate ours;
        if (quantity == "efficacy_global_clear_lm_per_W")
            ours = globalEfficacy_lmW();
        else if (quantity == "efficacy_diffuse_clear_lm_per_W")
            ours = skyEfficacy_lmW(Oktas::exactly(0));
        else if (quantity == "efficacy_diffuse_overcast_lm_per_W")
            ours = skyEfficacy_lmW(Oktas::exactly(8));
        else if (quantity == "efficacy_direct_low_sun_lm_per_W")
            ours = directEfficacy_lmW(10);
        else
            continue;
        expectOrdered(ours);
        EXPECT_NEAR(ours.best, expected, 2);
        EXPECT_LE(ours.low, expected);
        EXPECT_GE(ours.high, expected);
        ++checked;
    }
    EXPECT_EQ(checked, 4);
}

// Littlefair 1988, measured at Garston (abstract).
TEST(LuminousEfficacy, HasTheMeasurementsOfGarstonWithinItsBounds) {
    EXPECT_DOUBLE_EQ(directEfficacy_lmW(10).best, 70);
    EXPECT_DOUBLE_EQ(directEfficacy_lmW(60).best, 95);
    EXPECT_GE(skyEfficacy_lmW(Oktas::exactly(0)).high, 144);
    EXPECT_GE(skyEfficacy_lmW(Oktas::exactly(8)).high, 115);
    EXPECT_LE(globalEfficacy_lmW().best, 109);
    EXPECT_GE(globalEfficacy_lmW().high, 109);
}

TEST(LuminousEfficacy, RisesWithTheSunAndFallsWithCloud) {
    for (double elevation = -5; elevation < 90; ++elevation) {
        expectOrdered(directEfficacy_lmW(elevation));
        EXPECT_LE(directEfficacy_lmW(elevation).best, directEfficacy_lmW(elevation + 1).best);
    }
    EXPECT_DOUBLE_EQ(directEfficacy_lmW(90).best, 105);
    for (double oktas = 0; oktas < 8; ++oktas)
        EXPECT_GT(skyEfficacy_lmW(Oktas::exactly(oktas)).best,
                  skyEfficacy_lmW(Oktas::exactly(oktas + 1)).best);
    const Estimate wide = skyEfficacy_lmW({0, 4, 8});
    EXPECT_EQ(wide.low, 105);
    EXPECT_EQ(wide.best, 120);
    EXPECT_EQ(wide.high, 145);
}

// The parts put together again give the efficacy of sun and sky together (105–109, Littlefair),
// to within what the abstracts leave open.
TEST(LuminousEfficacy, AddsUpToThatOfSunAndSky) {
    for (double elevation = 20; elevation <= 80; elevation += 10)
        for (const double oktas : {0.0, 4.0, 8.0}) {
            SunPosition sun;
            sun.elevation_deg = sun.apparentElevation_deg = elevation;
            const SkyLight light = skyLightOf(sun, Oktas::exactly(oktas));
            const PlaneLight level = onLevel(light);
            const Estimate lux = illuminance_lx(light, level);
            expectOrdered(lux);
            const double efficacy = lux.best / level.total_Wm2.best;
            EXPECT_GT(efficacy, 90) << elevation << ' ' << oktas;
            EXPECT_LT(efficacy, 115) << elevation << ' ' << oktas;
        }
}

// Common practice, no source: full sun at noon in summer about 100,000 lx, an overcast sky
// 5,000–25,000 lx, a wall in the shade of a clear day 5,000–20,000 lx.
TEST(Illuminance, IsWhatPeopleExpectOutOfDoors) {
    SunPosition sun;
    sun.elevation_deg = sun.apparentElevation_deg = 60;
    sun.azimuth_deg = 180;
    const SkyLight clear = skyLightOf(sun, Oktas::exactly(0));
    EXPECT_NEAR(illuminance_lx(clear, onLevel(clear)).best, 100000, 20000);
    EXPECT_NEAR(illuminance_lx(clear, onUpright(clear, {0, 0.2})).best, 15000, 7500);
    const SkyLight dull = skyLightOf(sun, Oktas::exactly(8));
    EXPECT_NEAR(illuminance_lx(dull, onLevel(dull)).best, 20000, 10000);
}

TEST(LuminousEfficacy, RefusesWhatCannotBe) {
    EXPECT_EQ(test::messageOf<InputError>([] { directEfficacy_lmW(-91); }),
              "daylight: the sun's elevation is -91°. Give -90 to 90.");
    EXPECT_NE(test::messageOf<InputError>(
                  [] { directEfficacy_lmW(std::numeric_limits<double>::quiet_NaN()); }),
              "(nothing was thrown)");
    EXPECT_EQ(test::messageOf<InputError>([] { skyEfficacy_lmW(Oktas::exactly(-2)); }),
              "cloud cover: it is -2 oktas. Give eighths of the sky, 0 to 8.");
}

}  // namespace
}  // namespace rackbook
