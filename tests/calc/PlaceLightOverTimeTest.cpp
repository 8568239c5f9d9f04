#include "calc/PlaceLightOverTime.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

CivilMinute dayOn(int month, int day) {
    return daysFromCivil({2026, month, day}) * minutesPerDay;
}

Light ofKind(LightKind kind) {
    Light light;
    light.lightKind = kind;
    return light;
}

Place placeIn(const std::string& id, PlaceKind kind, const std::string& within = {}) {
    Place place;
    place.id = id;
    place.placeKind = kind;
    if (!within.empty())
        place.within = Ref<Place>{within};
    return place;
}

// 0 a room in daylight, dark from March on; 1 a rack in it; 2 a drawer in it; 3 within itself; 4 a
// wall in the room with light of its own.
std::vector<Place> someplaces() {
    Place room = placeIn("room", PlaceKind::room);
    Light dark = ofKind(LightKind::dark);
    dark.from = EdtfDate::ofMinute(dayOn(3, 1));
    room.light = {dark, ofKind(LightKind::daylight)};
    Place wall = placeIn("wall", PlaceKind::wall, "room");
    wall.light = {ofKind(LightKind::artificial)};
    return {room, placeIn("rack", PlaceKind::rack, "room"),
            placeIn("drawer", PlaceKind::drawer, "room"), placeIn("ring", PlaceKind::shelf, "ring"),
            wall};
}

TEST(LightPeriods, ComeFromThePlaceAround) {
    const auto periods = lightPeriodsOf(someplaces());
    ASSERT_EQ(periods.size(), 5u);
    ASSERT_EQ(periods[1].size(), 2u);
    EXPECT_EQ(periods[1][0].light.lightKind, LightKind::daylight);
    EXPECT_EQ(periods[1][1].light.lightKind, LightKind::dark);
    EXPECT_EQ(periods[1][1].from, dayOn(3, 1));
    ASSERT_EQ(periods[2].size(), 1u);
    EXPECT_EQ(periods[2][0].light.lightKind, LightKind::dark);
    EXPECT_TRUE(periods[3].empty());
    ASSERT_EQ(periods[4].size(), 1u);
    EXPECT_EQ(periods[4][0].light.lightKind, LightKind::artificial);
}

Metering meteringAt(const std::string& place, CivilMinute from, double length_h) {
    Metering metering;
    metering.place = {place};
    metering.from = EdtfDate::ofMinute(from);
    metering.to = EdtfDate::ofMinute(from + static_cast<CivilMinute>(length_h * 60));
    metering.exposure_lxh = 1000;
    return metering;
}

TEST(MeteredSpans, AreInTheOrderOfTime) {
    Metering late = meteringAt("room", dayOn(5, 2), 24);
    late.nearUltraviolet_Whm2 = 0.4;
    const auto spans = meteredSpansOf(someplaces(), {late, meteringAt("room", dayOn(5, 1), 24)});
    ASSERT_EQ(spans[0].size(), 2u);
    EXPECT_EQ(spans[0][0].from, dayOn(5, 1));
    EXPECT_EQ(spans[0][0].to, dayOn(5, 2));
    EXPECT_EQ(spans[0][0].exposure_lxh, 1000);
    EXPECT_FALSE(spans[0][0].nearUltraviolet_Whm2);
    EXPECT_EQ(spans[0][1].nearUltraviolet_Whm2, 0.4);
}

TEST(MeteredSpans, KnowWhatShareOfTheTimeWasSeen) {
    Metering all = meteringAt("room", dayOn(5, 1), 10);
    Metering part = meteringAt("room", dayOn(5, 2), 10);
    part.covered_h = 4;
    const auto spans = meteredSpansOf(someplaces(), {all, part});
    EXPECT_EQ(spans[0][0].seen, 1);
    EXPECT_NEAR(spans[0][1].seen, 0.4, 1e-12);
}

// A rack has the room's light and the room's instrument; what has light of its own, as a drawer
// and a lit wall do, is not told by an instrument elsewhere.
TEST(MeteredSpans, ComeFromWhereTheLightComesFrom) {
    const auto spans = meteredSpansOf(
        someplaces(), {meteringAt("room", dayOn(5, 1), 24), meteringAt("ring", dayOn(5, 1), 24)});
    EXPECT_EQ(spans[1].size(), 1u);
    EXPECT_TRUE(spans[2].empty());
    EXPECT_EQ(spans[3].size(), 1u);
    EXPECT_TRUE(spans[4].empty());
    const auto own = meteredSpansOf(
        someplaces(), {meteringAt("room", dayOn(5, 1), 24), meteringAt("rack", dayOn(6, 1), 24),
                       meteringAt("somewhere else", dayOn(6, 1), 24)});
    ASSERT_EQ(own[1].size(), 1u);
    EXPECT_EQ(own[1][0].from, dayOn(6, 1));
}

TEST(DarkThroughout, WantsEveryEntryOfTheTimeDark) {
    const auto period = [](int month, int day, LightKind kind) {
        LightPeriod one;
        one.from = dayOn(month, day);
        one.light.lightKind = kind;
        return one;
    };
    const std::vector<LightPeriod> periods = {
        period(3, 1, LightKind::dark), period(3, 5, LightKind::dark),
        period(3, 9, LightKind::daylight), period(3, 12, LightKind::dark)};
    EXPECT_TRUE(isDarkThroughout(periods, dayOn(3, 1), dayOn(3, 9)));
    EXPECT_TRUE(isDarkThroughout(periods, dayOn(3, 12), dayOn(4, 1)));
    EXPECT_FALSE(isDarkThroughout(periods, dayOn(2, 28), dayOn(3, 2)));
    EXPECT_FALSE(isDarkThroughout(periods, dayOn(3, 8), dayOn(3, 9) + 1));
    EXPECT_FALSE(isDarkThroughout(periods, dayOn(3, 8), dayOn(3, 20)));
    EXPECT_FALSE(isDarkThroughout(periods, dayOn(3, 10), dayOn(3, 14)));
    EXPECT_FALSE(isDarkThroughout({}, dayOn(3, 10), dayOn(3, 14)));
}

TEST(PlaceLightOverTime, KnowsWhatWasLitByDayThroughout) {
    const auto period = [](int month, int day, LightKind kind) {
        LightPeriod one;
        one.from = dayOn(month, day);
        one.light.lightKind = kind;
        return one;
    };
    const std::vector<LightPeriod> periods = {
        period(3, 1, LightKind::daylight), period(3, 5, LightKind::outdoors),
        period(3, 9, LightKind::artificial), period(3, 12, LightKind::metered)};
    EXPECT_TRUE(isDaylitThroughout(periods, dayOn(3, 1), dayOn(3, 9)));
    EXPECT_FALSE(isDaylitThroughout(periods, dayOn(2, 28), dayOn(3, 2)));
    EXPECT_FALSE(isDaylitThroughout(periods, dayOn(3, 8), dayOn(3, 9) + 1));
    EXPECT_FALSE(isDaylitThroughout(periods, dayOn(3, 10), dayOn(3, 11)));
    EXPECT_FALSE(isDaylitThroughout(periods, dayOn(3, 13), dayOn(3, 14)));
    EXPECT_FALSE(isDaylitThroughout({}, dayOn(3, 10), dayOn(3, 14)));
}

}  // namespace
}  // namespace rackbook
