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

Skies skies(double sunny, double overcast) {
    Skies all;
    all.usual = {sunny, overcast};
    return all;
}

const Skies usual = skies(0.3, 0.35);

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

Estimate ofDay_Whm2(PlaceUltraviolet& places, const std::optional<Light>& light, std::int64_t day) {
    return places.ofDay(light, day).nearUltraviolet_Whm2;
}

void expectOrdered(const Estimate& value) {
    EXPECT_GE(value.low, 0);
    EXPECT_LE(value.low, value.best);
    EXPECT_LE(value.best, value.high);
    EXPECT_TRUE(std::isfinite(value.high));
}

TEST(PlaceUltraviolet, IsNothingInTheDark) {
    PlaceUltraviolet places(northern, usual);
    const Estimate dark = ofDay_Whm2(places, ofKind(LightKind::dark), dayOn(6, 21));
    EXPECT_EQ(dark.low, 0);
    EXPECT_EQ(dark.high, 0);
}

// The sun stands at 57.4° at noon in June and at 10.6° in December, and for 17.5 h against 7 h: the
// days cannot be alike.
TEST(PlaceUltraviolet, IsManyTimesMoreInJuneThanInDecemberInTheNorth) {
    PlaceUltraviolet places(northern, usual);
    for (const Light& light :
         {daylight(2), ofKind(LightKind::outdoors), ofKind(LightKind::metered, 300)}) {
        const Estimate june = ofDay_Whm2(places, light, dayOn(6, 21));
        const Estimate december = ofDay_Whm2(places, light, dayOn(12, 21));
        expectOrdered(june);
        expectOrdered(december);
        EXPECT_GT(june.best, 2.4 * december.best);
    }
    EXPECT_GT(ofDay_Whm2(places, daylight(2), dayOn(6, 21)).best,
              5 * ofDay_Whm2(places, daylight(2), dayOn(12, 21)).best);
}

TEST(PlaceUltraviolet, TurnsAroundSouthOfTheEquator) {
    PlaceUltraviolet places(southern, usual);
    EXPECT_GT(ofDay_Whm2(places, daylight(2), dayOn(12, 21)).best,
              2 * ofDay_Whm2(places, daylight(2), dayOn(6, 21)).best);
    // There a window to the north has the sun.
    EXPECT_GT(ofDay_Whm2(places, daylight(2, true, 0), dayOn(6, 21)).best,
              ofDay_Whm2(places, daylight(2, true, 180), dayOn(6, 21)).best);
}

TEST(PlaceUltraviolet, GrowsWithTheDaylightFactor) {
    PlaceUltraviolet places(northern, usual);
    const Estimate two = ofDay_Whm2(places, daylight(2), dayOn(3, 20));
    const Estimate four = ofDay_Whm2(places, daylight(4), dayOn(3, 20));
    EXPECT_NEAR(four.best, 2 * two.best, 1e-9);
    // Direct sun adds, and where nothing is said of it, it may.
    EXPECT_GT(ofDay_Whm2(places, daylight(2, true, 180), dayOn(3, 20)).best, two.best);
    const Estimate open = ofDay_Whm2(places, daylight(2, std::nullopt, 180), dayOn(3, 20));
    const Estimate shaded = ofDay_Whm2(places, daylight(2, false, 180), dayOn(3, 20));
    EXPECT_EQ(open.best, shaded.best);
    EXPECT_GT(open.high, shaded.high);
}

// In clear weather a window is lit by what its own face sees; under an overcast sky all faces see
// alike, and the daylight factor says it alone.
TEST(PlaceUltraviolet, CountsWhatTheWindowFaces) {
    const std::int64_t spring = dayOn(3, 20);
    PlaceUltraviolet clear(northern, skies(1, 0));
    PlaceUltraviolet grey(northern, skies(0, 1));
    const auto best = [&](PlaceUltraviolet& places, double azimuth_deg) {
        return ofDay_Whm2(places, daylight(2, false, azimuth_deg), spring).best;
    };
    EXPECT_GT(best(clear, 180), 1.25 * best(clear, 0));
    EXPECT_NEAR(best(grey, 180), best(grey, 0), 0.05 * best(grey, 0));
    EXPECT_NEAR(best(clear, 135), (best(clear, 180) + best(clear, 90)) / 2, 1e-9);
}

