// Near ultraviolet at places, against what must hold of sun, windows and glass, whatever the
// constants are.
#include "calc/PlaceUltraviolet.h"

#include <gtest/gtest.h>

#include <cmath>

#include "base/CivilTime.h"
#include "base/Error.h"

namespace rackbook {
namespace {

constexpr GeoPoint northern{56, 10};
constexpr GeoPoint southern{-35, 140};
constexpr SkyShares usual{0.3, 0.35};

std::int64_t dayOn(int month, int day, std::int64_t year = 2026) {
    return daysFromCivil({year, month, day});
}

Light daylight(double factor_pct, std::optional<bool> directSun = false,
               std::optional<double> azimuth_deg = std::nullopt) {
    Light light;
    light.lightKind = LightKind::daylight;
    light.daylightFactor_pct = factor_pct;
    light.directSun = directSun;
    light.windowAzimuth_deg = azimuth_deg;
    return light;
}

Light ofKind(LightKind kind, std::optional<double> illuminance_lx = std::nullopt) {
    Light light;
    light.lightKind = kind;
    light.illuminance_lx = illuminance_lx;
    return light;
}

void expectOrdered(const Estimate& value) {
    EXPECT_GE(value.low, 0);
    EXPECT_LE(value.low, value.best);
    EXPECT_LE(value.best, value.high);
    EXPECT_TRUE(std::isfinite(value.high));
}

TEST(PlaceUltraviolet, IsNothingInTheDark) {
    PlaceUltraviolet places(northern, usual);
    const Estimate dark = places.ofDay_Whm2(ofKind(LightKind::dark), dayOn(6, 21));
    EXPECT_EQ(dark.low, 0);
    EXPECT_EQ(dark.high, 0);
}

// The sun stands at 57.4° at noon in June and at 10.6° in December, and for 17.5 h against 7 h: the
// days cannot be alike.
TEST(PlaceUltraviolet, IsManyTimesMoreInJuneThanInDecemberInTheNorth) {
    PlaceUltraviolet places(northern, usual);
    for (const Light& light :
         {daylight(2), ofKind(LightKind::outdoors), ofKind(LightKind::metered, 300)}) {
        const Estimate june = places.ofDay_Whm2(light, dayOn(6, 21));
        const Estimate december = places.ofDay_Whm2(light, dayOn(12, 21));
        expectOrdered(june);
        expectOrdered(december);
        EXPECT_GT(june.best, 2.4 * december.best);
    }
    EXPECT_GT(places.ofDay_Whm2(daylight(2), dayOn(6, 21)).best,
              10 * places.ofDay_Whm2(daylight(2), dayOn(12, 21)).best);
}

TEST(PlaceUltraviolet, TurnsAroundSouthOfTheEquator) {
    PlaceUltraviolet places(southern, usual);
    EXPECT_GT(places.ofDay_Whm2(daylight(2), dayOn(12, 21)).best,
              2 * places.ofDay_Whm2(daylight(2), dayOn(6, 21)).best);
    // There a window to the north has the sun.
    EXPECT_GT(places.ofDay_Whm2(daylight(2, true, 0), dayOn(6, 21)).best,
              places.ofDay_Whm2(daylight(2, true, 180), dayOn(6, 21)).best);
}

TEST(PlaceUltraviolet, GrowsWithTheDaylightFactor) {
    PlaceUltraviolet places(northern, usual);
    const Estimate two = places.ofDay_Whm2(daylight(2), dayOn(3, 20));
    const Estimate four = places.ofDay_Whm2(daylight(4), dayOn(3, 20));
    EXPECT_NEAR(four.best, 2 * two.best, 1e-9);
    // Direct sun adds, and where nothing is said of it, it may.
    EXPECT_GT(places.ofDay_Whm2(daylight(2, true, 180), dayOn(3, 20)).best, two.best);
    const Estimate open = places.ofDay_Whm2(daylight(2, std::nullopt, 180), dayOn(3, 20));
    EXPECT_EQ(open.best, two.best);
    EXPECT_GT(open.high, two.high);
}

// On the sunny side of a wall there is more than behind glass, and more than on its other side.
TEST(PlaceUltraviolet, KnowsTheSunnySideOutOfDoors) {
    PlaceUltraviolet places(northern, usual);
    Light south = ofKind(LightKind::outdoors);
    south.windowAzimuth_deg = 180;
    Light north = south;
    north.windowAzimuth_deg = 0;
    Light between = south;
    between.windowAzimuth_deg = 135;
    Light east = south;
    east.windowAzimuth_deg = 90;
    const std::int64_t day = dayOn(3, 20);
    const auto best = [&](const Light& light) { return places.ofDay_Whm2(light, day).best; };
    EXPECT_GT(best(south), 1.5 * best(north));
    EXPECT_GT(best(south), 5 * places.ofDay_Whm2(daylight(3), day).best);
    EXPECT_NEAR(best(between), (best(south) + best(east)) / 2, 1e-9);
    // Of a wall whose facing is not said, any of them.
    const Estimate any = places.ofDay_Whm2(ofKind(LightKind::outdoors), day);
    EXPECT_LE(any.low, places.ofDay_Whm2(north, day).low);
    EXPECT_GE(any.high, places.ofDay_Whm2(south, day).high);
}

// By hand: 200 lx for 8 h at 0.02 mW a lumen are 0.032 Wh/m².
TEST(PlaceUltraviolet, TakesLampsByTheirLux) {
    PlaceUltraviolet places(northern, usual);
    const Estimate lamps = places.ofDay_Whm2(ofKind(LightKind::artificial, 200), dayOn(6, 21));
    EXPECT_NEAR(lamps.best, 0.032, 1e-12);
    EXPECT_EQ(lamps.low, 0);
    EXPECT_EQ(places.ofDay_Whm2(ofKind(LightKind::artificial, 200), dayOn(12, 21)).best,
              lamps.best);
}

TEST(PlaceUltraviolet, TakesPlacesOfWhichNothingIsSaidForAnything) {
    PlaceUltraviolet places(northern, usual);
    const Estimate any = places.ofDay_Whm2(std::nullopt, dayOn(6, 21));
    EXPECT_EQ(any.low, 0);
    EXPECT_FALSE(any.isKnown());
    Light south = ofKind(LightKind::outdoors);
    south.windowAzimuth_deg = 180;
    EXPECT_GE(any.high, places.ofDay_Whm2(south, dayOn(6, 21)).high);
}

// Sunnier skies bring more; the last of a leap year is reckoned as the day before.
TEST(PlaceUltraviolet, GoesByTheSkies) {
    PlaceUltraviolet sunny(northern, {1, 0});
    PlaceUltraviolet overcast(northern, {0, 1});
    PlaceUltraviolet mixed(northern, {0.5, 0.5});
    const auto best = [](PlaceUltraviolet& places) {
        return places.ofDay_Whm2(daylight(2), dayOn(5, 1)).best;
    };
    EXPECT_GT(best(sunny), 2 * best(overcast));
    EXPECT_NEAR(best(mixed), (best(sunny) + best(overcast)) / 2, 1e-9);
    EXPECT_EQ(mixed.ofDay_Whm2(daylight(2), dayOn(12, 31, 2024)).best,
              mixed.ofDay_Whm2(daylight(2), dayOn(12, 31, 2023)).best);
    EXPECT_GT(sunny.sunnyDay_Whm2(), 0);
}

TEST(PlaceUltraviolet, IsNothingByDaylightInThePolarNight) {
    PlaceUltraviolet places({78, 15}, usual);
    EXPECT_EQ(places.ofDay_Whm2(daylight(5, true, 180), dayOn(12, 21)).high, 0);
    EXPECT_GT(places.ofDay_Whm2(daylight(5), dayOn(6, 21)).best, 0);
}

TEST(PlaceUltraviolet, RefusesWhatCannotBe) {
    EXPECT_THROW(PlaceUltraviolet({91, 0}, usual), InputError);
    EXPECT_THROW(PlaceUltraviolet({std::nan(""), 0}, usual), InputError);
    EXPECT_THROW(PlaceUltraviolet(northern, {0.7, 0.4}), InputError);
    EXPECT_THROW(PlaceUltraviolet(northern, {-0.1, 0.4}), InputError);
    EXPECT_THROW(PlaceUltraviolet(northern, {std::nan(""), 0.4}), InputError);
}

}  // namespace
}  // namespace rackbook
