#include "calc/SunPosition.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "FactRows.h"
#include "SkyFixture.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::later;
using test::utc;

constexpr double radiansPerDegree = 3.14159265358979323846 / 180;
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

double apart(double a_deg, double b_deg) {
    return std::fabs(std::remainder(a_deg - b_deg, 360));
}

GeoPoint placeIn(const FactRow& row) {
    return {row.number("lat"), row.number("lon")};
}

// Rows computed with two other programs, 1950–2100, both hemispheres and both poles. 0.01° is what
// Meeus claims for his method.
TEST(SunPosition, GivesTheRowsOfTheTable) {
    int checked = 0;
    for (const FactRow& row : test::factRows("sun-position.csv")) {
        if (row.text("id") == "spa_position")
            continue;
        SCOPED_TRACE(row.text("id"));
        const SunPosition sun = sunAt(placeIn(row), utc(row.text("utc")));
        EXPECT_NEAR(sun.declination_deg, row.number("declination"), 0.01);
        EXPECT_NEAR(sun.elevation_deg, row.number("altitude"), 0.01);
        const double shrink = std::cos(row.number("altitude") * radiansPerDegree);
        EXPECT_LE(apart(sun.azimuth_deg, row.number("azimuth")) * shrink, 0.01);
        ++checked;
    }
    EXPECT_EQ(checked, 83);
}

// The column of a third program, whose own elevations are 0.01° off.
TEST(SunPosition, RefractsAsTheTableDoesAboveTheHorizon) {
    int checked = 0;
    for (const FactRow& row : test::factRows("sun-position.csv")) {
        const std::string& expected = row.text("suncalc_altitude_refracted");
        if (expected.empty() || row.number("altitude") < 0)
            continue;
        SCOPED_TRACE(row.text("id"));
        const SunPosition sun = sunAt(placeIn(row), utc(row.text("utc")));
        EXPECT_NEAR(sun.apparentElevation_deg, FactRow::numberIn(expected), 0.02);
        ++checked;
    }
    EXPECT_EQ(checked, 56);
}

// Reda, Andreas 2003, NREL/TP-560-34302, appendix: zenith and azimuth for 820 mbar and 11 °C, which
// refract 0.004° less than the standard air here; hour angle and distance beside them.
TEST(SunPosition, MeetsTheWorkedExampleOfSpa) {
    const FactRow row = test::factRows("sun-position.csv").front();
    ASSERT_EQ(row.text("id"), "spa_position");
    const SunPosition sun = sunAt(placeIn(row), utc(row.text("utc")));
    EXPECT_NEAR(90 - sun.apparentElevation_deg, 50.11162, 0.01);
    EXPECT_NEAR(sun.apparentElevation_deg, row.number("altitude"), 0.01);
    EXPECT_NEAR(90 - sun.elevation_deg, 50.12805, 0.005);
    EXPECT_NEAR(sun.azimuth_deg, 194.34024, 0.01);
    EXPECT_NEAR(sun.hourAngle_deg, 11.105902, 0.005);
    EXPECT_NEAR(sun.distance_AU, 0.996542297, 0.00002);
}

// Meeus, Astronomical Algorithms, example 25.a: 1992 October 13.0 dynamical time (from memory).
TEST(SunPosition, MeetsTheExampleOfMeeus) {
    const SunPosition sun = sunAt({0, 0}, utc("1992-10-12T23:58:50Z"));
    EXPECT_NEAR(sun.declination_deg, -7.78507, 0.0001);
    EXPECT_NEAR(sun.distance_AU, 0.99766, 0.00001);
}

// Bennett 1982 goes from the apparent elevation (Meeus, chapter 16): both agree to 0.1′. Almanacs
// take 34′ at the horizon.
TEST(Refraction, AgreesWithBennett) {
    for (double elevation = -0.5; elevation <= 89; elevation += 0.5) {
        const double added = refraction_deg(elevation);
        const double seen = elevation + added;
        const double bennett = 1 / std::tan((seen + 7.31 / (seen + 4.4)) * radiansPerDegree) / 60;
        EXPECT_NEAR(added, bennett, 0.12 / 60) << elevation;
    }
    EXPECT_NEAR(refraction_deg(-34.0 / 60), 34.0 / 60, 0.5 / 60);
    EXPECT_NEAR(refraction_deg(90), 0, 1e-5);
    EXPECT_NEAR(refraction_deg(-90), 0, 1e-12);
}

TEST(Refraction, HasNoStepAtTheHorizon) {
    EXPECT_NEAR(refraction_deg(-0.5750001), refraction_deg(-0.575), 0.001);
    double before = -90 + refraction_deg(-90);
    for (double elevation = -89.9; elevation <= 90; elevation += 0.1) {
        const double seen = elevation + refraction_deg(elevation);
        EXPECT_GT(seen, before) << elevation;
        before = seen;
    }
}

// Almanacs for 2026, in minutes of UTC (from memory): equinoxes on 20 March 14:46 and 23 September
// 00:05, solstices on 21 June 08:25 and 21 December 20:50; obliquity 23.44°.
TEST(SunPosition, HasTheSeasonsOf2026) {
    EXPECT_NEAR(sunAt({0, 0}, utc("2026-03-20T14:46:00Z")).declination_deg, 0, 0.005);
    EXPECT_NEAR(sunAt({0, 0}, utc("2026-09-23T00:05:00Z")).declination_deg, 0, 0.005);
    EXPECT_NEAR(sunAt({0, 0}, utc("2026-06-21T08:25:00Z")).declination_deg, 23.44, 0.005);
    EXPECT_NEAR(sunAt({0, 0}, utc("2026-12-21T20:50:00Z")).declination_deg, -23.44, 0.005);
}

