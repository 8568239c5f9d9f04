#include "base/Edtf.h"

#include <gtest/gtest.h>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;

std::string minuteText(CivilMinute minute) {
    if (minute == beginningOfTime)
        return "beginning";
    return minute == endOfTime ? "end" : formatMinute(minute);
}

struct Reading {
    const char* text;
    const char* earliest;
    const char* latest;
};

void expectReads(const Reading& wanted) {
    SCOPED_TRACE(wanted.text);
    const EdtfDate date = EdtfDate::parse(wanted.text);
    EXPECT_EQ(date.text(), wanted.text);
    EXPECT_EQ(minuteText(date.earliest()), wanted.earliest);
    EXPECT_EQ(minuteText(date.latest()), wanted.latest);
}

// Texts: Library of Congress, Extended Date/Time Format specification (4 February 2019), level 0.
TEST(Edtf, ReadsTheExamplesOfLevelZero) {
    const Reading examples[] = {
        {"1985-04-12", "1985-04-12T00:00", "1985-04-12T23:59"},
        {"1985-04", "1985-04-01T00:00", "1985-04-30T23:59"},
        {"1985", "1985-01-01T00:00", "1985-12-31T23:59"},
        {"1985-04-12T23:20:30", "1985-04-12T23:20", "1985-04-12T23:20"},
        {"1985-04-12T23:20:30Z", "1985-04-12T23:20", "1985-04-12T23:20"},
        {"1985-04-12T23:20:30-04", "1985-04-12T23:20", "1985-04-12T23:20"},
        {"1985-04-12T23:20:30+04:30", "1985-04-12T23:20", "1985-04-12T23:20"},
        {"1964/2008", "1964-01-01T00:00", "2008-12-31T23:59"},
        {"2004-06/2006-08", "2004-06-01T00:00", "2006-08-31T23:59"},
        {"2004-02-01/2005-02-08", "2004-02-01T00:00", "2005-02-08T23:59"},
        {"2004-02-01/2005-02", "2004-02-01T00:00", "2005-02-28T23:59"},
        {"2004-02-01/2005", "2004-02-01T00:00", "2005-12-31T23:59"},
        {"2005/2006-02", "2005-01-01T00:00", "2006-02-28T23:59"},
    };
    for (const Reading& example : examples)
        expectReads(example);
}

// Same source, level 1. The bounds of qualified dates are our reading: one unit of the written
// precision on both sides (common practice, no source).
TEST(Edtf, ReadsTheExamplesOfLevelOne) {
    const Reading examples[] = {
        {"Y170000002", "170000002-01-01T00:00", "170000002-12-31T23:59"},
        {"Y-170000002", "-170000002-01-01T00:00", "-170000002-12-31T23:59"},
        {"2001-21", "2001-01-01T00:00", "2002-02-28T23:59"},
        {"2003-22", "2003-01-01T00:00", "2004-02-29T23:59"},
        {"2000-23", "2000-01-01T00:00", "2001-02-28T23:59"},
        {"2010-24", "2010-01-01T00:00", "2011-02-28T23:59"},
        {"1984?", "1983-01-01T00:00", "1985-12-31T23:59"},
        {"2004-06~", "2004-05-01T00:00", "2004-07-31T23:59"},
        {"2004-06-11%", "2004-06-10T00:00", "2004-06-12T23:59"},
        {"201X", "2010-01-01T00:00", "2019-12-31T23:59"},
        {"20XX", "2000-01-01T00:00", "2099-12-31T23:59"},
        {"2004-XX", "2004-01-01T00:00", "2004-12-31T23:59"},
        {"1985-04-XX", "1985-04-01T00:00", "1985-04-30T23:59"},
        {"1985-XX-XX", "1985-01-01T00:00", "1985-12-31T23:59"},
        {"1985-04-12/..", "1985-04-12T00:00", "end"},
        {"1985-04/..", "1985-04-01T00:00", "end"},
        {"1985/..", "1985-01-01T00:00", "end"},
        {"../1985-04-12", "beginning", "1985-04-12T23:59"},
        {"../1985-04", "beginning", "1985-04-30T23:59"},
        {"../1985", "beginning", "1985-12-31T23:59"},
        {"1985-04-12/", "1985-04-12T00:00", "end"},
        {"1985-04/", "1985-04-01T00:00", "end"},
        {"1985/", "1985-01-01T00:00", "end"},
        {"/1985-04-12", "beginning", "1985-04-12T23:59"},
        {"/1985-04", "beginning", "1985-04-30T23:59"},
        {"/1985", "beginning", "1985-12-31T23:59"},
        {"1984~/2004-06", "1983-01-01T00:00", "2004-06-30T23:59"},
        {"1984/2004-06~", "1984-01-01T00:00", "2004-07-31T23:59"},
        {"1984~/2004~", "1983-01-01T00:00", "2005-12-31T23:59"},
        {"1984?/2004%", "1983-01-01T00:00", "2005-12-31T23:59"},
        {"1984-06?/2004-08?", "1984-05-01T00:00", "2004-09-30T23:59"},
        {"1984-06-02?/2004-08-08~", "1984-06-01T00:00", "2004-08-09T23:59"},
        {"1984-06-02?/..", "1984-06-01T00:00", "end"},
        {"-1985", "-1985-01-01T00:00", "-1985-12-31T23:59"},
    };
    for (const Reading& example : examples)
        expectReads(example);
}

