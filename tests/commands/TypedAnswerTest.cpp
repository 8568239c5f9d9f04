// Dates, times and numbers as people type them in answer to questions.
#include "commands/TypedAnswer.h"

#include <gtest/gtest.h>

#include "base/Edtf.h"
#include "base/Error.h"

namespace rackbook {
namespace {

CivilMinute at(const char* moment) {
    return EdtfDate::parse(moment).earliest();
}

const CivilMinute now = at("2026-03-28T19:00");

std::string day(const std::string& typed) {
    return dayMeant(typed, now);
}

std::string moment(const std::string& typed) {
    return momentMeant(typed, now, now);
}

TEST(TypedAnswer, KnowsDaysByTheirNames) {
    EXPECT_EQ(day("today"), "2026-03-28");
    EXPECT_EQ(day(" Yesterday "), "2026-03-27");
    EXPECT_EQ(day("gestern"), "2026-03-27");
}

// With dots the day comes first; with other signs only one reading may be a day.
TEST(TypedAnswer, TakesAnOrderOnlyWhereItIsPlain) {
    EXPECT_EQ(day("26.11.2025"), "2025-11-26");
    EXPECT_EQ(day("3.4.2025"), "2025-04-03");
    EXPECT_EQ(day("26/11/2025"), "2025-11-26");
    EXPECT_EQ(day("11/26/2025"), "2025-11-26");
    EXPECT_EQ(day("5-5-2025"), "2025-05-05");
    EXPECT_THROW(day("3/4/2025"), UsageError);
    EXPECT_THROW(day("03-04-2025"), UsageError);
    EXPECT_EQ(day("31.2.2025"), "31.2.2025");  // no day: for the check to refuse
    EXPECT_EQ(day("26.11.25"), "26.11.25");    // a year has four digits
    EXPECT_EQ(day("2025-11-26"), "2025-11-26");
    EXPECT_EQ(day("2025~"), "2025~");
}

TEST(TypedAnswer, TakesTheLatestDayWhereTheYearIsLeftOut) {
    EXPECT_EQ(day("28.3."), "2026-03-28");
    EXPECT_EQ(day("29.3."), "2025-03-29");
    EXPECT_EQ(day("29. 2."), "2024-02-29");
    EXPECT_EQ(day("30.2."), "30.2.");
}

TEST(TypedAnswer, KnowsTimesByTheClock) {
    EXPECT_EQ(moment("14:30"), "2026-03-28T14:30");
    EXPECT_EQ(moment("14.30"), "2026-03-28T14:30");
    EXPECT_EQ(moment("1430"), "2026-03-28T14:30");
    EXPECT_EQ(moment("9h05"), "2026-03-28T09:05");
    EXPECT_EQ(moment("at 9.05"), "2026-03-28T09:05");
    EXPECT_EQ(moment("now"), "2026-03-28T19:00");
    EXPECT_EQ(moment("2460"), "2460");
    EXPECT_EQ(momentMeant("0930", now, at("2026-03-01T00:00")), "2026-03-01T09:30");
}

TEST(TypedAnswer, PutsDaysAndTimesTogether) {
    EXPECT_EQ(moment("yesterday 14.30"), "2026-03-27T14:30");
    EXPECT_EQ(moment("yesterday at 1430"), "2026-03-27T14:30");
    EXPECT_EQ(moment("26.11.2025, 9:05"), "2025-11-26T09:05");
    EXPECT_EQ(moment("26.11. 9.05"), "2025-11-26T09:05");
    EXPECT_EQ(moment("2025-11-26 0905"), "2025-11-26T09:05");
    EXPECT_EQ(moment("2025-11-26T09:05"), "2025-11-26T09:05");
    EXPECT_EQ(moment("2019/2021"), "2019/2021");
}

TEST(TypedAnswer, ReadsNumbersOfImpressionsInWords) {
    EXPECT_EQ(rangeMeant("4 and 9"), "4,9");
    EXPECT_EQ(rangeMeant("4, 9"), "4,9");
    EXPECT_EQ(rangeMeant("4 9 11"), "4,9,11");
    EXPECT_EQ(rangeMeant("1 to 18"), "1-18");
    EXPECT_EQ(rangeMeant("1 – 18"), "1-18");
    EXPECT_EQ(rangeMeant("1 bis 12, 15 und 17"), "1-12,15,17");
    EXPECT_EQ(rangeMeant("1-12, and 15"), "1-12,15");
    EXPECT_EQ(rangeMeant("the first few"), "the first few");
    EXPECT_EQ(rangeMeant(""), "");
}

TEST(TypedAnswer, TakesCommasAndUnitsInNumbers) {
    EXPECT_EQ(numberMeant("21,5"), "21.5");
    EXPECT_EQ(numberMeant("21.5 °C"), "21.5");
    EXPECT_EQ(numberMeant("55%"), "55");
    EXPECT_EQ(numberMeant("−2 °C"), "-2");
    EXPECT_EQ(numberMeant("6,5 g/m²"), "6.5");
    EXPECT_EQ(numberMeant("1.234,5"), "1.234,5");
    EXPECT_EQ(numberMeant("warm"), "warm");
}

}  // namespace
}  // namespace rackbook