// With the sun on the equator, what is north in one hemisphere is south in the other.
TEST(SunPosition, MirrorsTheHemispheresAtTheEquinox) {
    double early = utc("2026-03-20T00:00:00Z").minutes;
    double late = utc("2026-03-21T00:00:00Z").minutes;
    while (late - early > 0.0001) {
        const double middle = (early + late) / 2;
        (sunAt({0, 0}, {middle}).declination_deg < 0 ? early : late) = middle;
    }
    for (double latitude = 5; latitude <= 85; latitude += 10)
        for (double longitude = -170; longitude <= 170; longitude += 17) {
            const SunPosition north = sunAt({latitude, longitude}, {early});
            const SunPosition south = sunAt({-latitude, longitude}, {early});
            EXPECT_NEAR(north.elevation_deg, south.elevation_deg, 1e-5);
            EXPECT_LE(apart(north.azimuth_deg, 180 - south.azimuth_deg), 1e-4);
        }
}

// From a pole the sun stands at its declination, less the parallax, and goes round by 15° an hour.
TEST(SunPosition, CirclesThePoles) {
    for (const double pole : {90.0, -90.0})
        for (double longitude = -180; longitude <= 180; longitude += 60) {
            const UtcTime time = utc("2026-05-05T05:05:00Z");
            const SunPosition sun = sunAt({pole, longitude}, time);
            const double declination = pole > 0 ? sun.declination_deg : -sun.declination_deg;
            EXPECT_NEAR(sun.elevation_deg, declination, 0.0025);
            const double turned = sunAt({pole, longitude}, later(time, 60)).azimuth_deg;
            EXPECT_LE(apart(turned, sun.azimuth_deg + (pole > 0 ? 15 : -15)), 0.01);
        }
}

TEST(SunPosition, PutsTheSunInTheZenithOfItsOwnPlace) {
    const UtcTime time = utc("2031-04-18T09:00:00Z");
    const SunPosition sun = sunAt({0, 0}, time);
    const GeoPoint below{sun.declination_deg, -sun.hourAngle_deg};
    EXPECT_GT(sunAt(below, time).elevation_deg, 89.999);
    const GeoPoint north{sun.declination_deg + 20, -sun.hourAngle_deg};
    EXPECT_LE(apart(sunAt(north, time).azimuth_deg, 180), 1e-6);
    EXPECT_NEAR(sunAt(north, time).elevation_deg, 70, 0.003);
    const GeoPoint south{sun.declination_deg - 20, -sun.hourAngle_deg};
    EXPECT_LE(apart(sunAt(south, time).azimuth_deg, 0), 1e-6);
}

// The sky turns by 0.2507° a minute at most; just below the horizon refraction changes as fast.
TEST(SunPosition, MovesWithoutSteps) {
    for (const GeoPoint place : {GeoPoint{51.5, -0.1}, {-23.4, 180}, {0, -180}, {78, 15}}) {
        UtcTime time = utc("2027-12-25T00:00:00Z");
        SunPosition before = sunAt(place, time);
        for (int minute = 0; minute < 14 * 24 * 60; ++minute) {
            time = later(time, 1);
            const SunPosition sun = sunAt(place, time);
            ASSERT_LE(std::fabs(sun.elevation_deg - before.elevation_deg), 0.2508);
            ASSERT_LE(std::fabs(sun.apparentElevation_deg - before.apparentElevation_deg),
                      2 * 0.2508);
            ASSERT_GE(sun.azimuth_deg, 0);
            ASSERT_LT(sun.azimuth_deg, 360);
            before = sun;
        }
    }
}

std::string refusalOf(const GeoPoint& place, const UtcTime& time) {
    return test::messageOf<InputError>([&] { sunAt(place, time); });
}

TEST(SunPosition, RefusesPlacesThatAreNotOnEarth) {
    const UtcTime time = utc("2026-01-01T00:00:00Z");
    EXPECT_EQ(refusalOf({90.5, 0}, time),
              "place on Earth: the latitude is 90.5°. Give -90 (South Pole) to 90 (North Pole).");
    EXPECT_EQ(refusalOf({0, -181}, time),
              "place on Earth: the longitude is -181°. Give -180 to 180, east of Greenwich "
              "positive.");
    EXPECT_NE(refusalOf({unknown, 0}, time), "(nothing was thrown)");
    EXPECT_NE(refusalOf({0, unknown}, time), "(nothing was thrown)");
    EXPECT_NE(refusalOf({0, std::numeric_limits<double>::infinity()}, time),
              "(nothing was thrown)");
}

TEST(SunPosition, RefusesTimesItIsNotMadeFor) {
    EXPECT_EQ(refusalOf({0, 0}, {-4e7}),
              "sun: the time, -40000000 min from 1970, is not in the years 1900 to 2199. Check the "
              "date.");
    EXPECT_NE(refusalOf({0, 0}, utc("1899-12-31T23:59:00Z")), "(nothing was thrown)");
    EXPECT_NE(refusalOf({0, 0}, utc("2200-01-01T00:00:00Z")), "(nothing was thrown)");
    EXPECT_NE(refusalOf({0, 0}, {unknown}), "(nothing was thrown)");
    EXPECT_EQ(refusalOf({0, 0}, utc("1900-01-01T00:00:00Z")), "(nothing was thrown)");
    EXPECT_EQ(test::messageOf<InputError>([] { refraction_deg(91); }),
              "sun: the elevation is 91°. Give -90 to 90.");
    EXPECT_NE(test::messageOf<InputError>([] { refraction_deg(unknown); }), "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