TEST(Edtf, ReadsYearsAroundZero) {
    expectReads({"-0044", "-0044-01-01T00:00", "-0044-12-31T23:59"});
    expectReads({"0000", "0000-01-01T00:00", "0000-12-31T23:59"});
    expectReads({"0000-02-29", "0000-02-29T00:00", "0000-02-29T23:59"});
    expectReads({"-004X", "-0049-01-01T00:00", "-0040-12-31T23:59"});
    expectReads({"0000?", "-0001-01-01T00:00", "0001-12-31T23:59"});
    expectReads({"-0044-03-15", "-0044-03-15T00:00", "-0044-03-15T23:59"});
}

TEST(Edtf, WidensQualifiedDatesAcrossEndsOfMonthsAndYears) {
    expectReads({"2024-01-01?", "2023-12-31T00:00", "2024-01-02T23:59"});
    expectReads({"2024-02-28~", "2024-02-27T00:00", "2024-02-29T23:59"});
    expectReads({"2024-01~", "2023-12-01T00:00", "2024-02-29T23:59"});
    expectReads({"2025-12%", "2025-11-01T00:00", "2026-01-31T23:59"});
    expectReads({"201X~", "2000-01-01T00:00", "2029-12-31T23:59"});
    expectReads({"19XX?", "1800-01-01T00:00", "2099-12-31T23:59"});
    expectReads({"2001-22?", "2000-10-01T00:00", "2002-05-31T23:59"});
}

TEST(Edtf, ReadsClockTimesAsTheStudiosOwn) {
    expectReads({"2026-03-04T09:30", "2026-03-04T09:30", "2026-03-04T09:30"});
    expectReads({"2026-03-04T00:00", "2026-03-04T00:00", "2026-03-04T00:00"});
    expectReads({"2026-03-04T23:59:59", "2026-03-04T23:59", "2026-03-04T23:59"});
    expectReads({"2026-03-04T09:30/2026-03-04T11:15", "2026-03-04T09:30", "2026-03-04T11:15"});
}

TEST(Edtf, TellsTheShiftThatWasWritten) {
    const auto shift = [](const char* text) {
        return EdtfDate::parse(text).utcOffset_min().value_or(9999);
    };
    EXPECT_EQ(shift("2026-03-04T09:30Z"), 0);
    EXPECT_EQ(shift("2026-03-04T09:30+01"), 60);
    EXPECT_EQ(shift("2026-03-04T09:30+05:45"), 345);
    EXPECT_EQ(shift("2026-03-04T09:30-03:30"), -210);
    EXPECT_EQ(shift("2026-03-04T09:30:00+14"), 840);
    EXPECT_EQ(shift("2026-03-04T09:30"), 9999);
    EXPECT_EQ(shift("2026-03-04"), 9999);
    EXPECT_EQ(shift("2026-03-04T09:30+01/.."), 9999);
}

