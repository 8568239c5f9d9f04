#include "base/CivilTime.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

struct KnownDay {
    std::int64_t year;
    int month;
    int day;
    std::int64_t sinceEpoch;
};

// Made with Python 3.11: date(y, m, d).toordinal() - date(1970, 1, 1).toordinal(). The day
// 1858-11-17 is the zero of the Modified Julian Date.
constexpr KnownDay knownDays[] = {
    {1, 1, 1, -719162},    {1600, 2, 29, -135081},  {1858, 11, 17, -40587}, {1899, 12, 31, -25568},
    {1900, 2, 28, -25509}, {1900, 3, 1, -25508},    {1969, 12, 31, -1},     {1970, 1, 1, 0},
    {1998, 10, 25, 10524}, {2000, 2, 28, 11015},    {2000, 2, 29, 11016},   {2000, 3, 1, 11017},
    {2024, 2, 29, 19782},  {2026, 3, 4, 20516},     {2038, 1, 19, 24855},   {2100, 2, 28, 47540},
    {2100, 3, 1, 47541},   {9999, 12, 31, 2932896},
};

TEST(CivilTime, CountsDaysAsPythonDoes) {
    for (const KnownDay& known : knownDays) {
        SCOPED_TRACE(known.sinceEpoch);
        EXPECT_EQ(daysFromCivil({known.year, known.month, known.day}), known.sinceEpoch);
        const CivilDate back = civilFromDays(known.sinceEpoch);
        EXPECT_EQ(back.year, known.year);
        EXPECT_EQ(back.month, known.month);
        EXPECT_EQ(back.day, known.day);
    }
}

// Walks day by day with a calendar of its own, from 31 December of the year -1 to the year 2401.
TEST(CivilTime, FollowsTheGregorianCalendarDayByDay) {
    std::int64_t days = daysFromCivil({0, 1, 1});
    // Year 0 is leap, so 366 days before 0001-01-01, whose number stands above.
    ASSERT_EQ(days, -719162 - 366);
    for (std::int64_t year = 0; year <= 2400; ++year) {
        const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
        for (int month = 1; month <= 12; ++month) {
            const bool shortMonth = month == 4 || month == 6 || month == 9 || month == 11;
            const int length = month == 2 ? (leap ? 29 : 28) : (shortMonth ? 30 : 31);
            ASSERT_EQ(daysInMonth(year, month), length) << year << "-" << month;
            for (int day = 1; day <= length; ++day, ++days) {
                ASSERT_EQ(daysFromCivil({year, month, day}), days);
                const CivilDate back = civilFromDays(days);
                ASSERT_TRUE(back.year == year && back.month == month && back.day == day) << days;
            }
        }
    }
}

TEST(CivilTime, KnowsTheLeapYearsOfCenturies) {
    EXPECT_EQ(daysInMonth(1900, 2), 28);
    EXPECT_EQ(daysInMonth(2000, 2), 29);
    EXPECT_EQ(daysInMonth(2100, 2), 28);
    EXPECT_EQ(daysInMonth(-4, 2), 29);
    EXPECT_EQ(daysInMonth(-100, 2), 28);
    EXPECT_EQ(daysInMonth(-400, 2), 29);
}

TEST(CivilTime, PutsMinutesBeforeTheEpochIntoTheDayTheyFallIn) {
    EXPECT_EQ(dayOf(0), 0);
    EXPECT_EQ(dayOf(1439), 0);
    EXPECT_EQ(dayOf(1440), 1);
    EXPECT_EQ(dayOf(-1), -1);
    EXPECT_EQ(dayOf(-1440), -1);
    EXPECT_EQ(dayOf(-1441), -2);
}

TEST(CivilTime, WritesDaysAndMinutes) {
    EXPECT_EQ(formatDay(20516 * minutesPerDay + 1439), "2026-03-04");
    EXPECT_EQ(formatMinute(20516 * minutesPerDay + 570), "2026-03-04T09:30");
    EXPECT_EQ(formatMinute(-1), "1969-12-31T23:59");
    EXPECT_EQ(formatDay(daysFromCivil({-44, 3, 15}) * minutesPerDay), "-0044-03-15");
    EXPECT_EQ(formatDay(daysFromCivil({17000, 1, 1}) * minutesPerDay), "17000-01-01");
}

}  // namespace
}  // namespace rackbook