// At 56° N in December the sun never stands before a window to the north.
TEST(PlaceUltraviolet, BelievesNoSunWhereThereIsNone) {
    PlaceUltraviolet places(northern, usual);
    const std::int64_t winter = dayOn(12, 21);
    const Estimate said = ofDay_Whm2(places, daylight(2, true, 0), winter);
    const Estimate none = ofDay_Whm2(places, daylight(2, false, 0), winter);
    EXPECT_NEAR(said.best, none.best, 1e-9);
    EXPECT_NEAR(said.high, none.high, 1e-9);
    EXPECT_GT(ofDay_Whm2(places, daylight(2, true, 180), winter).best,
              ofDay_Whm2(places, daylight(2, false, 180), winter).best);
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
    const auto best = [&](const Light& light) { return ofDay_Whm2(places, light, day).best; };
    EXPECT_GT(best(south), 1.5 * best(north));
    EXPECT_GT(best(south), 5 * ofDay_Whm2(places, daylight(3), day).best);
    EXPECT_NEAR(best(between), (best(south) + best(east)) / 2, 1e-9);
    // Of a wall whose facing is not said, any of them.
    const Estimate any = ofDay_Whm2(places, ofKind(LightKind::outdoors), day);
    EXPECT_LE(any.low, ofDay_Whm2(places, north, day).low);
    EXPECT_GE(any.high, ofDay_Whm2(places, south, day).high);
}

// By hand: 200 lx for 8 h at 0.02 mW a lumen are 0.032 Wh/m².
TEST(PlaceUltraviolet, TakesLampsByTheirLux) {
    PlaceUltraviolet places(northern, usual);
    const Estimate lamps = ofDay_Whm2(places, ofKind(LightKind::artificial, 200), dayOn(6, 21));
    EXPECT_NEAR(lamps.best, 0.032, 1e-12);
    EXPECT_EQ(lamps.low, 0);
    EXPECT_EQ(ofDay_Whm2(places, ofKind(LightKind::artificial, 200), dayOn(12, 21)).best,
              lamps.best);
}

TEST(PlaceUltraviolet, TakesPlacesOfWhichNothingIsSaidForAnything) {
    PlaceUltraviolet places(northern, usual);
    const Estimate any = ofDay_Whm2(places, std::nullopt, dayOn(6, 21));
    EXPECT_EQ(any.low, 0);
    EXPECT_FALSE(any.isKnown());
    Light south = ofKind(LightKind::outdoors);
    south.windowAzimuth_deg = 180;
    EXPECT_GE(any.high, ofDay_Whm2(places, south, dayOn(6, 21)).high);
}

// Sunnier skies bring more; the last of a leap year is reckoned as the day before.
TEST(PlaceUltraviolet, GoesByTheSkies) {
    PlaceUltraviolet sunny(northern, skies(1, 0));
    PlaceUltraviolet overcast(northern, skies(0, 1));
    PlaceUltraviolet mixed(northern, skies(0.5, 0.5));
    const auto best = [](PlaceUltraviolet& places) {
        return ofDay_Whm2(places, daylight(2), dayOn(5, 1)).best;
    };
    EXPECT_GT(best(sunny), 2 * best(overcast));
    EXPECT_NEAR(best(mixed), (best(sunny) + best(overcast)) / 2, 1e-9);
    EXPECT_EQ(ofDay_Whm2(mixed, daylight(2), dayOn(12, 31, 2024)).best,
              ofDay_Whm2(mixed, daylight(2), dayOn(12, 31, 2023)).best);
    EXPECT_GT(sunny.sunnyDay_Whm2(), 0);
}

