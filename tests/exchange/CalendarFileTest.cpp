#include "exchange/CalendarFile.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "base/CivilTime.h"
#include "base/Text.h"
#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/RunShell.h"

namespace rackbook {
namespace {

const CalendarStamp stamp{"-//Rackbook//Rackbook 0.1.0//EN",
                          1'772'613'005};  // 2026-03-04T08:30:05Z

std::int64_t day(int year, int month, int dayOfMonth) {
    return daysFromCivil({year, month, dayOfMonth});
}

CalendarEntry entry(const std::string& uid, std::int64_t on, const std::string& summary = "Look") {
    CalendarEntry made;
    made.uid = uid;
    made.day = on;
    made.summary = summary;
    return made;
}

// What python3-icalendar, which is Debian's own, reads; a missing reader fails the test.
nlohmann::json readByAnother(const std::string& text) {
    const test::ShellResult run =
        test::runOn(text, "/usr/bin/python3 " +
                              test::sourcePath("tests/exchange/read-calendar.py") + " \"$FILE\"");
    EXPECT_EQ(run.exitCode, 0) << run.output;
    return nlohmann::json::parse(run.output);
}

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t at = 0;
    for (std::size_t end; (end = text.find("\r\n", at)) != std::string::npos; at = end + 2)
        lines.push_back(text.substr(at, end - at));
    EXPECT_EQ(at, text.size()) << "the last line has no CRLF";
    return lines;
}

// As in RFC 5545, 3.1: no line of more than 75 octets, and none that is cut within a character.
void expectFolded(const std::string& text) {
    for (const std::string& line : linesOf(text)) {
        EXPECT_LE(line.size(), 75u) << line;
        EXPECT_EQ(line.find_first_of("\r\n"), std::string::npos) << line;
        EXPECT_FALSE(invalidUtf8At(line)) << line;
    }
}

std::string refusalOf(const CalendarEntry& one) {
    return test::messageOf<InputError>([&] { calendarText({one}, stamp); });
}

TEST(CalendarFile, IsWrittenToTheByte) {
    CalendarEntry look =
        entry("look-EEL-3", day(2026, 4, 1), "Look at layer 3, EEL:1-12; then wait");
    look.description = "Nine prints\nin the north rack\\nine";
    look.reminds = true;
    CalendarEntry rest = entry("rest-EEL-4", day(2026, 12, 30), "Layer 4 rests");
    rest.lastDay = day(2026, 12, 31);
    EXPECT_EQ(calendarText({rest, look}, stamp),
              "BEGIN:VCALENDAR\r\n"
              "VERSION:2.0\r\n"
              "PRODID:-//Rackbook//Rackbook 0.1.0//EN\r\n"
              "BEGIN:VEVENT\r\n"
              "UID:look-EEL-3\r\n"
              "DTSTAMP:20260304T083005Z\r\n"
              "DTSTART;VALUE=DATE:20260401\r\n"
              "DTEND;VALUE=DATE:20260402\r\n"
              "SUMMARY:Look at layer 3\\, EEL:1-12\\; then wait\r\n"
              "DESCRIPTION:Nine prints\\nin the north rack\\\\nine\r\n"
              "TRANSP:TRANSPARENT\r\n"
              "BEGIN:VALARM\r\n"
              "ACTION:DISPLAY\r\n"
              "DESCRIPTION:Look at layer 3\\, EEL:1-12\\; then wait\r\n"
              "TRIGGER:PT9H\r\n"
              "END:VALARM\r\n"
              "END:VEVENT\r\n"
              "BEGIN:VEVENT\r\n"
              "UID:rest-EEL-4\r\n"
              "DTSTAMP:20260304T083005Z\r\n"
              "DTSTART;VALUE=DATE:20261230\r\n"
              "DTEND;VALUE=DATE:20270101\r\n"
              "SUMMARY:Layer 4 rests\r\n"
              "TRANSP:TRANSPARENT\r\n"
              "END:VEVENT\r\n"
              "END:VCALENDAR\r\n");
}

// That reader takes a backslash before an n for a line break even where it is escaped, so there is
// none here.
TEST(CalendarFile, IsReadBackByAnotherReader) {
    CalendarEntry look =
        entry("a,b;c\\d@shed", day(2028, 2, 29), "Ære; 刷り, 2\nlines\\x \U0001F58B \"so\"");
    look.description = std::string("\ttab: x=1;y=\"2\"\n\n") + "end\\";
    look.reminds = true;
    CalendarEntry rest = entry("rest", day(2028, 3, 31));
    rest.lastDay = day(2028, 4, 2);
    const nlohmann::json read = readByAnother(calendarText({rest, look}, stamp));
    EXPECT_EQ(read["product"], stamp.productId);
    EXPECT_EQ(read["version"], "2.0");
    ASSERT_EQ(read["events"].size(), 2u);
    EXPECT_EQ(read["events"][0],
              nlohmann::json({{"uid", look.uid},
                              {"from", "2028-02-29"},
                              {"until", "2028-03-01"},
                              {"stamp", "2026-03-04T08:30:05+00:00"},
                              {"summary", look.summary},
                              {"description", look.description},
                              {"busy", "TRANSPARENT"},
                              {"alarms", {{"DISPLAY", look.summary, 9 * 3600.0}}},
                              {"errors", nlohmann::json::array()}}));
    EXPECT_EQ(read["events"][1]["until"], "2028-04-03");
    EXPECT_EQ(read["events"][1]["description"], "");
    EXPECT_EQ(read["events"][1]["alarms"], nlohmann::json::array());
}

// Every length of beginning moves the fold to another place in characters of 1 to 4 octets.
TEST(CalendarFile, FoldsLongTextsBetweenCharacters) {
    std::vector<CalendarEntry> entries;
    for (std::size_t before = 0; before < 160; ++before) {
        std::string text(before, 'x');
        for (int i = 0; i < 12; ++i)
            text += "é刷\U0001F58B\U0001F469\u200D\U0001F3A8 a,;\\\n";
        entries.push_back(entry("u" + std::to_string(1000 + before), day(2026, 5, 1), text + "."));
        entries.back().description = std::string(200 + before, 'y') + "ü";
    }
    const std::string text = calendarText(entries, stamp);
    expectFolded(text);
    const nlohmann::json read = readByAnother(text);
    ASSERT_EQ(read["events"].size(), entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i) {
        EXPECT_EQ(read["events"][i]["summary"], entries[i].summary);
        EXPECT_EQ(read["events"][i]["description"], entries[i].description);
    }
}

TEST(CalendarFile, IsTheSameWhateverTheOrderGiven) {
    const CalendarEntry a = entry("a", day(2026, 5, 2));
    const CalendarEntry b = entry("b", day(2026, 5, 2));
    const CalendarEntry c = entry("c", day(2026, 5, 1));
    EXPECT_EQ(calendarText({a, b, c}, stamp), calendarText({b, c, a}, stamp));
    const nlohmann::json read = readByAnother(calendarText({b, a, c}, stamp));
    EXPECT_EQ(read["events"][0]["uid"], "c");
    EXPECT_EQ(read["events"][1]["uid"], "a");
    EXPECT_EQ(read["events"][2]["uid"], "b");
}

TEST(CalendarFile, ReachesFromTheFirstYearToTheLast) {
    const std::string text = calendarText({entry("a", day(1, 1, 1)), entry("b", day(3000, 12, 30))},
                                          {stamp.productId, day(1, 1, 1) * 86'400});
    EXPECT_NE(text.find("\r\nDTSTART;VALUE=DATE:00010101\r\n"), std::string::npos);
    EXPECT_NE(text.find("\r\nDTEND;VALUE=DATE:30001231\r\n"), std::string::npos);
    EXPECT_NE(text.find("\r\nDTSTAMP:00010101T000000Z\r\n"), std::string::npos);
    EXPECT_NE(calendarText({entry("a", 0)}, {stamp.productId, -1})
                  .find("\r\nDTSTAMP:19691231T235959Z\r\n"),
              std::string::npos);
}

TEST(CalendarFile, RefusesEntriesThatCannotBe) {
    EXPECT_EQ(
        refusalOf(entry("", 0)),
        "calendar: an entry has no uid that could be read. Give each entry a uid of its own.");
    EXPECT_EQ(refusalOf(entry("a", 0, " \n")),
              "calendar entry a: the summary is blank. Say in it what is to be done.");
    EXPECT_EQ(refusalOf(entry("a\nb", 0)),
              "calendar entry a\\u000Ab: the uid holds a control character. Take it out.");
    EXPECT_EQ(refusalOf(entry("a", 0, "bell \a")),
              "calendar entry a: the summary holds a control character. Take it out.");
    EXPECT_EQ(refusalOf(entry("a", 0, std::string("x\0y", 3))),
              "calendar entry a: the summary holds a control character. Take it out.");
    EXPECT_EQ(refusalOf(entry("a", 0, "x\r\ny")),
              "calendar entry a: the summary holds a control character. Take it out.");
    EXPECT_EQ(refusalOf(entry("a", 0, "\xE9t\xE9")),
              "calendar entry a: the summary is not UTF-8. Give UTF-8.");
    CalendarEntry backwards = entry("a", day(2026, 3, 4));
    backwards.lastDay = day(2026, 3, 3);
    EXPECT_EQ(refusalOf(backwards),
              "calendar entry a: its last day 2026-03-03 is before its first, 2026-03-04. Exchange "
              "the two.");
    for (const std::int64_t far : {day(0, 12, 31), day(3000, 12, 31), INT64_MAX, INT64_MIN})
        EXPECT_EQ(refusalOf(entry("a", far)),
                  "calendar entry a: the day lies outside 0001-01-01 to 3000-12-30. Give a day "
                  "in the years 1 to 3000.");
}

TEST(CalendarFile, RefusesCalendarsThatCannotBe) {
    const auto refusal = [](const std::vector<CalendarEntry>& entries, const CalendarStamp& at) {
        return test::messageOf<InputError>([&] { calendarText(entries, at); });
    };
    EXPECT_EQ(refusal({}, stamp), "calendar: there are no entries. Write one when there are some.");
    EXPECT_EQ(refusal({entry("a", 0), entry("b", 0), entry("a", 1)}, stamp),
              "calendar entry a: two entries have this uid. Give each entry a uid of its own.");
    EXPECT_EQ(refusal({entry("a", 0)}, {" ", 0}), "calendar: the product is blank. Name it.");
    EXPECT_EQ(refusal({entry("a", 0)}, {"a\nb", 0}),
              "calendar: the product holds a control character. Take it out.");
    for (const std::int64_t far_s : {INT64_MAX, INT64_MIN})
        EXPECT_EQ(refusal({entry("a", 0)}, {"p", far_s}),
                  "calendar: the moment of writing lies outside the years 1 to 3000. Give seconds "
                  "since 1970.");
}

}  // namespace
}  // namespace rackbook
