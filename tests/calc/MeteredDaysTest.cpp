#include "calc/MeteredDays.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "SkyFixture.h"
#include "base/Clock.h"
#include "calc/DaylightDose.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::utc;

constexpr double day_min = 1440;

CivilMinute plainClock(std::int64_t utc_min) {
    return utc_min;
}

WallClockAt clockOf(const std::string& timeZone) {
    return [timeZone](std::int64_t utc_min) { return civilMinuteAt(utc_min * 60, timeZone); };
}

std::vector<MeteredMoment> constantLight(double from_min, double until_min, double step_min,
                                         double value) {
    std::vector<MeteredMoment> moments;
    for (double at = from_min; at <= until_min; at += step_min)
        moments.push_back({at, value});
    return moments;
}

struct Totals {
    double exposure_h = 0;
    double covered_h = 0;
};

Totals totalsOf(const std::vector<MeteredDay>& days) {
    Totals totals;
    for (const MeteredDay& day : days) {
        totals.exposure_h += day.exposure_h;
        totals.covered_h += day.covered_h;
    }
    return totals;
}

// Moments at random steps, about one in ten of them longer than 60 min; whole minutes or not.
std::vector<MeteredMoment> anyLight(std::mt19937& random) {
    std::uniform_real_distribution<double> any(0, 1);
    std::vector<MeteredMoment> moments;
    const bool isWhole = any(random) < 0.5;
    double at = 2e7 + 1e6 * any(random);
    for (int i = 0; i < 400; ++i) {
        at += any(random) < 0.1 ? 61 + 3000 * any(random) : 1 + 59 * any(random);
        if (isWhole)
            at = std::floor(at);
        moments.push_back({at, 1e4 * any(random)});
    }
    return moments;
}

TEST(MeteredDays, OfConstantLightAreLightTimesHours) {
    const double from = utc("2026-05-01T00:00:00Z").minutes;
    const std::vector<MeteredDay> days =
        meteredDaysOf(constantLight(from + 90, from + 3 * day_min - 30, 7.5, 250), 10, plainClock);
    ASSERT_EQ(days.size(), 3u);
    EXPECT_EQ(days[0].day, daysFromCivil({2026, 5, 1}));
    EXPECT_NEAR(days[0].exposure_h, 250 * 22.5, 1e-9);
    EXPECT_NEAR(days[0].covered_h, 22.5, 1e-12);
    EXPECT_EQ(days[0].firstSeen_utc_min, from + 90);
    EXPECT_EQ(days[0].lastSeen_utc_min, from + day_min);
    EXPECT_NEAR(days[1].exposure_h, 250 * 24, 1e-9);
    EXPECT_EQ(days[1].firstSeen_utc_min, from + day_min);
    EXPECT_NEAR(days[2].covered_h, 23.5, 1e-12);
    EXPECT_EQ(days[2].lastSeen_utc_min, from + 3 * day_min - 30);
}

// Summer time in Denmark, by the IANA time zone database: from 2026-03-29 to 2026-10-25.
TEST(MeteredDays, Have23Or25HoursWhereClocksChange) {
    const WallClockAt clock = clockOf("Europe/Copenhagen");
    for (const auto& [from, day, hours] :
         {std::tuple("2026-03-27T23:00:00Z", CivilDate{2026, 3, 29}, 23),
          std::tuple("2026-10-23T22:00:00Z", CivilDate{2026, 10, 25}, 25)}) {
        const double at = utc(from).minutes;
        const std::vector<MeteredDay> days =
            meteredDaysOf(constantLight(at, at + 4 * day_min, 10, 40), 10, clock);
        // 96 hours reach into a fifth day where one of the four has only 23.
        ASSERT_EQ(days.size(), hours == 23 ? 5u : 4u);
        EXPECT_EQ(days[1].day, daysFromCivil(day));
        EXPECT_NEAR(days[0].covered_h, 24, 1e-12);
        EXPECT_NEAR(days[1].covered_h, hours, 1e-12);
        EXPECT_NEAR(days[1].exposure_h, 40 * hours, 1e-9);
        EXPECT_NEAR(days[2].covered_h, 24, 1e-12);
    }
}

