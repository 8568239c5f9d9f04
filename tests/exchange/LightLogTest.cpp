#include "exchange/LightLog.h"

#include <gtest/gtest.h>

#include "LightLogText.h"
#include "base/CivilTime.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using namespace test;

double utc_min(int hour, int minute) {
    return static_cast<double>(daysFromCivil({2026, 3, 4}) * minutesPerDay + hour * 60 + minute);
}

std::string time(int hour, int minute) {
    return formatMinute(static_cast<CivilMinute>(utc_min(hour, minute)));
}

std::string noteOf(const LightLog& log, std::size_t i) {
    return i < log.notes.size() ? describe(log.notes[i]) : "(no such note)";
}

TEST(LightLog, TakesNamedColumnsBelowOtherLines) {
    const LightLog log = logOf(
        "\xEF\xBB\xBFLogger: north rack, 5\" probe\r\nBattery;92 %\r\n\r\n"
        "No;When; Light ;Note;\r\n1;2026-03-04 09:00;12,5;;\r\n2;2026-03-04 "
        "09:10:30;1250;\"a;b\";\r\n"
        "\r\n",
        termsOfColumns("When", "Light"));
    ASSERT_EQ(log.samples.size(), 2u);
    EXPECT_EQ(log.samples[0].utc_min, utc_min(9, 0));
    EXPECT_EQ(log.samples[0].value, 12.5);
    EXPECT_EQ(log.samples[1].utc_min, utc_min(9, 10) + 0.5);
    EXPECT_EQ(log.samples[1].value, 1250);
    EXPECT_EQ(log.quantity, LightQuantity::illuminance_lx);
    EXPECT_EQ(log.usualStep_min, 10.5);
    EXPECT_TRUE(log.notes.empty());
}

