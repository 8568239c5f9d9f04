#include "exchange/WrittenTime.h"

#include <gtest/gtest.h>
#include <time.h>

#include <cstdio>
#include <random>

#include "base/CivilTime.h"

namespace rackbook {
namespace {

constexpr std::int64_t day_ms = 86'400'000;

std::int64_t clock_ms(int year, int month, int day, int hour, int minute, int ms = 0) {
    return daysFromCivil({year, month, day}) * day_ms + (hour * 60 + minute) * 60'000 + ms;
}

std::int64_t readAs(DateOrder order, const std::string& text) {
    const std::optional<WrittenTime> time = writtenTimeIn(text, order);
    EXPECT_TRUE(time) << text;
    EXPECT_FALSE(time && time->shift_min) << text;
    return time ? time->clock_ms : -1;
}

// ISO 8601-1:2019, 5.4.2 and the space that RFC 3339, 5.6 allows.
TEST(WrittenTime, ReadsDatesThatBeginWithTheYear) {
    const auto read = [](const std::string& text) { return readAs(DateOrder::yearMonthDay, text); };
    EXPECT_EQ(read("2026-03-04T09:30"), clock_ms(2026, 3, 4, 9, 30));
    EXPECT_EQ(read("2026-03-04 09:30"), clock_ms(2026, 3, 4, 9, 30));
    EXPECT_EQ(read("2026-03-04 09:30:15"), clock_ms(2026, 3, 4, 9, 30, 15'000));
    EXPECT_EQ(read("2026-03-04t09:30:15.2509"), clock_ms(2026, 3, 4, 9, 30, 15'250));
    EXPECT_EQ(read("2026-03-04  9:30:15,5"), clock_ms(2026, 3, 4, 9, 30, 15'500));
    EXPECT_EQ(read("2024-02-29 23:59:59"), clock_ms(2024, 2, 29, 23, 59, 59'000));
    EXPECT_EQ(read("1969-12-31 23:59:59.999"), -1);
}

TEST(WrittenTime, ReadsShiftsFromUtc) {
    for (const auto& [shift, minutes] :
         {std::pair("Z", 0), std::pair("z", 0), std::pair("+01:00", 60), std::pair("+0545", 345),
          std::pair("-03", -180), std::pair(" +02:00", 120), std::pair("-18:00", -1080)}) {
        const auto time =
            writtenTimeIn("2026-03-04T09:30:05" + std::string(shift), DateOrder::yearMonthDay);
        ASSERT_TRUE(time) << shift;
        EXPECT_EQ(time->shift_min, minutes);
        EXPECT_EQ(time->clock_ms, clock_ms(2026, 3, 4, 9, 30, 5'000));
    }
}

TEST(WrittenTime, ReadsDayAndMonthInTheOrderThatIsSaid) {
    const auto both = [](const std::string& text, int month, int day) {
        EXPECT_EQ(readAs(DateOrder::dayMonthYear, text), clock_ms(2026, month, day, 9, 30));
        EXPECT_EQ(readAs(DateOrder::monthDayYear, text), clock_ms(2026, day, month, 9, 30));
        EXPECT_FALSE(writtenTimeIn(text, DateOrder::yearMonthDay));
    };
    both("04.03.2026 09:30", 3, 4);
    both("04/03/2026 09:30:00", 3, 4);
    both("4-3-2026 9:30", 3, 4);
    EXPECT_FALSE(writtenTimeIn("13/12/2026 09:30", DateOrder::monthDayYear));
    EXPECT_FALSE(writtenTimeIn("12/13/2026 09:30", DateOrder::dayMonthYear));
    EXPECT_FALSE(writtenTimeIn("2026-03-04 09:30", DateOrder::dayMonthYear));
    EXPECT_FALSE(writtenTimeIn("04.03/2026 09:30", DateOrder::dayMonthYear));
    EXPECT_FALSE(writtenTimeIn("04.03.26 09:30", DateOrder::dayMonthYear));
}

TEST(WrittenTime, ReadsHalfDays) {
    for (const auto& [text, hour] : {std::pair("12:05 AM", 0), std::pair("1:05 am", 1),
                                     std::pair("12:05PM", 12), std::pair("11:05:00 pm", 23)})
        EXPECT_EQ(readAs(DateOrder::monthDayYear, "03/04/2026 " + std::string(text)),
                  clock_ms(2026, 3, 4, hour, 5));
    for (const char* text : {"0:05 AM", "13:05 PM", "1:05 XM", "1:05 A"})
        EXPECT_FALSE(writtenTimeIn("03/04/2026 " + std::string(text), DateOrder::monthDayYear));
}

TEST(WrittenTime, ReadsDateAndTimeOfDayApart) {
    EXPECT_EQ(writtenTimeIn("2026-03-04", "09:30", DateOrder::yearMonthDay)->clock_ms,
              clock_ms(2026, 3, 4, 9, 30));
    EXPECT_FALSE(writtenTimeIn("2026-03-04 ", "09:30", DateOrder::yearMonthDay));
    EXPECT_FALSE(writtenTimeIn("2026-03-04", "2026-03-04 09:30", DateOrder::yearMonthDay));
    for (const DateOrder order :
         {DateOrder::yearMonthDay, DateOrder::dayMonthYear, DateOrder::monthDayYear})
        EXPECT_EQ(writtenDayIn(exampleOf(order), order), daysFromCivil({2026, 3, 4}));
}

TEST(WrittenTime, ReadsNothingElse) {
    for (const char* text : {"",
                             "2026-03-04",
                             "09:30",
                             "2026-03-0409:30",
                             "2026-03-04T",
                             "2026-3-4 09:30",
                             "26-03-04 09:30",
                             "2026-02-29 09:30",
                             "2026-13-01 09:30",
                             "2026-00-01 09:30",
                             "0000-01-01 09:30",
                             "2026-03-04 24:00",
                             "2026-03-04 09:60",
                             "2026-03-04 09:30:60",
                             "2026-03-04 09:30:5",
                             "2026-03-04 09:30:05.",
                             "2026-03-04 9",
                             "2026-03-04 09:3",
                             "2026-03-04 09:30 x",
                             "2026-03-04 09:30+1",
                             "2026-03-04 09:30+01:",
                             "2026-03-04 09:30+01:60",
                             "2026-03-04 09:30+19:00",
                             "2026-03-04 09:30Z+01",
                             "2026-03-04 09:30:05.5.5",
                             "20260304T0930",
                             "2026/03/04 09:30",
                             "-2026-03-04 09:30",
                             "2026-03-04 -9:30"})
        EXPECT_FALSE(writtenTimeIn(text, DateOrder::yearMonthDay)) << text;
}

// Against timegm of the C library.
TEST(WrittenTime, AgreesWithTheSystem) {
    std::mt19937 random(3);
    for (int i = 0; i < 2000; ++i) {
        std::tm parts{};
        parts.tm_year = static_cast<int>(random() % 400);  // from 1900
        parts.tm_mon = static_cast<int>(random() % 12);
        parts.tm_mday = 1 + static_cast<int>(random() % 28);
        parts.tm_hour = static_cast<int>(random() % 24);
        parts.tm_min = static_cast<int>(random() % 60);
        parts.tm_sec = static_cast<int>(random() % 60);
        char text[64];
        strftime(text, sizeof text, "%d.%m.%Y %I:%M:%S %p", &parts);
        EXPECT_EQ(readAs(DateOrder::dayMonthYear, text), std::int64_t{timegm(&parts)} * 1000);
        strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%S", &parts);
        EXPECT_EQ(readAs(DateOrder::yearMonthDay, text), std::int64_t{timegm(&parts)} * 1000);
    }
}

}  // namespace
}  // namespace rackbook
