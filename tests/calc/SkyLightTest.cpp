#include "calc/SkyLight.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "SkyFixture.h"
#include "calc/ClearSky.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::expectOrdered;

constexpr double pi = 3.14159265358979323846;
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

SunPosition sunStanding(double elevation_deg, double azimuth_deg = 180) {
    SunPosition sun;
    sun.elevation_deg = sun.apparentElevation_deg = elevation_deg;
    sun.azimuth_deg = azimuth_deg;
    return sun;
}

SkyLight lightOf(double elevation_deg, double oktas, double azimuth_deg = 180) {
    return skyLightOf(sunStanding(elevation_deg, azimuth_deg), Oktas::exactly(oktas));
}

double diffuseShareOf(const SkyLight& light) {
    return light.diffuse_Wm2.best / light.global_Wm2.best;
}

TEST(SkyLight, IsTheSumOfSunAndSky) {
    for (double elevation = 1; elevation <= 90; elevation += 7)
        for (double oktas = 0; oktas <= 8; ++oktas) {
            const SkyLight light = lightOf(elevation, oktas);
            const double direct = light.directNormal_Wm2.best * std::sin(elevation * pi / 180);
            EXPECT_NEAR(direct + light.diffuse_Wm2.best, light.global_Wm2.best, 1e-9);
            const PlaneLight level = onLevel(light);
            EXPECT_NEAR(level.direct_Wm2.best, direct, 1e-9);
            EXPECT_EQ(level.total_Wm2.best, light.global_Wm2.best);
            EXPECT_EQ(level.ground_Wm2.high, 0);
        }
}

TEST(SkyLight, HasOrderedBoundsBelowTheSunOutsideTheAir) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> any(0, 1);
    for (int i = 0; i < 2000; ++i) {
        const double low = 8 * any(random);
        const double high = low + (8 - low) * any(random);
        const Oktas oktas{low, low + (high - low) * any(random), high};
        const SkyLight light = skyLightOf(sunStanding(90 * any(random)), oktas);
        expectOrdered(light.global_Wm2);
        expectOrdered(light.diffuse_Wm2);
        expectOrdered(light.directNormal_Wm2);
        EXPECT_LT(light.directNormal_Wm2.high, extraterrestrial_Wm2(1));
        const PlaneLight wall = onUpright(light, {360 * any(random), 0.2});
        expectOrdered(wall.total_Wm2);
    }
}

TEST(SkyLight, ComesMoreFromTheSkyTheCloudierItIs) {
    for (const double elevation : {10.0, 30.0, 60.0}) {
        for (double oktas = 2; oktas < 8; ++oktas)
            EXPECT_LT(diffuseShareOf(lightOf(elevation, oktas)),
                      diffuseShareOf(lightOf(elevation, oktas + 1)) + 0.002);
        EXPECT_GT(diffuseShareOf(lightOf(elevation, 8)), 0.95);
        EXPECT_LT(diffuseShareOf(lightOf(elevation, 0)), 0.5);
    }
}

TEST(SkyLight, IsNothingBelowTheHorizon) {
    for (const double elevation : {0.0, -0.001, -30.0, -90.0}) {
        const SkyLight light = lightOf(elevation, 3);
        EXPECT_EQ(light.global_Wm2.high, 0);
        EXPECT_EQ(light.directNormal_Wm2.high, 0);
        EXPECT_EQ(light.diffuse_Wm2.high, 0);
        EXPECT_EQ(onUpright(light, {}).total_Wm2.high, 0);
        EXPECT_EQ(onLevel(light).total_Wm2.high, 0);
    }
}

TEST(SkyLight, FadesInWithoutAStep) {
    EXPECT_LT(lightOf(0.01, 0).directNormal_Wm2.high, 1e-9);
    double before = 0;
    for (double elevation = 0.01; elevation < 10; elevation += 0.01) {
        const double here = lightOf(elevation, 0).directNormal_Wm2.best;
        EXPECT_NEAR(here, before, 2) << elevation;
        before = here;
    }
}