TEST(LightLog, TurnsUnitsIntoLuxOrWattsOnASquareMetre) {
    const auto valueOf = [](const std::string& heading, LightUnit unit) {
        return logOf("time\t" + heading + "\n2026-03-04 09:00\t45.5\n", logTerms(unit))
            .samples.at(0)
            .value;
    };
    EXPECT_EQ(valueOf("Illuminance [klx]", LightUnit::kilolux), 45'500);
    EXPECT_EQ(valueOf("UV-A (\u00B5W/cm\u00B2)", LightUnit::microwattPerCm2), 0.455);
    EXPECT_EQ(valueOf("UV-A mW/m2", LightUnit::milliwattPerM2), 0.0455);
    EXPECT_EQ(valueOf("UV-A W/m\u00B2", LightUnit::wattPerM2), 45.5);
    EXPECT_EQ(valueOf("light", LightUnit::lux), 45.5);
}

TEST(LightLog, ChoosesColumnsWhereOnlyOneCouldBeThem) {
    const LightLog byUnit =
        logOf("No,Time,Temperature,Light lx,UV uW/cm2\n1,2026-03-04 09:00,19.5,250,11\n");
    EXPECT_EQ(byUnit.samples.at(0).value, 250);
    EXPECT_EQ(byUnit.columns.value, "Light lx");
    EXPECT_EQ(noteOf(byUnit, 0),
              "log:1: times were read from \"Time\" and values from \"Light lx\", the only column "
              "that is headed with lx. Name the columns where that is wrong.");
    const LightLog apart = logOf("a heading\nDay;Hour;E;Place\n2026-03-04;09:30;250,5;rack\n");
    EXPECT_EQ(apart.samples.at(0).value, 250.5);
    EXPECT_EQ(apart.samples.at(0).utc_min, utc_min(9, 30));
    EXPECT_EQ(apart.columns.date, "Day");
    EXPECT_EQ(noteOf(apart, 0),
              "log:2: times were read from \"Day\" and \"Hour\" and values from \"E\", the only "
              "column that holds numbers. Name the columns where that is wrong.");
    // A time above the table, and a note with another mark between fields in it.
    EXPECT_EQ(logOf("rack,north\nbegun,2026-03-04 09:00\n\ntime,E,note\n"
                    "2026-03-04 09:30,7,a;b\n2026-03-04 09:40,8,c\n")
                  .samples.at(0)
                  .value,
              7);
    LightLogTerms american = logTerms();
    american.dateOrder = DateOrder::monthDayYear;
    EXPECT_EQ(logOf("time,E\n03/04/2026 9:30:00 AM,1\n", american).samples.at(0).utc_min,
              utc_min(9, 30));
}

TEST(LightLog, ListsColumnsThatItCannotChooseFrom) {
    const auto refusal = [](const std::string& text) {
        return messageOf<InputError>([&] { logOf(text); });
    };
    EXPECT_EQ(refusal("No,time,E\n1,2026-03-04 09:30,250\n"),
              "log:1: more than one column holds numbers; the columns are \"No\", \"time\" and "
              "\"E\". Name the columns of time and value.");
    EXPECT_EQ(refusal("time,lx,lux\n2026-03-04 09:30,250,251\n"),
              "log:1: more than one column is headed with lx; the columns are \"time\", \"lx\" and "
              "\"lux\". Name the columns of time and value.");
    EXPECT_EQ(refusal("from,to,E\n2026-03-04 09:30,2026-03-04 09:40,250\n"),
              "log:1: more than one column holds times; the columns are \"from\", \"to\" and "
              "\"E\". Name the columns of time and value.");
    EXPECT_EQ(
        refusal("time,E\n2026-03-04 09:30,bright\n"),
        "log:1: no column holds numbers; the columns are \"time\" and \"E\". Name the columns "
        "of time and value.");
    // Day and month are never guessed.
    EXPECT_EQ(refusal("time,E\n13.03.2026 09:30,250\n"),
              "log:2: \"13.03.2026 09:30\" is not written as 2026-03-04 is. Say how dates are "
              "written, with --date-order day-month-year.");
    EXPECT_EQ(refusal("rack,A\ntime,E\n03/06/2025 09:30,250\n04/06/2025 09:30,250\n"),
              "log:3: \"03/06/2025 09:30\" is not written as 2026-03-04 is. Say how dates are "
              "written, with --date-order day-month-year or --date-order month-day-year.");
    EXPECT_EQ(refusal("day,time,E\n06/03/2025,09:30,250\n06/13/2025,09:30,250\n"),
              "log:2: \"06/03/2025\" is not written as 2026-03-04 is. Say how dates are written, "
              "with --date-order month-day-year.");
    LightLogTerms american = logTerms();
    american.dateOrder = DateOrder::monthDayYear;
    EXPECT_EQ(refusalOfLog("time,E\n2026-03-04 09:30,250\n", american),
              "log:2: \"2026-03-04 09:30\" is not written as 03/04/2026 is. Say how dates are "
              "written, with --date-order year-month-day.");
    EXPECT_EQ(refusal("time,E\nnoon,250\n"),
              "log: no line with a time such as 2026-03-04 09:30 follows a line of headings. Name "
              "the columns of time and value (--time, --value, --date), and say how dates are "
              "written (--date-order).");
}

TEST(LightLog, ListsColumnsWhereOneThatIsNamedIsMissing) {
    EXPECT_EQ(
        refusalOfLog("a log\ntime,E,E\n2026-03-04 09:30,250,1\n", termsOfColumns("time", "lx")),
        "log:2: no column is named \"lx\"; the columns are \"time\", \"E\" and \"E\". Name a "
        "column as it is headed, once.");
    EXPECT_EQ(refusalOfLog("time,E,E\n2026-03-04 09:30,250,1\n", termsOfColumns("time", "E")),
              "log:1: more than one column is named \"E\"; the columns are \"time\", \"E\" and "
              "\"E\". Name a column as it is headed, once.");
    EXPECT_EQ(refusalOfLog("one line", termsOfColumns("time", "E")),
              "log:1: no column is named \"time\"; the columns are \"one line\". Name a column as "
              "it is headed, once.");
}

TEST(LightLog, TellsGaps) {
    std::string text = "time,lx\n";
    for (const int minute : {0, 10, 20, 30, 60, 70, 101, 110})
        text += time(9, minute) + ",250\n";
    const LightLog log = logOf(text + "2026-03-06T10:00,250\n");
    EXPECT_EQ(log.usualStep_min, 10);
    ASSERT_EQ(log.gaps.size(), 2u);  // 30 min is not more than three steps
    EXPECT_EQ(log.gaps[0].from_utc_min, utc_min(10, 10));
    EXPECT_EQ(log.gaps[0].until_utc_min, utc_min(10, 41));
    EXPECT_EQ(noteOf(log, 1),
              "log:8: nothing was logged from 2026-03-04T10:10 to 2026-03-04T10:41, 31 min; the "
              "usual step is 10 min. The light of that time is not known.");
    EXPECT_EQ(noteOf(log, 2),
              "log:10: nothing was logged from 2026-03-04T10:50 to 2026-03-06T10:00, 1 d 23 h 10 "
              "min; the usual step is 10 min. The light of that time is not known.");
}

TEST(LightLog, CountsRepeatedLinesOnce) {
    const LightLog log = logOf("time,lx\n" + time(9, 0) + ",1\n" + time(9, 0) + ",1.0\n" +
                               time(9, 10) + ",2\n" + time(9, 10) + ",2\n" + time(9, 10) + ",2\n");
    EXPECT_EQ(log.samples.size(), 2u);
    EXPECT_EQ(log.repeatedLines, 3u);
    EXPECT_EQ(noteOf(log, 1),
              "log: 3 lines have the time and value of the line before. Such lines count once.");
}

TEST(LightLog, NotesALogInWhichHardlyAnythingShines) {
    const LightLog log = logOf("time,E\n" + time(9, 0) + ",0\n" + time(9, 10) + ",0.85\n");
    EXPECT_EQ(
        noteOf(log, 1),
        "log: no value goes above 0.85 lx. Where the place is not dark, check that the log is "
        "in lx.");
    EXPECT_EQ(logOf("time,E\n" + time(9, 0) + ",1\n").notes.size(), 1u);
}

TEST(LightLog, RefusesUnitsThatTheHeadingContradicts) {
    const std::string text = "time,UV (\u00B5W/cm\u00B2)\n" + time(9, 0) + ",25\n";
    EXPECT_EQ(refusalOfLog(text),
              "log:1 column \"UV (\u00B5W/cm\u00B2)\": the heading names another unit than lx. Say "
              "the unit that the log is in.");
    EXPECT_NE(refusalOfLog(text, logTerms(LightUnit::milliwattPerM2)), "(nothing was thrown)");
    EXPECT_EQ(refusalOfLog(text, logTerms(LightUnit::microwattPerCm2)), "(nothing was thrown)");
    // Not guessed between units either, where the columns are named.
    LightLogTerms named = termsOfColumns("time", "E klx");
    EXPECT_NE(refusalOfLog("time,E klx\n" + time(9, 0) + ",25\n", named), "(nothing was thrown)");
}

TEST(LightLog, RefusesLightThatCannotBe) {
    const auto refusal = [](const std::string& value, LightUnit unit) {
        return refusalOfLog("time,E\n" + time(9, 0) + ",1\n" + time(9, 10) + "," + value + "\n",
                            logTerms(unit));
    };
    EXPECT_EQ(refusal("200000", LightUnit::lux), "(nothing was thrown)");
    EXPECT_EQ(refusal("200001", LightUnit::lux),
              "log:3 column \"E\": the light is 200001 lx; full sun stays below 200000 lx. Check "
              "that the log is in lx; where it is, take out what the logger cannot have seen.");
    EXPECT_EQ(refusal("12000", LightUnit::microwattPerCm2), "(nothing was thrown)");
    EXPECT_EQ(
        refusal("150", LightUnit::wattPerM2),
        "log:3 column \"E\": the light is 150 W/m\u00B2; full sun stays below 120 W/m\u00B2. "
        "Check that the log is in W/m\u00B2; where it is, take out what the logger cannot have "
        "seen.");
    EXPECT_NE(refusal("1e308", LightUnit::kilolux), "(nothing was thrown)");
}

TEST(LightLog, RefusesTimesThatAreStillToCome) {
    LightLogTerms terms = logTerms(LightUnit::lux, LogClock::atShift(60));
    const std::string text = "time,E\n" + time(9, 9) + ",1\n" + time(9, 10) + ",1\n" + time(9, 11) +
                             ",1\n" + time(9, 12) + ",1\n";
    EXPECT_EQ(refusalOfLog(text, terms), "(nothing was thrown)");
    const std::int64_t nine_min = daysFromCivil({2026, 3, 4}) * minutesPerDay + 9 * 60;
    terms.present = LogPresent{nine_min - 60 + 10, "2026-03-04T09:10 at the studio"};
    EXPECT_EQ(refusalOfLog(text, terms),
              "log:4: this time is still to come, and so it is in 2 lines in all (" + time(9, 11) +
                  "). It is 2026-03-04T09:10 at the studio: check the clock and the order of dates "
                  "(--clock, --date-order); where they hold, take out what the logger cannot have "
                  "seen yet.");
    terms.present->utc_min += 1;
    EXPECT_NE(refusalOfLog(text, terms).find("log:5: this time is still to come ("),
              std::string::npos);
    terms.present->utc_min += 1;
    EXPECT_EQ(refusalOfLog(text, terms), "(nothing was thrown)");
}

// Of all that shines on a logger about a twentieth is UV-A.
TEST(LightLog, NotesWattsThatDoNotSayTheyAreUltraviolet) {
    const auto notes = [](const std::string& heading, LightUnit unit) {
        return logOf("time," + heading + "\n" + time(9, 0) + ",25\n", logTerms(unit)).notes.size();
    };
    const LightLog log =
        logOf("time,Irr (W/m2)\n" + time(9, 0) + ",25\n", logTerms(LightUnit::wattPerM2));
    ASSERT_EQ(log.notes.size(), 2u);
    EXPECT_EQ(describe(log.notes[1]),
              "log:1 column \"Irr (W/m2)\": the heading does not say that this is ultraviolet; all "
              "of sunlight has some 20 times as much. Take it only where the logger measures UV-A "
              "(315 to 400 nm).");
    EXPECT_EQ(notes("UVA W/m2", LightUnit::wattPerM2), 1u);
    EXPECT_EQ(notes("Ultraviolett W/m2", LightUnit::wattPerM2), 1u);
    EXPECT_EQ(notes("E lx", LightUnit::lux), 1u);
}

TEST(LightLog, CountsWhatIsWrongBeyondTwentyThings) {
    std::string text = "time,lx\n";
    for (int i = 0; i < 50; ++i)
        text += time(9, i) + ",dark\n";
    LightLogTerms named = termsOfColumns("time", "lx");
    const std::string words = refusalOfLog(text, named);
    EXPECT_EQ(std::count(words.begin(), words.end(), '\n'), 20);
    EXPECT_EQ(words.substr(words.rfind('\n') + 1), "log: 30 more findings are not shown.");
}

// Cut anywhere, a log is read or refused with words, and nothing else happens.
TEST(LightLog, MayBeCutAnywhere) {
    const std::string text =
        "rack\n\"time\";\"E lx\";x\r\n2026-03-04 09:00;12,5;\"a\"\"b\n c\"\r\n"
        "2026-03-04 09:10;1\u00B5;\r\n";
    for (std::size_t length = 0; length <= text.size(); ++length) {
        const std::string words = refusalOfLog(text.substr(0, length));
        EXPECT_EQ(words.find("another kind of failure"), std::string::npos) << words;
    }
}

TEST(LightLog, IsReadFromAFile) {
    const TempFolder folder;
    putFile(folder.file("rack.csv"), "time,lx\n2026-03-04 09:00,250\n");
    EXPECT_EQ(readLightLog(folder.file("rack.csv"), logTerms()).samples.size(), 1u);
    EXPECT_THROW(readLightLog(folder.file("none.csv"), logTerms()), InputError);
    EXPECT_EQ(refusalOfLog("time,lx\n" + std::string(16 << 20, '1')),
              "log: the file is larger than 16 MB. Split it.");
}

}  // namespace
}  // namespace rackbook
