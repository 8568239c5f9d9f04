// Clock changes as published: European summer time by Directive 2000/84/EC (01:00 UTC on the last
// Sundays of March and October); the United States by 15 U.S.C. 260a (02:00 on the second Sunday of
// March and the first of November); South Australia and Nepal by the IANA time zone database.
#include "base/ZoneShifts.h"

#include <gtest/gtest.h>

#include <random>

#include "base/Clock.h"

namespace rackbook {
namespace {

CivilMinute minuteOf(int year, int month, int day, int hour, int minute) {
    return daysFromCivil({year, month, day}) * minutesPerDay + hour * 60 + minute;
}

TEST(ZoneShifts, AreUtcWhereNothingIsSaid) {
    const ZoneShifts utc;
    const ZoneShifts named = zoneShiftsOf("UTC");
    for (const CivilMinute minute : {minuteOf(1900, 1, 1, 0, 0), minuteOf(2026, 7, 1, 12, 34)}) {
        EXPECT_EQ(utc.civilOf(minute), minute);
        EXPECT_EQ(utc.utcOf(minute), minute);
        EXPECT_EQ(named.civilOf(minute), minute);
        EXPECT_EQ(named.utcOf(minute), minute);
    }
}

TEST(ZoneShifts, FollowEuropeanSummerTime) {
    const ZoneShifts clocks = zoneShiftsOf("Europe/Copenhagen");
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 3, 29, 0, 59)), minuteOf(2026, 3, 29, 1, 59));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 3, 29, 1, 0)), minuteOf(2026, 3, 29, 3, 0));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 10, 25, 0, 59)), minuteOf(2026, 10, 25, 2, 59));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 10, 25, 1, 0)), minuteOf(2026, 10, 25, 2, 0));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 3, 29, 1, 59)), minuteOf(2026, 3, 29, 0, 59));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 3, 29, 3, 0)), minuteOf(2026, 3, 29, 1, 0));
}

TEST(ZoneShifts, TakeTheFirstOfAnHourThatComesTwice) {
    const ZoneShifts clocks = zoneShiftsOf("Europe/Copenhagen");
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 10, 25, 1, 59)), minuteOf(2026, 10, 24, 23, 59));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 10, 25, 2, 0)), minuteOf(2026, 10, 25, 0, 0));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 10, 25, 2, 59)), minuteOf(2026, 10, 25, 0, 59));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 10, 25, 3, 0)), minuteOf(2026, 10, 25, 2, 0));
}

TEST(ZoneShifts, ReadAnHourThatIsLeftOutAsIfClocksHadNotBeenPutForward) {
    const ZoneShifts clocks = zoneShiftsOf("Europe/Copenhagen");
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 3, 29, 2, 0)), minuteOf(2026, 3, 29, 1, 0));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 3, 29, 2, 30)), minuteOf(2026, 3, 29, 1, 30));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 3, 29, 2, 59)), minuteOf(2026, 3, 29, 1, 59));
}

TEST(ZoneShifts, FollowTheUnitedStates) {
    const ZoneShifts clocks = zoneShiftsOf("America/New_York");
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 3, 8, 6, 59)), minuteOf(2026, 3, 8, 1, 59));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 3, 8, 7, 0)), minuteOf(2026, 3, 8, 3, 0));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 11, 1, 5, 59)), minuteOf(2026, 11, 1, 1, 59));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 11, 1, 6, 0)), minuteOf(2026, 11, 1, 1, 0));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 11, 1, 1, 30)), minuteOf(2026, 11, 1, 5, 30));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 3, 8, 2, 30)), minuteOf(2026, 3, 8, 7, 30));
}

// Nine and a half hours ahead, ten and a half from the first Sunday of October (02:00) to that of
// April (03:00).
TEST(ZoneShifts, KnowHalfHoursAndTheSouthernSummer) {
    const ZoneShifts clocks = zoneShiftsOf("Australia/Adelaide");
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 7, 1, 0, 0)), minuteOf(2026, 7, 1, 9, 30));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 1, 1, 0, 0)), minuteOf(2026, 1, 1, 10, 30));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 4, 4, 16, 29)), minuteOf(2026, 4, 5, 2, 59));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 4, 4, 16, 30)), minuteOf(2026, 4, 5, 2, 0));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 10, 3, 16, 29)), minuteOf(2026, 10, 4, 1, 59));
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 10, 3, 16, 30)), minuteOf(2026, 10, 4, 3, 0));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 4, 5, 2, 30)), minuteOf(2026, 4, 4, 16, 0));
}

// Five and three quarters of an hour since 1986, five and a half before.
TEST(ZoneShifts, KnowQuartersOfAnHour) {
    const ZoneShifts clocks = zoneShiftsOf("Asia/Kathmandu");
    EXPECT_EQ(clocks.civilOf(minuteOf(2026, 7, 1, 0, 0)), minuteOf(2026, 7, 1, 5, 45));
    EXPECT_EQ(clocks.utcOf(minuteOf(2026, 7, 1, 5, 45)), minuteOf(2026, 7, 1, 0, 0));
    EXPECT_EQ(clocks.civilOf(minuteOf(1985, 7, 1, 0, 0)), minuteOf(1985, 7, 1, 5, 30));
}

// Against the system's time zones, asked minute by minute.
TEST(ZoneShifts, AgreeWithTheWallClockAtAnyMinute) {
    std::mt19937 random(3);
    std::uniform_int_distribution<CivilMinute> any(minuteOf(1950, 1, 1, 0, 0),
                                                   minuteOf(2140, 1, 1, 0, 0));
    for (const char* zone : {"Europe/Copenhagen", "America/New_York", "Australia/Adelaide",
                             "Australia/Lord_Howe", "Asia/Kathmandu", "Pacific/Apia", "UTC"}) {
        SCOPED_TRACE(zone);
        const ZoneShifts clocks = zoneShiftsOf(zone);
        for (int i = 0; i < 400; ++i) {
            const CivilMinute utc = any(random);
            const CivilMinute civil = clocks.civilOf(utc);
            ASSERT_EQ(civil, civilMinuteAt(utc * 60, zone)) << formatMinute(utc);
            // Back again, or to the first of an hour that comes twice.
            ASSERT_EQ(clocks.civilOf(clocks.utcOf(civil)), civil) << formatMinute(utc);
            ASSERT_LE(clocks.utcOf(civil), utc) << formatMinute(utc);
        }
    }
}

}  // namespace
}  // namespace rackbook
