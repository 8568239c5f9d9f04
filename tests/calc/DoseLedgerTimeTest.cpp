// Doses within days, of metered light, and of times without a beginning.
#include <gtest/gtest.h>

#include <cmath>

#include "LightFixture.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

constexpr double metered_Whm2 = 7;

class DoseLedgerTime : public testing::Test {
protected:
    DoseLedgerTime() : m_ultraviolet({55.7, 12.6}, usualSkies()) {}

    // 0 daylight, 1 dark, 2 nothing said of its light.
    PlaceRecords records() {
        PlaceRecords places =
            placesWith({daylightOf(2), lightOf(LightKind::dark)}, "Europe/Copenhagen");
        places.periods.emplace_back();
        return places;
    }

    DoseLedger ledger() { return DoseLedger(m_ultraviolet, records()); }

    // An instrument at place 0.
    DoseLedger meteredLedger(const std::string& from, const std::string& to, double seen = 1) {
        PlaceRecords places = records();
        MeteredSpan span;
        span.from = at(from);
        span.to = at(to);
        span.seen = seen;
        span.nearUltraviolet_Whm2 = metered_Whm2;
        places.metered = {{span}, {}, {}};
        return DoseLedger(m_ultraviolet, places);
    }

    static double best(DoseLedger ledger, const std::string& from, const std::string& to) {
        return ledger.at(0, at(from), at(to)).nearUltraviolet_Whm2.best;
    }

    PlaceUltraviolet m_ultraviolet;
};

// Copenhagen on 21 December: the sun is up from 8:37 to 15:38 (any almanac).
TEST_F(DoseLedgerTime, AWinterDayFromNineToFiveHasNearlyAllOfTheLight) {
    const double whole = best(ledger(), "2026-12-21", "2026-12-22");
    EXPECT_GT(whole, 0);
    EXPECT_GT(best(ledger(), "2026-12-21T09:00", "2026-12-21T17:00"), 0.98 * whole);
    EXPECT_EQ(best(ledger(), "2026-12-21T17:00", "2026-12-21T23:00"), 0);
    EXPECT_EQ(best(ledger(), "2026-12-21T00:00", "2026-12-21T07:00"), 0);
    // 12:08 is noon: half.
    EXPECT_NEAR(best(ledger(), "2026-12-21T09:00", "2026-12-21T12:08"), 0.5 * whole, 0.03 * whole);
}

// In summer the clocks stand an hour farther from the sun: noon is at 13:12 on 21 June.
TEST_F(DoseLedgerTime, KnowsSummerTime) {
    const double whole = best(ledger(), "2026-06-21", "2026-06-22");
    EXPECT_NEAR(best(ledger(), "2026-06-21T00:00", "2026-06-21T13:12"), 0.5 * whole, 0.02 * whole);
}

// Samoa's clocks stand a day ahead of the sun that shines on it: UTC+13 at 171.8° W (IANA time zone
// database), noon at 12:27 plus the equation of time.
TEST(DoseLedgerFarEast, TakesTheSunThatShinesOnTheStudiosDay) {
    PlaceUltraviolet ultraviolet({-13.8, -171.8}, usualSkies());
    DoseLedger ledger(ultraviolet, placesWith({daylightOf(2)}, "Pacific/Apia"));
    const auto best = [&](const char* from, const char* to) {
        return ledger.at(0, at(from), at(to)).nearUltraviolet_Whm2.best;
    };
    const double whole = best("2026-06-13", "2026-06-14");
    EXPECT_NEAR(best("2026-06-13T06:00", "2026-06-13T19:00"), whole, 0.01 * whole);
    EXPECT_NEAR(best("2026-06-13T00:00", "2026-06-13T12:27"), 0.5 * whole, 0.02 * whole);
}

