#include "calc/ClearSky.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "FactRows.h"
#include "SkyFixture.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::utc;
using test::valuesIn;

constexpr double radiansPerDegree = 3.14159265358979323846 / 180;
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

TEST(ClearSky, GivesTheRowsOfTheTable) {
    int checked = 0;
    for (const FactRow& row : test::factRows("irradiance.csv")) {
        SCOPED_TRACE(row.text("row"));
        const std::string& quantity = row.text("quantity");
        const double expected = row.number("expected");
        if (quantity == "haurwitz_k0.059_ghi_Wm2") {
            const double elevation = valuesIn(row.text("input")).at("elevation_deg");
            // Published values have ten decimals, computed ones six.
            const bool published = row.text("source").find("computed 1098") == std::string::npos;
            EXPECT_NEAR(haurwitzGlobal_Wm2(elevation), expected, published ? 1e-9 : 1e-6);
        } else if (quantity == "haurwitz_k0.057_ghi_Wm2") {
            // The variant, from which ours differs by exp(−0.002/sin h).
            const double elevation = valuesIn(row.text("input")).at("elevation_deg");
            const double height = std::sin(elevation * radiansPerDegree);
            EXPECT_NEAR(haurwitzGlobal_Wm2(elevation) * std::exp(0.002 / height), expected, 1e-6);
        } else if (quantity == "erbs_diffuse_share") {
            const double clearness = valuesIn(row.text("input")).at("clearness");
            EXPECT_NEAR(erbsDiffuseShare(clearness), expected, 1e-8);
        } else {
            continue;
        }
        ++checked;
    }
    EXPECT_EQ(checked, 29);
}

// Kasten, Czeplak 1980, clear skies over Hamburg; said to hold above 5°.
TEST(ClearSky, HasTheClearSkiesOfHamburgWithinItsBounds) {
    int checked = 0;
    for (const FactRow& row : test::factRows("irradiance.csv")) {
        if (row.text("quantity") != "kasten_czeplak_clear_Wm2")
            continue;
        const double elevation = valuesIn(row.text("input")).at("elevation_deg");
        const Estimate ours = clearSkyGlobal_Wm2(elevation);
        if (elevation >= 5) {
            EXPECT_LE(ours.low, row.number("expected")) << elevation;
            EXPECT_GE(ours.high, row.number("expected")) << elevation;
        }
        ++checked;
    }
    EXPECT_EQ(checked, 14);
}

TEST(ClearSky, RisesWithTheSun) {
    double before = 0;
    for (double elevation = 0.5; elevation <= 90; elevation += 0.5) {
        const Estimate here = clearSkyGlobal_Wm2(elevation);
        test::expectOrdered(here);
        EXPECT_GT(here.best, before);
        before = here.best;
    }
    EXPECT_EQ(clearSkyGlobal_Wm2(-10).high, 0);
    EXPECT_EQ(haurwitzGlobal_Wm2(1e-300), 0);
}

// Spencer 1971, Search 2(5):172: the inverse square of the distance by the angle of the day. Around
// perihelion it gives 0.0008 more than the distance of today's ephemerides (0.98330 AU).
TEST(ClearSky, AgreesWithSpencerOnTheSunsDistance) {
    for (int day = 0; day < 365; ++day) {
        const double angle = 2 * 3.14159265358979323846 * day / 365;
        const double spencer = 1.000110 + 0.034221 * std::cos(angle) + 0.001280 * std::sin(angle) +
                               0.000719 * std::cos(2 * angle) + 0.000077 * std::sin(2 * angle);
        const UtcTime noon = test::later(utc("2026-01-01T12:00:00Z"), day * 1440.0);
        const double ours = extraterrestrial_Wm2(sunAt({0, 0}, noon).distance_AU) / 1361;
        ASSERT_NEAR(ours, spencer, 0.001) << day;
    }
}

TEST(ErbsDiffuseShare, FallsFromAllToASixth) {
    EXPECT_DOUBLE_EQ(erbsDiffuseShare(0), 1);
    EXPECT_DOUBLE_EQ(erbsDiffuseShare(0.9), 0.165);
    for (const double seam : {0.22, 0.80})
        EXPECT_NEAR(erbsDiffuseShare(seam), erbsDiffuseShare(seam + 1e-9), 0.002) << seam;
    for (double clearness = 0; clearness < 0.78; clearness += 0.01) {
        EXPECT_GE(erbsDiffuseShare(clearness), erbsDiffuseShare(clearness + 0.01) - 0.002);
        EXPECT_GT(erbsDiffuseShare(clearness), 0.15);
        EXPECT_LE(erbsDiffuseShare(clearness), 1);
    }
}

TEST(ClearSky, RefusesWhatCannotBe) {
    EXPECT_EQ(test::messageOf<InputError>([] { haurwitzGlobal_Wm2(90.5); }),
              "clear sky: the sun's elevation is 90.5°. Give -90 to 90.");
    EXPECT_EQ(test::messageOf<InputError>([] { erbsDiffuseShare(-0.1); }),
              "sky: the clearness index is -0.1. Give 0 or more, usually below 1.");
    EXPECT_EQ(test::messageOf<InputError>([] { extraterrestrial_Wm2(0); }),
              "sun: the distance is 0 AU. Give one above 0, such as 1.");
    EXPECT_NE(test::messageOf<InputError>([] { haurwitzGlobal_Wm2(unknown); }),
              "(nothing was thrown)");
    EXPECT_NE(test::messageOf<InputError>([] { erbsDiffuseShare(unknown); }),
              "(nothing was thrown)");
    EXPECT_NE(test::messageOf<InputError>([] { extraterrestrial_Wm2(unknown); }),
              "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