TEST(SkyLight, HasNoBestWhereTheCoverHasNone) {
    const SkyLight light = skyLightOf(sunStanding(40), {0, notKnown, 8});
    for (const Estimate& part : {light.global_Wm2, light.directNormal_Wm2, light.diffuse_Wm2,
                                 onUpright(light, {}).total_Wm2, onLevel(light).direct_Wm2}) {
        EXPECT_FALSE(part.isKnown());
        EXPECT_GT(part.low, 0 - 1e-12);
        EXPECT_GT(part.high, part.low);
    }
}

// Direct light on a wall that turns round once: ∫ max(0, cos h·cos α) dα / 2π = cos h / π.
TEST(UprightPlane, TakesTheCosineOfIncidence) {
    const SkyLight light = lightOf(35, 1, 77);
    double sum = 0;
    for (int facing = 0; facing < 360; ++facing)
        sum += onUpright(light, {static_cast<double>(facing), 0.2}).direct_Wm2.best;
    const double expected = light.directNormal_Wm2.best * std::cos(35 * pi / 180) / pi;
    EXPECT_NEAR(sum / 360, expected, 1e-4 * expected);

    EXPECT_EQ(onUpright(light, {77 + 91, 0.2}).direct_Wm2.high, 0);
    EXPECT_NEAR(onUpright(light, {77 - 60, 0.2}).direct_Wm2.best,
                light.directNormal_Wm2.best * std::cos(35 * pi / 180) / 2, 1e-9);
}

// Isotropic sky and ground, Liu, Jordan 1963: half of each is in view of an upright plane.
TEST(UprightPlane, SeesHalfTheSkyAndHalfTheGround) {
    const SkyLight light = lightOf(35, 4);
    const PlaneLight shaded = onUpright(light, {0, 0.2});
    EXPECT_NEAR(shaded.sky_Wm2.best, 0.5 * light.diffuse_Wm2.best, 1e-12);
    EXPECT_NEAR(shaded.ground_Wm2.best, 0.1 * light.global_Wm2.best, 1e-12);
    EXPECT_NEAR(shaded.total_Wm2.best, shaded.sky_Wm2.best + shaded.ground_Wm2.best, 1e-12);
    EXPECT_NEAR(onUpright(light, {0, 0.8}).ground_Wm2.best, 0.4 * light.global_Wm2.best, 1e-12);
    EXPECT_EQ(onUpright(light, {0, 0}).ground_Wm2.high, 0);
}

TEST(UprightPlane, CountsAzimuthsAroundTheCircle) {
    const SkyLight light = lightOf(20, 0, 350);
    EXPECT_NEAR(onUpright(light, {10, 0.2}).direct_Wm2.best,
                onUpright(light, {-30, 0.2}).direct_Wm2.best, 1e-9);
    EXPECT_NEAR(onUpright(light, {0, 0.2}).total_Wm2.best,
                onUpright(light, {360, 0.2}).total_Wm2.best, 1e-9);
}

TEST(SkyLight, RefusesWhatCannotBe) {
    const SkyLight light = lightOf(20, 0);
    const auto refusalOf = [&](const UprightPlane& plane) {
        return test::messageOf<InputError>([&] { onUpright(light, plane); });
    };
    EXPECT_EQ(refusalOf({400, 0.2}),
              "window: it faces 400°. Give the azimuth it looks at, 0 to 360, such as 90 for "
              "east.");
    EXPECT_EQ(refusalOf({90, 1.2}),
              "window: the ground before it would reflect 1.2 of the light. Give 0 to 1, usually "
              "0.2.");
    EXPECT_NE(refusalOf({unknown, 0.2}), "(nothing was thrown)");
    EXPECT_NE(refusalOf({0, unknown}), "(nothing was thrown)");
    EXPECT_EQ(test::messageOf<InputError>([] { lightOf(20, 8.5); }),
              "cloud cover: it is 8.5 oktas. Give eighths of the sky, 0 to 8.");
    // By night as well.
    EXPECT_NE(test::messageOf<InputError>([] { lightOf(-20, 8.5); }), "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