TEST(PlaceUltraviolet, TakesANotedSkyBeforeThoseOfTheMonthAndTheseBeforeTheUsual) {
    const std::int64_t day = dayOn(5, 1);
    const auto ofThatDay = [&](const Skies& all) {
        PlaceUltraviolet places(northern, all);
        return ofDay_Whm2(places, daylight(2), day).best;
    };
    Skies all = usual;
    const double usually = ofThatDay(all);
    all.ofMonth[5] = SkyShares{1, 0};
    EXPECT_EQ(ofThatDay(all), usually);  // June does not speak for May
    all.ofMonth[4] = SkyShares{0.9, 0.1};
    const double inMay = ofThatDay(all);
    EXPECT_GT(inMay, 1.1 * usually);
    all.ofDay[day + 1] = oktasOf(Sky::overcast);
    EXPECT_EQ(ofThatDay(all), inMay);
    all.ofDay[day] = oktasOf(Sky::overcast);
    const double overcast = ofThatDay(all);
    EXPECT_LT(overcast, usually);
    all.ofDay[day] = oktasOf(Sky::sunny);
    EXPECT_GT(ofThatDay(all), 2 * overcast);
    // Noted as what the month has on all days, it is the same.
    EXPECT_NEAR(ofThatDay(all), ofThatDay(skies(1, 0)), 1e-9);
}

// That is what a sunny day is: by definition 1, wherever the studio stands.
TEST(PlaceUltraviolet, CountsSunnyDaysByTheEquinox) {
    for (const GeoPoint& place : {northern, southern}) {
        PlaceUltraviolet places(place, skies(1, 0));
        const LightDose dose = places.ofDay(ofKind(LightKind::outdoors), dayOn(3, 20));
        EXPECT_NEAR(dose.sunnyDays.best, 1, 1e-9);
        EXPECT_NEAR(dose.nearUltraviolet_Whm2.best, places.sunnyDay_Whm2(), 1e-9);
        expectOrdered(dose.sunnyDays);
        expectOrdered(places.ofDay(daylight(2), dayOn(6, 21)).sunnyDays);
    }
}

// The same skies twice: that the days are alike is known better than how much light they have.
TEST(PlaceUltraviolet, KnowsADayBesideASunnyDayBetterThanByEnergy) {
    PlaceUltraviolet places(northern, skies(1, 0));
    Light south = ofKind(LightKind::outdoors);
    south.windowAzimuth_deg = 180;
    const LightDose dose = places.ofDay(south, dayOn(4, 20));
    const auto spread = [](const Estimate& value) { return value.high / value.low; };
    EXPECT_LT(spread(dose.sunnyDays), 0.8 * spread(dose.nearUltraviolet_Whm2));
}

TEST(PlaceUltraviolet, GetsLessBehindEachBetterGlass) {
    PlaceUltraviolet places(northern, usual);
    double before = 1e9;
    for (const Glass glass : {Glass::open, Glass::clearSingle, Glass::clearDouble,
                              Glass::coatedDouble, Glass::laminated}) {
        Light light = daylight(2, true, 180);
        light.glass = glass;
        const Estimate dose = ofDay_Whm2(places, light, dayOn(6, 21));
        expectOrdered(dose);
        EXPECT_LT(dose.best, before);
        before = dose.best;
    }
    Light open = daylight(2, true, 180);
    open.glass = Glass::open;
    EXPECT_LT(before, 0.05 * ofDay_Whm2(places, open, dayOn(6, 21)).best);
}

