// What the times of a log mean on the clock that wrote them.
#include <gtest/gtest.h>
#include <stdlib.h>
#include <time.h>

#include <cmath>

#include "LightLogText.h"
#include "base/CivilTime.h"

namespace rackbook {
namespace {

using namespace test;

double utc_min(int month, int day, int hour, int minute) {
    return static_cast<double>(daysFromCivil({2026, month, day}) * minutesPerDay + hour * 60 +
                               minute);
}

LightLogTerms danishWall() {
    return logTerms(LightUnit::lux, LogClock::onWall("Europe/Copenhagen"));
}

// A log of times on one day, each with its own value.
std::string logAt(const std::string& day, const std::vector<std::string>& times) {
    std::string text = "time,lx\n";
    int value = 0;
    for (const std::string& time : times)
        text += day + " " + time + "," + std::to_string(++value) + "\n";
    return text;
}

std::vector<double> momentsOf(const std::string& text, const LightLogTerms& terms) {
    std::vector<double> moments;
    for (const LightSample& sample : logOf(text, terms).samples)
        moments.push_back(sample.utc_min);
    return moments;
}

TEST(LightLogClock, MayStandAtAFixedShift) {
    const std::string text = logAt("2026-07-01", {"09:30", "09:40:30"});
    EXPECT_EQ(momentsOf(text, logTerms(LightUnit::lux, LogClock::atShift(60))),
              std::vector<double>({utc_min(7, 1, 8, 30), utc_min(7, 1, 8, 40) + 0.5}));
    EXPECT_EQ(momentsOf(text, logTerms(LightUnit::lux, LogClock::atShift(-570)))[0],
              utc_min(7, 1, 19, 0));
    EXPECT_EQ(messageOf<InputError>([] { LogClock::atShift(1081); }),
              "clock of the logger: the shift from UTC is 1081 min. Give -1080 to 1080.");
}

TEST(LightLogClock, MayBeWrittenBehindEachTime) {
    const LightLogTerms written = logTerms(LightUnit::lux, LogClock::asWritten());
    EXPECT_EQ(momentsOf("time,lx\n2026-10-25T02:50+02:00,1\n2026-10-25T02:00+01:00,2\n"
                        "2026-10-25T01:10Z,3\n",
                        written),
              std::vector<double>(
                  {utc_min(10, 25, 0, 50), utc_min(10, 25, 1, 0), utc_min(10, 25, 1, 10)}));
    EXPECT_EQ(refusalOfLog("time,lx\n2026-10-25T02:50+02:00,1\n2026-10-25T02:55,2\n", written),
              "log:3: the time has no shift from UTC (2026-10-25T02:55). Write one behind it, as "
              "+01:00 or Z, or say what clock it is.");
    EXPECT_EQ(refusalOfLog("time,lx\n2026-10-25T02:50Z,1\n", danishWall()),
              "log:2: the time has its own shift from UTC (2026-10-25T02:50Z). Say that times have "
              "their own, or take it out.");
}

// Denmark's clocks were put back from 03:00 to 02:00 on 25 October 2026, at 01:00 UTC.
TEST(LightLogClock, OnTheWallTellsTheHourThatCameTwiceByTheOrder) {
    const std::vector<double> moments =
        momentsOf(logAt("2026-10-25",
                        {"01:40", "02:00", "02:20", "02:40", "02:00", "02:20", "02:40", "03:00"}),
                  danishWall());
    for (std::size_t i = 0; i < 8; ++i)
        EXPECT_EQ(moments.at(i), utc_min(10, 24, 23, 40) + 20.0 * static_cast<double>(i));
    // An hourly log shows the same time twice.
    EXPECT_EQ(momentsOf(logAt("2026-10-25", {"00:30", "01:30", "02:30", "02:30", "03:30"}),
                        danishWall())[3],
              utc_min(10, 25, 1, 30));
    // Begun within the hour, or ended there: only one reading goes on evenly.
    EXPECT_EQ(momentsOf(logAt("2026-10-25", {"02:40", "02:50", "03:00", "03:10"}), danishWall())[0],
              utc_min(10, 25, 1, 40));
    EXPECT_EQ(momentsOf(logAt("2026-10-25", {"01:40", "01:50", "02:00", "02:10"}), danishWall())[3],
              utc_min(10, 25, 0, 10));
}

TEST(LightLogClock, OnTheWallRefusesWhatTheOrderDoesNotTell) {
    const auto refusal = [](const std::vector<std::string>& times) {
        return refusalOfLog(logAt("2026-10-25", times), danishWall());
    };
    const std::string remedy =
        " Give the log with times in UTC or with their shift, or leave these lines out.";
    EXPECT_EQ(
        refusal({"01:30", "02:30", "03:30", "04:30"}),
        "log:3: the clock was put back and showed this time twice, and the order of the lines "
        "does not tell which it is (2026-10-25 02:30)." +
            remedy);
    EXPECT_EQ(refusal({"01:40", "01:50", "02:00", "02:20", "02:10", "02:50", "02:00", "02:50"}),
              "log:4: the clock was put back and showed the times from here to line 9 twice, and "
              "the order of the lines does not tell which it is (2026-10-25 02:00)." +
                  remedy);
    // A log that lies within the hour as a whole.
    EXPECT_EQ(refusal({"02:10", "02:20"}),
              "log:2: the clock was put back and showed the times from here to line 3 twice, and "
              "the order of the lines does not tell which it is (2026-10-25 02:10)." +
                  remedy);
    // The clock was not read for the hour before it was put back, or for the one after.
    EXPECT_NE(refusal({"01:40", "01:50", "02:00", "02:10", "02:20", "02:30", "02:40", "02:50",
                       "03:00", "03:10"}),
              "(nothing was thrown)");
}

// Put forward from 02:00 to 03:00 on 29 March 2026, at 01:00 UTC.
TEST(LightLogClock, OnTheWallRefusesTheHourThatNeverWas) {
    EXPECT_EQ(
        momentsOf(logAt("2026-03-29", {"01:50", "03:00", "03:10"}), danishWall()),
        std::vector<double>({utc_min(3, 29, 0, 50), utc_min(3, 29, 1, 0), utc_min(3, 29, 1, 10)}));
    EXPECT_EQ(
        refusalOfLog(logAt("2026-03-29", {"01:50", "02:00", "02:59:59", "03:00"}), danishWall()),
        "log:3: the wall clock was put forward and never showed the times from here to line 4 "
        "(2026-03-29 02:00). Where the logger's clock has no summer time, say its shift from "
        "UTC.");
    EXPECT_EQ(
        refusalOfLog(logAt("2026-03-29", {"01:50", "02:30", "03:00"}), danishWall()),
        "log:3: the wall clock was put forward and never showed this time (2026-03-29 02:30). "
        "Where the logger's clock has no summer time, say its shift from UTC.");
    EXPECT_EQ(messageOf<InputError>([] {
                  logOf(logAt("2026-03-29", {"01:50"}),
                        logTerms(LightUnit::lux, LogClock::onWall("Shed/Bench")));
              }),
              "the system knows no time zone \"Shed/Bench\". Use an IANA name such as "
              "Europe/Copenhagen.");
}

// The C library has its own reader of the time zone database. A year of lines that it writes on
// the wall clock comes back as the moments that it was given.
class WallClocksOf : public testing::TestWithParam<std::pair<const char*, int>> {
protected:
    WallClocksOf() {
        setenv("TZ", GetParam().first, 1);
        tzset();
    }
    ~WallClocksOf() override {
        unsetenv("TZ");
        tzset();
    }
};

TEST_P(WallClocksOf, AYearComeBack) {
    const auto [zone, step_min] = GetParam();
    const auto first = static_cast<std::int64_t>(utc_min(1, 1, 0, 0));
    std::string text = "time,lx\n";
    std::vector<double> wanted;
    for (std::int64_t at = first; at < first + 366 * minutesPerDay; at += step_min) {
        const std::time_t moment = at * 60;
        std::tm parts{};
        localtime_r(&moment, &parts);
        char line[64];
        strftime(line, sizeof line, "%Y-%m-%d %H:%M,", &parts);
        text += line + std::to_string((at - first) % 100'003) + "\n";
        wanted.push_back(static_cast<double>(at));
    }
    const LightLog log = logOf(text, logTerms(LightUnit::lux, LogClock::onWall(zone)));
    ASSERT_EQ(log.samples.size(), wanted.size());
    for (std::size_t i = 0; i < wanted.size(); ++i)
        ASSERT_EQ(log.samples[i].utc_min, wanted[i]) << i;
    EXPECT_TRUE(log.gaps.empty());
}

INSTANTIATE_TEST_SUITE_P(
    Zones, WallClocksOf,
    testing::Values(std::pair("Europe/Copenhagen", 10), std::pair("Europe/Copenhagen", 60),
                    std::pair("Australia/Lord_Howe", 5), std::pair("America/Havana", 7),
                    std::pair("America/Santiago", 30), std::pair("Africa/Casablanca", 15),
                    std::pair("Asia/Kathmandu", 10)));

}  // namespace
}  // namespace rackbook
