#include "base/Clock.h"

#include <gtest/gtest.h>
#include <stdlib.h>

#include <ctime>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;

// Sets SOURCE_DATE_EPOCH for one test.
class FixedEpoch {
public:
    explicit FixedEpoch(const char* value) { setenv("SOURCE_DATE_EPOCH", value, 1); }
    FixedEpoch(const FixedEpoch&) = delete;
    FixedEpoch& operator=(const FixedEpoch&) = delete;
    ~FixedEpoch() { unsetenv("SOURCE_DATE_EPOCH"); }
};

CivilMinute minuteOf(int year, int month, int day, int hour, int minute) {
    return daysFromCivil({year, month, day}) * minutesPerDay + hour * 60 + minute;
}

TEST(Clock, StandsStillWhereItIsTold) {
    const FixedEpoch fixed("1772613000");
    EXPECT_EQ(nowEpoch_s(), 1772613000);
    EXPECT_EQ(utcText(nowEpoch_s()), "2026-03-04T08:30:00Z");
}

TEST(Clock, GoesOtherwise) {
    unsetenv("SOURCE_DATE_EPOCH");
    EXPECT_NEAR(static_cast<double>(nowEpoch_s()), static_cast<double>(std::time(nullptr)), 2);
    const FixedEpoch empty("");
    EXPECT_NEAR(static_cast<double>(nowEpoch_s()), static_cast<double>(std::time(nullptr)), 2);
}

TEST(Clock, RefusesATimeThatIsNoNumber) {
    for (const char* text : {"yesterday", "1.5", "12h", " 5", "99999999999999999999"}) {
        const FixedEpoch fixed(text);
        EXPECT_EQ(messageOf<UsageError>([] { nowEpoch_s(); }),
                  "SOURCE_DATE_EPOCH is not a whole number of seconds. Unset it.");
    }
}

// Beyond the year 9999 a moment has no ISO 8601 text of four digits, and sheets and journal would
// stand without a date.
TEST(Clock, RefusesATimeThatCannotBeWritten) {
    for (const char* text : {"253402300800", "-62135596801", "9223372036854775807"}) {
        const FixedEpoch fixed(text);
        EXPECT_EQ(messageOf<UsageError>([] { nowEpoch_s(); }),
                  "SOURCE_DATE_EPOCH lies outside the years 1 to 9999. Unset it.");
    }
    const FixedEpoch last("253402300799");
    EXPECT_EQ(utcText(nowEpoch_s()), "9999-12-31T23:59:59Z");
}

// Epoch seconds from Python 3.11's datetime. Central European Time: +01:00, in summer +02:00
// until 01:00 UTC on the last Sunday of October (Directive 2000/84/EC).
TEST(Clock, ShowsTheStudiosWallClock) {
    EXPECT_EQ(civilMinuteAt(1772613000, "Europe/Copenhagen"), minuteOf(2026, 3, 4, 9, 30));
    EXPECT_EQ(civilMinuteAt(1772613059, "Europe/Copenhagen"), minuteOf(2026, 3, 4, 9, 30));
    EXPECT_EQ(civilMinuteAt(1783153800, "Europe/Copenhagen"), minuteOf(2026, 7, 4, 10, 30));
    EXPECT_EQ(civilMinuteAt(1772613000, "Asia/Kathmandu"), minuteOf(2026, 3, 4, 14, 15));
    EXPECT_EQ(civilMinuteAt(0, "UTC"), 0);
    EXPECT_EQ(civilMinuteAt(-1, "UTC"), -1);
    EXPECT_EQ(civilMinuteAt(-60, "UTC"), -1);
    EXPECT_EQ(civilMinuteAt(-61, "UTC"), -2);
}

// In the night to 25 October 2026 the hour from two to three comes twice, first in summer time.
TEST(Clock, AllowsBothShiftsInTheHourThatComesTwice) {
    const CivilMinute halfPastTwo = minuteOf(2026, 10, 25, 2, 30);
    const std::string zone = "Europe/Copenhagen";
    EXPECT_TRUE(zoneAllowsOffset(halfPastTwo, 120, zone));
    EXPECT_TRUE(zoneAllowsOffset(halfPastTwo, 60, zone));
    EXPECT_FALSE(zoneAllowsOffset(halfPastTwo, 0, zone));
    EXPECT_TRUE(zoneAllowsOffset(minuteOf(2026, 10, 25, 1, 59), 120, zone));
    EXPECT_FALSE(zoneAllowsOffset(minuteOf(2026, 10, 25, 1, 59), 60, zone));
    EXPECT_TRUE(zoneAllowsOffset(minuteOf(2026, 10, 25, 3, 0), 60, zone));
    EXPECT_FALSE(zoneAllowsOffset(minuteOf(2026, 10, 25, 3, 0), 120, zone));
}

// On 29 March 2026 the hour from two to three does not come.
TEST(Clock, AllowsNoShiftInTheHourThatDoesNotCome) {
    const CivilMinute halfPastTwo = minuteOf(2026, 3, 29, 2, 30);
    EXPECT_FALSE(zoneAllowsOffset(halfPastTwo, 60, "Europe/Copenhagen"));
    EXPECT_FALSE(zoneAllowsOffset(halfPastTwo, 120, "Europe/Copenhagen"));
}

