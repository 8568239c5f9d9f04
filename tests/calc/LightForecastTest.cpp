#include "calc/LightForecast.h"

#include <gtest/gtest.h>

#include <random>

#include "LightFixture.h"
#include "calc/Readiness.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

// A studio with places of rising daylight factors and a dark one, which knows only house rules.
class LightForecastTest : public testing::Test {
protected:
    explicit LightForecastTest(const GeoPoint& studio = {56, 10},
                               const std::string& timeZone = "Europe/Copenhagen")
        : m_ultraviolet(studio, usualSkies()),
          m_ledger(m_ultraviolet, placesWith({lightOf(LightKind::dark), daylightOf(0.5),
                                              daylightOf(1), daylightOf(2), daylightOf(4),
                                              daylightOf(8), lightOf(LightKind::outdoors)},
                                             timeZone)),
          m_wanted(History{}, m_inks, HouseRules(), {}),
          m_model{m_ledger, m_wanted, m_inks} {
        m_row.asksDose = true;
        m_row.wanted = &m_wanted.groups().front();
    }

    LightForecast forecast(int place, const std::string& from) {
        return forecastAt(m_model, m_row, place, at(from), {0.1, 0.8});
    }
    // Days until half of such prints have their colour back.
    std::int64_t days(int place, const std::string& from) {
        return forecast(place, from).likely.value() - dayOf(at(from));
    }

    static constexpr int dark = 0;
    static constexpr int twoPercent = 3;
    static constexpr int outdoors = 6;
    PlaceUltraviolet m_ultraviolet;
    DoseLedger m_ledger;
    std::vector<PullInk> m_inks;
    LightWanted m_wanted;
    LightModel m_model;
    ReadinessRow m_row;
};

class LightForecastInTheSouth : public LightForecastTest {
protected:
    LightForecastInTheSouth() : LightForecastTest({-35, 139}, "Australia/Adelaide") {}
};

TEST_F(LightForecastTest, WantsVisiblyMoreDaysInDecemberThanInJune) {
    EXPECT_GT(days(twoPercent, "2026-12-01"), 2 * days(twoPercent, "2026-06-01"));
    EXPECT_GT(days(outdoors, "2026-12-01"), 2 * days(outdoors, "2026-06-01"));
}

TEST_F(LightForecastInTheSouth, WantsMoreDaysInJuneThanInDecember) {
    EXPECT_GT(2 * days(twoPercent, "2026-06-01"), 3 * days(twoPercent, "2026-12-01"));
}

TEST_F(LightForecastTest, ComesInTheOrderOfItsChances) {
    std::mt19937 random(11);
    std::uniform_int_distribution<int> anyDay(0, 364);
    std::uniform_int_distribution<int> anyPlace(1, outdoors);
    std::uniform_real_distribution<double> any(0, 1);
    const auto before = [](const std::optional<std::int64_t>& a,
                           const std::optional<std::int64_t>& b) { return !b || (a && *a <= *b); };
    for (int round = 0; round < 60; ++round) {
        const CivilMinute from = at("2026-01-01T09:00") + anyDay(random) * minutesPerDay;
        const double had = any(random);
        m_row.dose.sunnyDays = {0.4 * had, had, 3 * had};
        m_row.daysNeeded = 21 * any(random);
        m_row.daysHigh = 21 * any(random);
        m_row.daysLow = m_row.daysHigh * any(random);
        const double early = any(random);
        const double late = early + (1 - early) * any(random);
        const LightForecast got = forecastAt(m_model, m_row, anyPlace(random), from, {early, late});
        EXPECT_TRUE(before(got.early, got.likely)) << round;
        EXPECT_TRUE(before(got.likely, got.late)) << round;
        EXPECT_GE(got.early.value_or(dayOf(from)), dayOf(from));
    }
}

TEST_F(LightForecastTest, IsNeverLaterWhereThereIsMoreDaylight) {
    for (const char* from : {"2026-01-15", "2026-04-01", "2026-07-01", "2026-11-01"})
        for (int place = 2; place <= 5; ++place) {
            const LightForecast less = forecast(place - 1, from);
            const LightForecast more = forecast(place, from);
            const auto notLater = [](const std::optional<std::int64_t>& a,
                                     const std::optional<std::int64_t>& b) {
                return !b || (a && *a <= *b);
            };
            EXPECT_TRUE(notLater(more.early, less.early)) << from << " " << place;
            EXPECT_TRUE(notLater(more.likely, less.likely)) << from << " " << place;
            EXPECT_TRUE(notLater(more.late, less.late)) << from << " " << place;
        }
}

TEST_F(LightForecastTest, NeverComesInTheDark) {
    const LightForecast forecast_ = forecast(dark, "2026-06-01");
    EXPECT_FALSE(forecast_.early);
    EXPECT_FALSE(forecast_.likely);
    EXPECT_FALSE(forecast_.late);
}

// The dose of the forecast's day is enough, that of the day before is not.
TEST_F(LightForecastTest, IsTheFirstDayThatHasTheChance) {
    const CivilMinute from = at("2026-09-10T15:30");
    const std::optional<std::int64_t> likely = forecast(twoPercent, "2026-09-10T15:30").likely;
    ASSERT_TRUE(likely);
    const std::int64_t days = *likely - dayOf(from);
    const auto chanceAfter = [&](std::int64_t some) {
        return LightWanted::chanceBy(
            *m_row.wanted, m_ledger.at(twoPercent, from, from + some * minutesPerDay).sunnyDays);
    };
    EXPECT_GE(chanceAfter(days), 0.5);
    EXPECT_LT(chanceAfter(days - 1), 0.5);
}

// By hand: 21 days less 3 that have been.
TEST_F(LightForecastTest, WaitsForTheDaysThatAreMissing) {
    m_row.dose.sunnyDays = Estimate::exactly(500);
    m_row.daysNeeded = 21;
    m_row.daysLow = 3;
    m_row.daysHigh = 3.5;
    const std::int64_t today = dayOf(at("2026-06-01"));
    const LightForecast got = forecast(twoPercent, "2026-06-01T12:00");
    EXPECT_EQ(got.early, today + 18);
    EXPECT_EQ(got.likely, today + 18);
    EXPECT_EQ(got.late, today + 18);
    m_row.daysHigh = 5;
    EXPECT_EQ(forecast(twoPercent, "2026-06-01T12:00").early, today + 16);
    m_row.daysLow = m_row.daysHigh = 30;
    EXPECT_EQ(forecast(twoPercent, "2026-06-01T12:00").late, today);
    // Not where the dose is enough but its days would take more than two years.
    m_row.daysNeeded = 1000;
    EXPECT_FALSE(forecast(twoPercent, "2026-06-01T12:00").late);
}

TEST_F(LightForecastTest, IsNoneWithoutADose) {
    m_row.dose.sunnyDays = {0, notKnown, 3};
    EXPECT_FALSE(forecast(outdoors, "2026-06-01").early);
    m_row.dose = {};
    m_row.asksDose = false;
    EXPECT_FALSE(forecast(outdoors, "2026-06-01").early);
}

}  // namespace
}  // namespace rackbook