TEST_F(DoseLedgerTime, WhatWasMeteredGoesBeforeTheEstimate) {
    DoseLedger metered = meteredLedger("2026-06-10T00:00", "2026-06-11T00:00");
    const Estimate day = metered.at(0, at("2026-06-10"), at("2026-06-11")).nearUltraviolet_Whm2;
    EXPECT_NEAR(day.best, metered_Whm2, 1e-6);
    // The instrument's own errors, and no more.
    EXPECT_NEAR(day.low, 0.8 * metered_Whm2, 1e-6);
    EXPECT_NEAR(day.high, 1.2 * metered_Whm2, 1e-6);
    EXPECT_TRUE(metered.wasMetered(0, dayOf(at("2026-06-10"))));
    EXPECT_FALSE(metered.wasMetered(0, dayOf(at("2026-06-11"))));
    EXPECT_FALSE(metered.wasMetered(1, dayOf(at("2026-06-10"))));
    // The days around it are as without it.
    EXPECT_NEAR(metered.at(0, at("2026-06-08"), at("2026-06-13")).nearUltraviolet_Whm2.best,
                metered_Whm2 + best(ledger(), "2026-06-08", "2026-06-10") +
                    best(ledger(), "2026-06-11", "2026-06-13"),
                1e-6);
}

TEST_F(DoseLedgerTime, WhatWasNotMeteredOfADayIsEstimated) {
    const double day = best(ledger(), "2026-06-10", "2026-06-11");
    const double morning = best(ledger(), "2026-06-10T00:00", "2026-06-10T13:00");
    EXPECT_NEAR(
        best(meteredLedger("2026-06-10T00:00", "2026-06-10T13:00"), "2026-06-10", "2026-06-11"),
        metered_Whm2 + day - morning, 1e-6);
    // An instrument that saw a quarter of its time leaves three for the estimate.
    EXPECT_NEAR(best(meteredLedger("2026-06-10T00:00", "2026-06-11T00:00", 0.25), "2026-06-10",
                     "2026-06-11"),
                metered_Whm2 + 0.75 * day, 1e-6);
    // By night there is nothing to estimate.
    EXPECT_NEAR(
        best(meteredLedger("2026-06-10T02:00", "2026-06-10T23:30"), "2026-06-10", "2026-06-11"),
        metered_Whm2, 0.001 * day);
}

TEST_F(DoseLedgerTime, AMeteringOverMidnightIsPartedByTime) {
    DoseLedger metered = meteredLedger("2026-06-10T18:00", "2026-06-11T18:00");
    const double both = metered.at(0, at("2026-06-10"), at("2026-06-12")).nearUltraviolet_Whm2.best;
    const double estimated = best(ledger(), "2026-06-10T00:00", "2026-06-10T18:00") +
                             best(ledger(), "2026-06-11T18:00", "2026-06-12T00:00");
    EXPECT_NEAR(both, metered_Whm2 + estimated, 0.01 * both);
}

// Lux hours of daylight: by hand, 1000 lx·h at 0.3 mW a lumen.
TEST_F(DoseLedgerTime, LuxHoursAreTakenByWhatLitThePlace) {
    PlaceRecords places = records();
    MeteredSpan span;
    span.from = at("2026-06-10");
    span.to = at("2026-06-11");
    span.exposure_lxh = 1000;
    places.metered = {{span}, {span}, {}};
    DoseLedger metered(m_ultraviolet, places);
    EXPECT_NEAR(metered.at(0, span.from, span.to).nearUltraviolet_Whm2.best, 0.3, 1e-6);
    // Also where the place is said to be dark.
    EXPECT_NEAR(metered.at(1, span.from, span.to).nearUltraviolet_Whm2.best, 0.3, 1e-6);
    EXPECT_EQ(metered.at(1, span.to, span.to + minutesPerDay).nearUltraviolet_Whm2.best, 0);
}

TEST_F(DoseLedgerTime, OfPlacesThatNobodyKnowsThereIsNoBestValue) {
    DoseLedger doses = ledger();
    for (const int place : {-1, 2}) {
        const LightDose dose = doses.at(place, at("2026-06-10T08:00"), at("2026-06-20T08:00"));
        EXPECT_EQ(dose.sunnyDays.low, 0);
        EXPECT_FALSE(dose.sunnyDays.isKnown());
        EXPECT_FALSE(dose.nearUltraviolet_Whm2.isKnown());
        EXPECT_GT(dose.sunnyDays.high, 1);
        EXPECT_TRUE(std::isfinite(dose.sunnyDays.high));
        // Within one day too.
        EXPECT_FALSE(
            doses.at(place, at("2026-06-10T08:00"), at("2026-06-10T18:00")).sunnyDays.isKnown());
    }
}