// By hand: 1000 lx·h hold 0.3 Wh/m² by daylight and 0.02 by lamps, at 0.3 and 0.02 mW a lumen.
TEST(PlaceUltraviolet, TakesExposureByWhatLitThePlace) {
    PlaceUltraviolet places(northern, usual);
    EXPECT_NEAR(places.ofExposure(daylight(2), 1000).nearUltraviolet_Whm2.best, 0.3, 1e-12);
    EXPECT_NEAR(places.ofExposure(std::nullopt, 1000).nearUltraviolet_Whm2.best, 0.3, 1e-12);
    const LightDose lamps = places.ofExposure(ofKind(LightKind::artificial), 1000);
    EXPECT_NEAR(lamps.nearUltraviolet_Whm2.best, 0.02, 1e-12);
    EXPECT_NEAR(lamps.sunnyDays.best, 0.02 / places.sunnyDay_Whm2(), 1e-12);
    const LightDose metered = places.ofMetered({4, 5, 6});
    EXPECT_EQ(metered.nearUltraviolet_Whm2.best, 5);
    EXPECT_NEAR(metered.sunnyDays.best, 5 / places.sunnyDay_Whm2(), 1e-12);
    expectOrdered(metered.sunnyDays);
}

// 20 March: at 10° E the sun stands highest 7 min after noon of mean solar time.
TEST(PlaceUltraviolet, TellsHowMuchHasFallenByAMinuteOfTheDay) {
    PlaceUltraviolet places(northern, usual);
    const auto fallen = [&](const std::optional<Light>& light, double hour) {
        return places.fallenBy(light, dayOn(3, 20), hour * 60);
    };
    for (const std::optional<Light>& light :
         {std::optional<Light>(daylight(2)), std::optional<Light>(ofKind(LightKind::outdoors)),
          std::optional<Light>(ofKind(LightKind::artificial)), std::optional<Light>()}) {
        EXPECT_EQ(fallen(light, -3), 0);
        EXPECT_EQ(fallen(light, 0), 0);
        EXPECT_EQ(fallen(light, 24), 1);
        EXPECT_EQ(fallen(light, 30), 1);
        EXPECT_NEAR(fallen(light, 12), 0.5, 0.03);
        for (double hour = 0.25; hour <= 24; hour += 0.25)
            EXPECT_GE(fallen(light, hour), fallen(light, hour - 0.25));
    }
    EXPECT_EQ(fallen(daylight(2), 5), 0);
    EXPECT_NEAR(fallen(ofKind(LightKind::artificial), 6), 0.25, 1e-12);
    Light east = ofKind(LightKind::outdoors);
    east.windowAzimuth_deg = 90;
    Light southEast = east;
    southEast.windowAzimuth_deg = 135;
    EXPECT_GT(fallen(east, 12), fallen(southEast, 12));
    EXPECT_GT(fallen(southEast, 12), 0.53);
}

TEST(PlaceUltraviolet, IsNothingByDaylightInThePolarNight) {
    PlaceUltraviolet places({78, 15}, usual);
    EXPECT_EQ(ofDay_Whm2(places, daylight(5, true, 180), dayOn(12, 21)).high, 0);
    EXPECT_GT(ofDay_Whm2(places, daylight(5), dayOn(6, 21)).best, 0);
}

TEST(PlaceUltraviolet, RefusesWhatCannotBe) {
    EXPECT_THROW(PlaceUltraviolet({91, 0}, usual), InputError);
    EXPECT_THROW(PlaceUltraviolet({std::nan(""), 0}, usual), InputError);
    EXPECT_THROW(PlaceUltraviolet(northern, skies(0.7, 0.4)), InputError);
    EXPECT_THROW(PlaceUltraviolet(northern, skies(-0.1, 0.4)), InputError);
    EXPECT_THROW(PlaceUltraviolet(northern, skies(std::nan(""), 0.4)), InputError);
    Skies month = usual;
    month.ofMonth[11] = SkyShares{0.9, 0.2};
    EXPECT_THROW(PlaceUltraviolet(northern, month), InputError);
}

}  // namespace
}  // namespace rackbook
