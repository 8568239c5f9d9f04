#include "calc/UltravioletShare.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "FactRows.h"
#include "SkyFixture.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::expectOrdered;
using test::FactRow;
using test::valuesIn;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

SkyLight lightOf(double elevation_deg, double oktas) {
    SunPosition sun;
    sun.elevation_deg = sun.apparentElevation_deg = elevation_deg;
    sun.azimuth_deg = 180;
    return skyLightOf(sun, Oktas::exactly(oktas));
}

double levelShareOf(const SkyLight& light) {
    const PlaneLight level = onLevel(light);
    return nearUltraviolet_Wm2(light, level).best / level.total_Wm2.best;
}

TEST(UvIndex, GivesTheRowsOfTheTable) {
    int checked = 0;
    for (const FactRow& row : test::factRows("irradiance.csv")) {
        const std::string& quantity = row.text("quantity");
        if (quantity.rfind("madronich", 0) != 0)
            continue;
        SCOPED_TRACE(row.text("row"));
        const auto in = valuesIn(row.text("input"));
        const double index = clearSkyUvIndex(90 - in.at("zenith_deg"), in.at("ozone_DU"));
        if (quantity == "madronich_uvi")
            EXPECT_NEAR(index, row.number("expected"), 1e-6);
        else
            EXPECT_NEAR(erythemal_Wm2(index), row.number("expected"), 1e-8);
        ++checked;
    }
    EXPECT_EQ(checked, 15);
    EXPECT_EQ(clearSkyUvIndex(0), 0);
    EXPECT_EQ(clearSkyUvIndex(-30), 0);
}

// Sums over the reference spectra of ASTM G173-03.
TEST(UltravioletShare, GivesTheSharesOfTheReferenceSpectra) {
    int checked = 0;
    for (const FactRow& row : test::factRows("irradiance.csv")) {
        const std::string& quantity = row.text("quantity");
        const double expected = row.number("expected");
        if (quantity == "uva_share_outside_air")
            // Without air the share would be this: the attenuation goes out of the exponent.
            EXPECT_NEAR(std::pow(directUltravioletShare(30).best, -airMass(60)) *
                            std::pow(directUltravioletShare(60).best, airMass(30)),
                        std::pow(expected, airMass(30) - airMass(60)), 1e-9);
        else if (quantity == "uva_share_direct")
            EXPECT_NEAR(directUltravioletShare(41.81).best, expected, 0.0001);
        else if (quantity == "uva_share_global_clear")
            EXPECT_NEAR(clearGlobalUltravioletShare().best, expected, 0.0005);
        else if (quantity == "uva_share_sky_clear")
            EXPECT_NEAR(skyUltravioletShare(Oktas::exactly(0)).best, expected, 0.0005);
        else
            continue;
        ++checked;
    }
    EXPECT_EQ(checked, 4);
}

TEST(UltravioletShare, AddsUpToTheGlobalOfAClearSky) {
    const Estimate global = clearGlobalUltravioletShare();
    for (const double elevation : {35.0, 41.81, 60.0, 80.0}) {
        EXPECT_GT(levelShareOf(lightOf(elevation, 0)), global.low) << elevation;
        EXPECT_LT(levelShareOf(lightOf(elevation, 0)), global.high) << elevation;
    }
}

TEST(UltravioletShare, RisesWithCloudAndTowardsTheOpenSky) {
    for (const double elevation : {30.0, 60.0})
        EXPECT_GT(levelShareOf(lightOf(elevation, 8)), levelShareOf(lightOf(elevation, 0)));
    const SkyLight clear = lightOf(45, 0);
    const PlaneLight north = onUpright(clear, {0, 0.2});
    const PlaneLight south = onUpright(clear, {180, 0.2});
    EXPECT_GT(nearUltraviolet_Wm2(clear, north).best / north.total_Wm2.best,
              nearUltraviolet_Wm2(clear, south).best / south.total_Wm2.best);
    EXPECT_LT(nearUltraviolet_Wm2(clear, north).best, nearUltraviolet_Wm2(clear, south).best);
}

TEST(UltravioletShare, HasOrderedBounds) {
    for (double elevation = -5; elevation <= 90; elevation += 5)
        for (double oktas = 0; oktas <= 8; ++oktas) {
            expectOrdered(directUltravioletShare(elevation));
            expectOrdered(skyUltravioletShare(Oktas::exactly(oktas)));
            const SkyLight light = lightOf(elevation, oktas);
            expectOrdered(nearUltraviolet_Wm2(light, onUpright(light, {})));
            EXPECT_LE(nearUltraviolet_Wm2(light, onLevel(light)).high,
                      0.17 * (onLevel(light).direct_Wm2.high + light.diffuse_Wm2.high));
        }
    EXPECT_EQ(directUltravioletShare(0).high, 0);
}

// Kasten, Young 1989: 1 in the zenith (0.9997 by the formula), about 38 at the horizon; 1/sin h
// while the sun is high.
TEST(AirMass, FollowsKastenAndYoung) {
    EXPECT_NEAR(airMass(90), 1, 0.0004);
    EXPECT_NEAR(airMass(0), 38, 0.15);
    EXPECT_EQ(airMass(-3), airMass(0));
    EXPECT_NEAR(airMass(30), 2, 0.01);
}

TEST(UltravioletShare, RefusesWhatCannotBe) {
    EXPECT_EQ(test::messageOf<InputError>([] { clearSkyUvIndex(45, 50); }),
              "ultraviolet: the ozone column is 50 Dobson units. Give 100 to 600, usually 300.");
    EXPECT_EQ(test::messageOf<InputError>([] { clearSkyUvIndex(95); }),
              "ultraviolet: the sun's elevation is 95°. Give -90 to 90.");
    EXPECT_EQ(test::messageOf<InputError>([] { erythemal_Wm2(-1); }),
              "ultraviolet: the UV index is -1. Give 0 or more.");
    EXPECT_EQ(test::messageOf<InputError>([] { skyUltravioletShare(Oktas::exactly(11)); }),
              "cloud cover: it is 11 oktas. Give eighths of the sky, 0 to 8.");
    EXPECT_NE(test::messageOf<InputError>([] { directUltravioletShare(unknown); }),
              "(nothing was thrown)");
    EXPECT_NE(test::messageOf<InputError>([] { airMass(unknown); }), "(nothing was thrown)");
    EXPECT_NE(test::messageOf<InputError>([] { clearSkyUvIndex(45, unknown); }),
              "(nothing was thrown)");
    EXPECT_NE(test::messageOf<InputError>([] { erythemal_Wm2(unknown); }), "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
