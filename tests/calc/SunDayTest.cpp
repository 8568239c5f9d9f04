#include "calc/SunDay.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <optional>
#include <string>

#include "FactRows.h"
#include "SkyFixture.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::later;
using test::utc;

constexpr double secondsPerMinute = 60;

void expectSeconds(const std::optional<UtcTime>& found, const std::string& expected,
                   double tolerance_s) {
    ASSERT_TRUE(found.has_value());
    EXPECT_NEAR((found->minutes - utc(expected).minutes) * secondsPerMinute, 0, tolerance_s);
}

// 0.01° of the sun's place is 2.4 s at the equator and three times that at 65°.
TEST(SunDay, GivesTheRowsOfTheTable) {
    int rising = 0;
    for (const FactRow& row : test::factRows("sun-position.csv")) {
        const std::string& sunrise = row.text("sunrise_utc");
        if (row.text("id") == "spa_position" || sunrise.empty() || sunrise == "none")
            continue;
        SCOPED_TRACE(row.text("id"));
        const GeoPoint place{row.number("lat"), row.number("lon")};
        const SunDay day = sunDayOf(place, utc(row.text("utc")));
        const double tolerance_s = std::fabs(place.latitude_deg) < 60 ? 5 : 12;
        expectSeconds(day.sunrise, sunrise, tolerance_s);
        expectSeconds(day.sunset, row.text("sunset_utc"), tolerance_s);
        EXPECT_NEAR(day.daylight_min, row.number("daylength_min"), 0.05 + tolerance_s / 60);
        EXPECT_FALSE(day.isPolarDay());
        EXPECT_FALSE(day.isPolarNight());
        ++rising;
    }
    EXPECT_EQ(rising, 76);
}

TEST(SunDay, TellsPolarDayFromPolarNight) {
    const SunDay summer = sunDayOf({70, 25}, utc("2026-06-21T10:00:00Z"));  // rows grid_57, grid_58
    EXPECT_TRUE(summer.isPolarDay());
    EXPECT_FALSE(summer.isPolarNight());
    EXPECT_DOUBLE_EQ(summer.daylight_min, 1440);
    const SunDay winter = sunDayOf({70, 25}, utc("2026-12-21T10:00:00Z"));
    EXPECT_TRUE(winter.isPolarNight());
    EXPECT_FALSE(winter.isPolarDay());
    EXPECT_DOUBLE_EQ(winter.daylight_min, 0);
    EXPECT_LT(winter.noonElevation_deg, 0);
}

// Reda, Andreas 2003: sunrise 06:12:43 and sunset 17:20:19 at UTC−7, the sunset being that of the
// evening before; the next one was computed with another program (see the table).
TEST(SunDay, MeetsTheWorkedExampleOfSpa) {
    const GeoPoint place{39.742476, -105.1786};
    const SunDay day = sunDayOf(place, utc("2003-10-17T19:30:30Z"));
    expectSeconds(day.sunrise, "2003-10-17T13:12:43Z", 5);
    expectSeconds(day.sunset, "2003-10-18T00:18:51Z", 5);
    const SunDay before = sunDayOf(place, utc("2003-10-16T19:30:30Z"));
    expectSeconds(before.sunset, "2003-10-17T00:20:19Z", 5);
}

TEST(SunDay, HasTheSunOnTheMeridianAndHighestAtNoon) {
    for (const GeoPoint place : {GeoPoint{51.5, 0}, {-33.9, 151.2}, {10, -179.9}, {-10, 180}}) {
        const SunDay day = sunDayOf(place, utc("2026-11-03T12:00:00Z"));
        const SunPosition noon = sunAt(place, day.noon);
        EXPECT_NEAR(noon.hourAngle_deg, 0, 1e-6);
        EXPECT_DOUBLE_EQ(day.noonElevation_deg, noon.apparentElevation_deg);
        EXPECT_GT(day.noonElevation_deg, sunAt(place, later(day.noon, 30)).apparentElevation_deg);
        EXPECT_GT(day.noonElevation_deg, sunAt(place, later(day.noon, -30)).apparentElevation_deg);
        EXPECT_NEAR(day.noon.minutes, utc("2026-11-03T12:00:00Z").minutes, 1440);
    }
}

