#include "base/TypedDate.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

using Order = DateOrder;

TEST(TypedDate, ReadsDaysInTheOrderAskedFor) {
    const std::optional<std::string> day = "2026-03-28";
    for (const char* text : {"2026-03-28", "2026/3/28", "2026.03.28", "2026 3 28", " 2026-03-28 ",
                             "2026年3月28日", "２０２６－０３－２８"})
        for (const Order order : {Order::dayMonthYear, Order::monthDayYear, Order::yearMonthDay})
            EXPECT_EQ(typedDay(text, order), day) << text;
    for (const char* text : {"28.3.2026", "28. 3. 2026", "28/03/2026", "28-3-2026", "28 3 2026",
                             "28.3.2026.", "28\u00A03\u00A02026"})
        EXPECT_EQ(typedDay(text, Order::dayMonthYear), day) << text;
    EXPECT_EQ(typedDay("3/28/2026", Order::monthDayYear), day);
    EXPECT_EQ(typedDay("3/4/2026", Order::dayMonthYear), "2026-04-03");
    EXPECT_EQ(typedDay("3/4/2026", Order::monthDayYear), "2026-03-04");
    EXPECT_EQ(typedDay("29.2.2028", Order::dayMonthYear), "2028-02-29");
}

TEST(TypedDate, RefusesWhatIsNoDay) {
    for (const char* text :
         {"", "28.3.", "28.3.26", "3/28/2026", "29.2.2026", "0.3.2026", "32.3.2026", "28.3-2026",
          "28 March 2026", "2026-03", "2026-03-28?", "2026-03-28T18:30", "1.1.12026", "28..3.2026"})
        EXPECT_FALSE(typedDay(text, Order::dayMonthYear)) << text;
    EXPECT_FALSE(typedDay("28/3/2026", Order::yearMonthDay));
}

TEST(TypedDate, ReadsClockTimes) {
    for (const char* text :
         {"9:05", "09:05", "9.05", "9h05", "9 h 05", "9時05分", "９：０５", " 9:05 "})
        EXPECT_EQ(typedClock(text), "09:05") << text;
    EXPECT_EQ(typedClock("00:00"), "00:00");
    EXPECT_EQ(typedClock("23:59"), "23:59");
    for (const char* text : {"", "9", "24:00", "12:60", "9:5", "9:05 pm", "-9:05", "9:05:00"})
        EXPECT_FALSE(typedClock(text)) << text;
}

TEST(TypedDate, WritesDaysInAnOrder) {
    EXPECT_EQ(dayInOrder(2026, 3, 28, Order::dayMonthYear, "."), "28.3.2026");
    EXPECT_EQ(dayInOrder(2026, 3, 28, Order::monthDayYear, "/"), "3/28/2026");
    EXPECT_EQ(dayInOrder(2026, 3, 28, Order::yearMonthDay, "/"), "2026/3/28");
}

}  // namespace
}  // namespace rackbook