// Clocks of quarter hours, and of moments that fall on no minute.
TEST(MeteredDays, PartStepsAtMidnightOfTheWallClock) {
    const double midnight = utc("2026-05-01T18:15:00Z").minutes;  // Nepal, UTC+05:45
    const std::vector<MeteredDay> days = meteredDaysOf(
        {{midnight - 20, 100}, {midnight + 40.5, 221}}, 61, clockOf("Asia/Kathmandu"));
    ASSERT_EQ(days.size(), 2u);
    EXPECT_EQ(days[1].day, daysFromCivil({2026, 5, 2}));
    EXPECT_NEAR(days[0].covered_h, 20.0 / 60, 1e-12);
    EXPECT_NEAR(days[0].exposure_h, (100 + 140) / 2.0 * 20 / 60, 1e-9);  // 2 lx a minute
    EXPECT_NEAR(days[1].exposure_h, (140 + 221) / 2.0 * 40.5 / 60, 1e-9);
}

TEST(MeteredDays, PartAStepOverManyDays) {
    const double from = utc("2026-05-01T12:00:00Z").minutes;
    const std::vector<MeteredDay> days =
        meteredDaysOf({{from, 10}, {from + 3 * day_min, 10}}, 3 * day_min, plainClock);
    ASSERT_EQ(days.size(), 4u);
    EXPECT_NEAR(days[0].exposure_h, 120, 1e-9);
    EXPECT_NEAR(days[2].exposure_h, 240, 1e-9);
    EXPECT_NEAR(days[3].exposure_h, 120, 1e-9);
}

TEST(MeteredDays, SumUpToTheIntegralOfTheWhole) {
    std::mt19937 random(11);
    for (const char* zone : {"Europe/Copenhagen", "Australia/Lord_Howe", "America/Havana"})
        for (int round = 0; round < 10; ++round) {
            const std::vector<MeteredMoment> moments = anyLight(random);
            double exposure_h = 0;
            double covered_h = 0;
            for (std::size_t i = 1; i < moments.size(); ++i) {
                const double hours = (moments[i].utc_min - moments[i - 1].utc_min) / 60;
                if (hours > 1)
                    continue;
                exposure_h += hours * (moments[i].value + moments[i - 1].value) / 2;
                covered_h += hours;
            }
            const std::vector<MeteredDay> days = meteredDaysOf(moments, 60, clockOf(zone));
            const Totals totals = totalsOf(days);
            EXPECT_NEAR(totals.exposure_h, exposure_h, 1e-9 * exposure_h);
            EXPECT_NEAR(totals.covered_h, covered_h, 1e-9 * covered_h);
            for (std::size_t i = 0; i < days.size(); ++i) {
                EXPECT_TRUE(i == 0 || days[i].day > days[i - 1].day);
                EXPECT_GE(days[i].lastSeen_utc_min, days[i].firstSeen_utc_min);
                EXPECT_LE(days[i].covered_h,
                          (days[i].lastSeen_utc_min - days[i].firstSeen_utc_min) / 60 + 1e-9);
                EXPECT_LE(days[i].covered_h, 25 + 1e-9);
            }
        }
}

// Constant light with any moments taken out: the light for each hour seen stays the same.
TEST(MeteredDays, LoseTimeAndNothingElseByGaps) {
    std::mt19937 random(12);
    std::uniform_real_distribution<double> any(0, 1);
    const double from = utc("2026-10-20T00:00:00Z").minutes;
    const std::vector<MeteredMoment> whole = constantLight(from, from + 9 * day_min, 10, 75);
    for (int round = 0; round < 20; ++round) {
        std::vector<MeteredMoment> holed;
        for (const MeteredMoment& moment : whole)
            if (any(random) < 0.7)
                holed.push_back(moment);
        double seen_h = 0;
        for (std::size_t i = 1; i < holed.size(); ++i)
            if (holed[i].utc_min - holed[i - 1].utc_min <= 20)
                seen_h += (holed[i].utc_min - holed[i - 1].utc_min) / 60;
        const std::vector<MeteredDay> days = meteredDaysOf(holed, 20, clockOf("Europe/Copenhagen"));
        for (const MeteredDay& day : days)
            EXPECT_NEAR(day.exposure_h, 75 * day.covered_h, 1e-9);
        EXPECT_NEAR(totalsOf(days).covered_h, seen_h, 1e-9);
        EXPECT_LT(seen_h, 9 * 24);
    }
}