TEST(Clock, WritesShifts) {
    EXPECT_EQ(offsetText(minuteOf(2026, 1, 15, 12, 0), "Europe/Copenhagen"), "+01:00");
    EXPECT_EQ(offsetText(minuteOf(2026, 7, 15, 12, 0), "Europe/Copenhagen"), "+02:00");
    EXPECT_EQ(offsetText(minuteOf(2026, 1, 15, 12, 0), "America/St_Johns"), "-03:30");
    EXPECT_EQ(offsetText(minuteOf(2026, 1, 15, 12, 0), "Asia/Kathmandu"), "+05:45");
    EXPECT_EQ(offsetText(minuteOf(2026, 1, 15, 12, 0), "UTC"), "+00:00");
}

// The shift is the one at that wall-clock minute, up to the hours at which clocks are turned.
TEST(Clock, WritesTheShiftOfTheHourJustBeforeAndAfterAChange) {
    EXPECT_EQ(offsetText(minuteOf(2026, 3, 29, 1, 59), "Europe/Copenhagen"), "+01:00");
    EXPECT_EQ(offsetText(minuteOf(2026, 3, 29, 3, 1), "Europe/Copenhagen"), "+02:00");
    EXPECT_EQ(offsetText(minuteOf(2026, 10, 25, 1, 59), "Europe/Copenhagen"), "+02:00");
    EXPECT_EQ(offsetText(minuteOf(2026, 10, 25, 3, 1), "Europe/Copenhagen"), "+01:00");
    EXPECT_EQ(offsetText(minuteOf(2026, 3, 8, 1, 59), "America/Los_Angeles"), "-08:00");
    EXPECT_EQ(offsetText(minuteOf(2026, 3, 8, 3, 1), "America/Los_Angeles"), "-07:00");
}

TEST(Clock, KnowsIanaZones) {
    EXPECT_TRUE(isKnownTimeZone("Europe/Copenhagen"));
    EXPECT_TRUE(isKnownTimeZone("America/Argentina/Ushuaia"));
    EXPECT_TRUE(isKnownTimeZone("UTC"));
    for (const char* unknown : {"", "Mars/Olympus", "../Europe/Copenhagen", "/etc/passwd", "CE T"})
        EXPECT_FALSE(isKnownTimeZone(unknown)) << unknown;
}

TEST(Clock, RefusesUnknownZones) {
    EXPECT_EQ(messageOf<InputError>([] { civilMinuteAt(0, "Mars/Olympus"); }),
              "the system knows no time zone \"Mars/Olympus\". Use an IANA name such as "
              "Europe/Copenhagen.");
}

// Directive 2000/84/EC: clocks go forward at 1:00 UTC on the last Sunday of March and back at 1:00
// UTC on the last Sunday of October. Denmark is an hour ahead of UTC in winter.
TEST(Clock, KnowsTheHourThatClocksLeaveOut) {
    const std::string zone = "Europe/Copenhagen";
    EXPECT_TRUE(clocksShowed(minuteOf(2026, 3, 29, 1, 59), zone));
    EXPECT_FALSE(clocksShowed(minuteOf(2026, 3, 29, 2, 0), zone));
    EXPECT_FALSE(clocksShowed(minuteOf(2026, 3, 29, 2, 59), zone));
    EXPECT_TRUE(clocksShowed(minuteOf(2026, 3, 29, 3, 0), zone));
    EXPECT_TRUE(clocksShowed(minuteOf(2026, 10, 25, 2, 30), zone));
    // Before zones were agreed on, clocks showed the sun's time, 50 min 20 s ahead of UTC (IANA
    // time zone database).
    EXPECT_TRUE(clocksShowed(minuteOf(1870, 5, 1, 12, 0), zone));
}

// Denmark puts its clocks forward at 01:00 UTC on the last Sunday of March, and back on that of
// October (IANA time zone database); Lord Howe Island by half an hour only.
TEST(Clock, TellsTheShiftsThatShowedAMinute) {
    const auto shifts = [](int month, int day, int hour, int minute, const char* zone) {
        return shiftsShowing_min(minuteOf(2026, month, day, hour, minute), zone);
    };
    using Shifts = std::vector<int>;
    EXPECT_EQ(shifts(3, 29, 1, 59, "Europe/Copenhagen"), Shifts({60}));
    EXPECT_EQ(shifts(3, 29, 2, 0, "Europe/Copenhagen"), Shifts({}));
    EXPECT_EQ(shifts(3, 29, 2, 59, "Europe/Copenhagen"), Shifts({}));
    EXPECT_EQ(shifts(3, 29, 3, 0, "Europe/Copenhagen"), Shifts({120}));
    EXPECT_EQ(shifts(10, 25, 1, 59, "Europe/Copenhagen"), Shifts({120}));
    EXPECT_EQ(shifts(10, 25, 2, 0, "Europe/Copenhagen"), Shifts({120, 60}));
    EXPECT_EQ(shifts(10, 25, 2, 59, "Europe/Copenhagen"), Shifts({120, 60}));
    EXPECT_EQ(shifts(10, 25, 3, 0, "Europe/Copenhagen"), Shifts({60}));
    EXPECT_EQ(shifts(4, 5, 1, 45, "Australia/Lord_Howe"), Shifts({660, 630}));
    EXPECT_EQ(shifts(10, 4, 2, 15, "Australia/Lord_Howe"), Shifts({}));
    EXPECT_EQ(shifts(7, 1, 12, 0, "UTC"), Shifts({0}));
    EXPECT_EQ(messageOf<InputError>([] { shiftsShowing_min(0, "Shed/Bench"); }),
              "the system knows no time zone \"Shed/Bench\". Use an IANA name such as "
              "Europe/Copenhagen.");
}

}  // namespace
}  // namespace rackbook