TEST_F(DoseLedgerTime, ABeginningThatIsOpenLeavesTheHighBoundOpen) {
    DoseLedger doses = ledger();
    const CivilMinute until = at("2026-06-20T08:00");
    for (const int place : {-1, 0, 2}) {
        const LightDose dose = doses.at(place, beginningOfTime, until);
        EXPECT_TRUE(std::isinf(dose.sunnyDays.high)) << place;
        EXPECT_TRUE(std::isinf(dose.nearUltraviolet_Whm2.high)) << place;
        EXPECT_TRUE(std::isfinite(dose.sunnyDays.low)) << place;
    }
    EXPECT_EQ(doses.at(1, beginningOfTime, until).sunnyDays.high, 0);
    // A pull of which only the end is known, in a place ever since.
    const DoseSince since =
        doses.since({stayAt(0, {beginningOfTime, until - minutesPerDay}, {endOfTime, endOfTime})},
                    {beginningOfTime, until - 3 * minutesPerDay}, until);
    EXPECT_TRUE(std::isinf(since.dose.sunnyDays.high));
    EXPECT_NEAR(since.dose.sunnyDays.low, doses.at(0, until - minutesPerDay, until).sunnyDays.low,
                1e-9);
}

TEST_F(DoseLedgerTime, TakesTheLightThatThePlaceHadOnTheDay) {
    PlaceRecords places = records();
    places.periods[0].push_back({at("2026-06-10"), lightOf(LightKind::dark)});
    DoseLedger doses(m_ultraviolet, places);
    EXPECT_EQ(doses.lightAt(0, dayOf(at("2026-06-09")))->lightKind, LightKind::daylight);
    EXPECT_EQ(doses.lightAt(0, dayOf(at("2026-06-10")))->lightKind, LightKind::dark);
    EXPECT_FALSE(doses.lightAt(-1, 0));
    EXPECT_FALSE(doses.lightAt(2, 0));
    EXPECT_EQ(doses.at(0, at("2026-06-10"), at("2026-07-10")).sunnyDays.high, 0);
    EXPECT_NEAR(doses.at(0, at("2026-06-01"), at("2026-07-10")).nearUltraviolet_Whm2.best,
                best(ledger(), "2026-06-01", "2026-06-10"), 1e-9);
}

// Two instruments side by side saw the same light.
TEST_F(DoseLedgerTime, CountsNoMinuteTwiceWhereTwoInstrumentsHung) {
    PlaceRecords places = records();
    MeteredSpan ultraviolet;
    ultraviolet.from = at("2026-06-21T08:00");
    ultraviolet.to = at("2026-06-21T16:00");
    ultraviolet.nearUltraviolet_Whm2 = metered_Whm2;
    MeteredSpan light = ultraviolet;
    light.nearUltraviolet_Whm2.reset();
    light.exposure_lxh = 8000;
    places.metered = {{ultraviolet}, {}, {}};
    const double alone = best(DoseLedger(m_ultraviolet, places), "2026-06-21", "2026-06-22");
    places.metered = {{light, ultraviolet, ultraviolet}, {}, {}};
    EXPECT_NEAR(best(DoseLedger(m_ultraviolet, places), "2026-06-21", "2026-06-22"), alone, 1e-9);
}

// By hand: 24 h of lamps that were metered throughout leave nothing to the estimate.
TEST_F(DoseLedgerTime, TakesAWholeMeteredDayForWhole) {
    const double whole =
        best(meteredLedger("2026-06-21", "2026-06-22"), "2026-06-21", "2026-06-22");
    EXPECT_NEAR(whole, metered_Whm2, 1e-9);
}

}  // namespace
}  // namespace rackbook