// The sun's radius and refraction make the equator's day 12 h 6.5 to 7.5 min all the year round.
TEST(SunDay, HardlyChangesAtTheEquator) {
    for (int day = 0; day < 365; ++day) {
        const SunDay found = sunDayOf({0, 30}, later(utc("2026-01-01T10:00:00Z"), day * 1440.0));
        EXPECT_NEAR(found.daylight_min, 727, 0.7) << day;
    }
}

TEST(SunDay, MirrorsTheHemispheresBetweenTheSolstices) {
    for (double latitude = 0; latitude <= 60; latitude += 10) {
        const SunDay north = sunDayOf({latitude, 0}, utc("2026-06-21T12:00:00Z"));
        const SunDay south = sunDayOf({-latitude, 0}, utc("2026-12-21T12:00:00Z"));
        // The sun is 3 % larger in December: half a minute at 60°.
        EXPECT_NEAR(north.daylight_min, south.daylight_min, 0.5) << latitude;
    }
}

struct PolarYear {
    int daysUp = 0;
    int nightsDown = 0;
    int sunrises = 0;
    int sunsets = 0;
    int changes = 0;  // of the kind of day
    bool oneEventOnly = false;
};

PolarYear yearAt(double latitude) {
    PolarYear year;
    int kindBefore = -1;
    for (int number = 0; number < 365; ++number) {
        const SunDay day =
            sunDayOf({latitude, 20}, later(utc("2026-01-01T11:00:00Z"), number * 1440.0));
        const int kind = day.isPolarDay() ? 2 : day.isPolarNight() ? 0 : 1;
        year.daysUp += kind == 2 ? 1 : 0;
        year.nightsDown += kind == 0 ? 1 : 0;
        year.sunrises += day.sunrise ? 1 : 0;
        year.sunsets += day.sunset ? 1 : 0;
        year.oneEventOnly = year.oneEventOnly || day.sunrise.has_value() != day.sunset.has_value();
        year.changes += kindBefore >= 0 && kind != kindBefore ? 1 : 0;
        kindBefore = kind;
        EXPECT_GE(day.daylight_min, 0);
        EXPECT_LE(day.daylight_min, 1440);
    }
    return year;
}

TEST(SunDay, HasOneSummerAndOneWinterBeyondThePolarCircle) {
    for (const double latitude : {70.0, -75.0, 85.0}) {
        SCOPED_TRACE(latitude);
        const PolarYear year = yearAt(latitude);
        EXPECT_EQ(year.changes, 4);
        EXPECT_GT(year.daysUp, year.nightsDown);
        EXPECT_GT(year.nightsDown, 40);
        EXPECT_LE(std::abs(year.sunrises - year.sunsets), 1);
    }
}

TEST(SunDay, RisesAndSetsOnceAYearAtThePoles) {
    for (const double latitude : {90.0, -90.0, 89.99}) {
        SCOPED_TRACE(latitude);
        const PolarYear year = yearAt(latitude);
        EXPECT_EQ(year.sunrises, 1);
        EXPECT_EQ(year.sunsets, 1);
        EXPECT_TRUE(year.oneEventOnly);
        EXPECT_GT(year.daysUp, 175);
        EXPECT_GT(year.nightsDown, 170);
    }
}

TEST(SunDay, CountsTheDaylightOfADayWithoutSunset) {
    int withoutSunset = 0;
    for (int number = 0; number < 365; ++number) {
        const SunDay day = sunDayOf({70, 20}, later(utc("2026-01-01T11:00:00Z"), number * 1440.0));
        if (!day.sunrise)
            continue;
        const UtcTime end = day.sunset.value_or(later(day.noon, 720));
        EXPECT_NEAR(day.daylight_min, end.minutes - day.sunrise->minutes, 1e-6);
        withoutSunset += day.sunset ? 0 : 1;
    }
    EXPECT_LE(withoutSunset, 1);
}

TEST(SunDay, RefusesWhatSunAtRefuses) {
    EXPECT_EQ(test::messageOf<InputError>([] {
                  sunDayOf({-90.1, 0}, utc("2026-01-01T00:00:00Z"));
              }),
              "place on Earth: the latitude is -90.1°. Give -90 (South Pole) to 90 (North Pole).");
    EXPECT_NE(test::messageOf<InputError>([] {
                  sunDayOf({0, 0}, {std::numeric_limits<double>::infinity()});
              }),
              "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