TEST(Edtf, TellsHowWellADateIsKnown) {
    const auto badlyKnown = [](const char* text) { return EdtfDate::parse(text).isBadlyKnown(); };
    EXPECT_FALSE(badlyKnown("2026-03-04"));
    EXPECT_FALSE(badlyKnown("2026-03-04T09:30"));
    EXPECT_TRUE(badlyKnown("2026-03-04?"));
    EXPECT_TRUE(badlyKnown("2026-03"));
    EXPECT_TRUE(badlyKnown("2026-03-04/.."));
    EXPECT_TRUE(EdtfDate::parse("2026~").isQualified());
    EXPECT_TRUE(EdtfDate::parse("2026%/2027").isQualified());
    EXPECT_FALSE(EdtfDate::parse("2026/2027").isQualified());
    EXPECT_TRUE(EdtfDate::parse("2026/2027").isInterval());
    EXPECT_FALSE(EdtfDate::parse("2026").isInterval());
    EXPECT_TRUE(EdtfDate::parse("2026-03-04T09:30").hasTime());
    EXPECT_FALSE(EdtfDate::parse("2026-03-04").hasTime());
}

TEST(Edtf, OrdersOnlyWhatEveryReadingOrders) {
    const auto before = [](const char* a, const char* b) {
        return certainlyBefore(EdtfDate::parse(a), EdtfDate::parse(b));
    };
    EXPECT_TRUE(before("2025", "2026"));
    EXPECT_FALSE(before("2025", "2025-06"));
    EXPECT_FALSE(before("2025-06", "2025"));
    EXPECT_FALSE(before("2025?", "2026"));
    EXPECT_TRUE(before("2026-03-04T09:29", "2026-03-04T09:30"));
    EXPECT_FALSE(before("2026-03-04T09:30", "2026-03-04T09:30"));
    EXPECT_FALSE(before("2025/..", "2026"));
    EXPECT_TRUE(before("../2024", "2025/.."));
}

TEST(Edtf, MakesDatesFromMinutes) {
    const CivilMinute minute = daysFromCivil({2026, 3, 4}) * minutesPerDay + 9 * 60 + 30;
    const EdtfDate day = EdtfDate::ofDay(minute);
    EXPECT_EQ(day.text(), "2026-03-04");
    EXPECT_EQ(day.earliest(), EdtfDate::parse("2026-03-04").earliest());
    EXPECT_EQ(day.latest(), EdtfDate::parse("2026-03-04").latest());
    const EdtfDate moment = EdtfDate::ofMinute(minute);
    EXPECT_EQ(moment.text(), "2026-03-04T09:30");
    EXPECT_EQ(moment.earliest(), minute);
    EXPECT_EQ(moment.latest(), minute);
    EXPECT_EQ(EdtfDate::ofMinute(-1).text(), "1969-12-31T23:59");
    EXPECT_EQ(EdtfDate::restored("2026~", 1, 2).latest(), 2);
}

struct Refusal {
    const char* text;
    const char* why;
};

class EdtfRefusals : public testing::TestWithParam<Refusal> {};

TEST_P(EdtfRefusals, SayWhichPartIsWrong) {
    const std::string wanted =
        "/at: \"" + std::string(GetParam().text) + "\" is not a date: " + GetParam().why +
        ". Write it as 1998, 2004-06, 2004-06-23, 2004-06-23T09:30, with ? or ~ where it is "
        "uncertain, or as an interval such as 2019/.. or 2003/2005.";
    EXPECT_EQ(messageOf<InputError>([&] { EdtfDate::parse(GetParam().text, "/at"); }), wanted);
}