TEST(MeteredDays, NameDaysOfWhichOneMomentWasSeen) {
    const double from = utc("2026-05-01T12:00:00Z").minutes;
    const std::vector<MeteredDay> days = meteredDaysOf(
        {{from, 500}, {from + 2 * day_min, 500}, {from + 2 * day_min + 5, 500}}, 30, plainClock);
    ASSERT_EQ(days.size(), 2u);
    EXPECT_EQ(days[0].exposure_h, 0);
    EXPECT_EQ(days[0].covered_h, 0);
    EXPECT_EQ(days[0].firstSeen_utc_min, from);
    EXPECT_EQ(days[0].lastSeen_utc_min, from);
    EXPECT_NEAR(days[1].covered_h, 5.0 / 60, 1e-12);
    EXPECT_TRUE(meteredDaysOf({}, 30, plainClock).empty());
    // A log that ends at midnight has nothing of the next day.
    const double midnight = utc("2026-05-02T00:00:00Z").minutes;
    EXPECT_EQ(meteredDaysOf({{midnight - 5, 1}, {midnight, 1}}, 30, plainClock).size(), 1u);
}

// The trapezoid rule on a half wave of n steps of angle h gives h·cot(h/2), by the sum of sines of
// equal steps (a textbook identity, from memory); the integral itself is 2.
TEST(MeteredDays, OfAHalfWaveAreTheTrapezoidRules) {
    constexpr double pi = 3.14159265358979323846;
    for (const int n : {4, 12, 72}) {
        std::vector<MeteredMoment> moments;
        for (int i = 0; i <= n; ++i)
            moments.push_back({360 + 720.0 / n * i, std::max(0.0, std::sin(pi * i / n))});
        const double h = pi / n;
        const double wanted = h / std::tan(h / 2) * 12 / pi;  // twelve hours are π
        EXPECT_NEAR(meteredDaysOf(moments, 180, plainClock).at(0).exposure_h, wanted, 1e-12);
    }
}

// Clear skies read every ten minutes, against the dose that is computed with Simpson's rule.
TEST(MeteredDays, AgreeWithTheDoseOfAClearSky) {
    const GeoPoint place{55.7, 12.6};
    const WallClockAt clock = clockOf("Europe/Copenhagen");
    const UtcTime from = utc("2026-03-27T23:00:00Z");  // three midnights of Danish clocks follow
    std::vector<MeteredMoment> moments;
    for (double at = from.minutes; at <= from.minutes + 3 * day_min - 60; at += 10) {
        const SkyLight light = skyLightOf(sunAt(place, {at}), Oktas::exactly(0));
        moments.push_back({at, light.global_Wm2.best});
    }
    const std::vector<MeteredDay> days = meteredDaysOf(moments, 10, clock);
    ASSERT_EQ(days.size(), 3u);
    double begin = from.minutes;
    for (const MeteredDay& day : days) {
        const double hours = day.day == daysFromCivil({2026, 3, 29}) ? 23 : 24;
        const DaylightDose dose =
            doseOnLevel(place, {begin}, {begin + hours * 60}, Oktas::exactly(0));
        EXPECT_NEAR(day.covered_h, hours, 1e-9);
        EXPECT_NEAR(day.exposure_h, dose.irradiation_Whm2.best, 5e-4 * day.exposure_h);
        EXPECT_GT(day.exposure_h, 3000);
        begin += hours * 60;
    }
}

TEST(MeteredDays, RefuseWhatCannotBe) {
    const double unknown = std::numeric_limits<double>::quiet_NaN();
    const double endless = std::numeric_limits<double>::infinity();
    const auto refusal = [](const std::vector<MeteredMoment>& moments, double step_min) {
        return test::messageOf<InputError>([&] { meteredDaysOf(moments, step_min, plainClock); });
    };
    EXPECT_EQ(refusal({}, 0), "metered light: the largest step is 0 min. Give one above 0.");
    EXPECT_NE(refusal({}, unknown), "(nothing was thrown)");
    EXPECT_NE(refusal({}, endless), "(nothing was thrown)");
    EXPECT_EQ(refusal({{5, 1}, {5, 1}}, 1),
              "metered light: moment 2 is not later than the one before it. Give them in order.");
    EXPECT_EQ(refusal({{5, -0.5}}, 1),
              "metered light: moment 1 has the value -0.5. Give 0 or more.");
    EXPECT_NE(refusal({{5, unknown}}, 1), "(nothing was thrown)");
    EXPECT_NE(refusal({{5, endless}}, 1), "(nothing was thrown)");
    for (const double at : {unknown, endless, 1e300})
        EXPECT_EQ(refusal({{at, 1}}, 1),
                  "metered light: moment 1 has no time that could be. Give minutes since 1970.");
}

}  // namespace
}  // namespace rackbook