INSTANTIATE_TEST_SUITE_P(
    Edtf, EdtfRefusals,
    testing::Values(
        Refusal{"", "nothing is written"}, Refusal{"?", "nothing is written"},
        Refusal{"85", "the year needs four digits"}, Refusal{"198a", "the year needs four digits"},
        Refusal{"-98", "the year needs four digits"},
        Refusal{" 1985", "the year needs four digits"},
        Refusal{"XXXX-12", "the year needs four digits"},
        Refusal{"201X-04", "the year needs four digits"},
        Refusal{"-0000", "there is no year -0000"},
        Refusal{"1XXX", "X may stand only for the last one or two digits of a year"},
        Refusal{"1X85", "X may stand only for the last one or two digits of a year"},
        Refusal{"XXXX", "X may stand only for the last one or two digits of a year"},
        Refusal{"Y1985", "a year after Y has five to nine digits"},
        Refusal{"Y1234567890", "a year after Y has five to nine digits"},
        Refusal{"Y", "a year after Y has five to nine digits"},
        Refusal{"Y17e7x", "a year after Y has five to nine digits"},
        Refusal{"Y01985", "a year after Y does not begin with 0"},
        Refusal{"1985-4", "month and day are two digits each, with hyphens between"},
        Refusal{"1985/04-1", "the year needs four digits"},
        Refusal{"1985-4-12", "month and day are two digits each, with hyphens between"},
        Refusal{"19850412", "month and day are two digits each, with hyphens between"},
        Refusal{"1985-04 12", "a clock time follows its day after a T, without a space"},
        Refusal{"1985-04-12 09:30", "a clock time follows its day after a T, without a space"},
        Refusal{"1985-04-12-", "month and day are two digits each, with hyphens between"},
        Refusal{"1985-XX-12", "a day cannot be known where its month is not"},
        Refusal{"1985-1X", "the month is not a number"},
        Refusal{"1985-ab-01", "the month is not a number"},
        Refusal{"1985-00", "there is no month 00"}, Refusal{"1985-13", "there is no month 13"},
        Refusal{"1985-20", "there is no month 20"}, Refusal{"1985-25", "there is no month 25"},
        Refusal{"1985-21-01", "there is no month 21"},
        Refusal{"1985-04-1X", "the day is not a number"},
        Refusal{"1985-04-00", "that month has no day 00"},
        Refusal{"1985-04-31", "that month has no day 31"},
        Refusal{"1900-02-29", "that month has no day 29"},
        Refusal{"2023-02-29", "that month has no day 29"},
        Refusal{"1985-04-12T09:30?", "a clock time takes no ?, ~ or %"},
        Refusal{"1985T09:30", "a clock time needs a whole date before it"},
        Refusal{"1985-04T09:30", "a clock time needs a whole date before it"},
        Refusal{"1985-04-XXT09:30", "a clock time needs a whole date before it"},
        Refusal{"1985-04-12T", "a clock time reads 09:30 or 09:30:00"},
        Refusal{"1985-04-12T9:30", "a clock time reads 09:30 or 09:30:00"},
        Refusal{"1985-04-12T0930", "a clock time reads 09:30 or 09:30:00"},
        Refusal{"1985-04-12T09:30:5", "a clock time reads 09:30 or 09:30:00"},
        Refusal{"1985-04-12T09:30:00.5", "a clock time reads 09:30 or 09:30:00"},
        Refusal{"1985-04-12T24:00", "there is no such clock time"},
        Refusal{"1985-04-12T09:60", "there is no such clock time"},
        Refusal{"1985-04-12T09:30:60", "there is no such clock time"},
        Refusal{"1985-04-12T09:30+1", "the zone shift reads Z, +01 or +01:00, at most 14 hours"},
        Refusal{"1985-04-12T09:30+0100", "the zone shift reads Z, +01 or +01:00, at most 14 hours"},
        Refusal{"1985-04-12T09:30+15", "the zone shift reads Z, +01 or +01:00, at most 14 hours"},
        Refusal{"1985-04-12T09:30+14:30",
                "the zone shift reads Z, +01 or +01:00, at most 14 hours"},
        Refusal{"1985-04-12T09:30-01:60",
                "the zone shift reads Z, +01 or +01:00, at most 14 hours"},
        Refusal{"2003/2004/2005", "an interval has one /"},
        Refusal{"/", "an interval with neither end says nothing"},
        Refusal{"../..", "an interval with neither end says nothing"},
        Refusal{"/..", "an interval with neither end says nothing"},
        Refusal{"2005/2004", "the interval ends before it begins"},
        Refusal{"2004-06-12/2004-06-11", "the interval ends before it begins"}));

TEST(Edtf, RefusesTextLongerThanAnyDate) {
    const std::string text(61, '1');
    EXPECT_EQ(messageOf<InputError>([&] { EdtfDate::parse(text); }),
              "\"" + std::string(60, '1') +
                  "…\" is not a date: it is longer than any date. Write it as 1998, 2004-06, "
                  "2004-06-23, 2004-06-23T09:30, with ? or ~ where it is uncertain, or as an "
                  "interval such as 2019/.. or 2003/2005.");
}

TEST(Edtf, AcceptsIntervalsWhoseEndsOverlap) {
    expectReads({"2004-06/2004", "2004-06-01T00:00", "2004-12-31T23:59"});
    expectReads({"2004/2004", "2004-01-01T00:00", "2004-12-31T23:59"});
}

}  // namespace
}  // namespace rackbook
