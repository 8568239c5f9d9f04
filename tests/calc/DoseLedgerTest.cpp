#include "calc/DoseLedger.h"

#include <gtest/gtest.h>

#include <cmath>

#include "base/CivilTime.h"

namespace rackbook {
namespace {

// Places: 0 by lamps, which give the same on every day; 1 dark; 2 not said.
class DoseLedgerTest : public testing::Test {
protected:
    DoseLedgerTest()
        : m_periods(lightPeriodsOf({placeOf("lamps", LightKind::artificial, 1000),
                                    placeOf("dark", LightKind::dark), named("open")})),
          m_ultraviolet({56, 10}, usualSkies()),
          m_ledger(m_ultraviolet, PlaceRecords{m_periods, {}, {}}) {}

    static Skies usualSkies() {
        Skies skies;
        skies.usual = {0.3, 0.35};
        return skies;
    }

    static Place named(const std::string& id) {
        Place place;
        place.id = id;
        return place;
    }

    static Place placeOf(const std::string& id, LightKind kind,
                         std::optional<double> illuminance_lx = std::nullopt) {
        Place place = named(id);
        Light light;
        light.lightKind = kind;
        light.illuminance_lx = illuminance_lx;
        place.light.push_back(light);
        return place;
    }

    static CivilMinute dayOn(int month, int day) {
        return daysFromCivil({2026, month, day}) * minutesPerDay;
    }

    static TimeSpan moment(CivilMinute minute) { return {minute, minute}; }

    static Stay stayAt(int place, const TimeSpan& from, const TimeSpan& to) {
        Stay stay;
        stay.place = place;
        stay.from = from;
        stay.to = to;
        stay.followed = true;
        return stay;
    }

    // 1000 lx for 8 h at 0.02 mW a lumen: 0.16 Wh/m² a day.
    static constexpr double aDay_Whm2 = 0.16;

    std::vector<std::vector<LightPeriod>> m_periods;
    PlaceUltraviolet m_ultraviolet;
    DoseLedger m_ledger;
};

TEST_F(DoseLedgerTest, AddsUpDays) {
    const Estimate ten = m_ledger.at(0, dayOn(3, 1), dayOn(3, 11)).nearUltraviolet_Whm2;
    EXPECT_NEAR(ten.best, 10 * aDay_Whm2, 1e-9);
    const Estimate first = m_ledger.at(0, dayOn(3, 1), dayOn(3, 4) + 600).nearUltraviolet_Whm2;
    const Estimate rest = m_ledger.at(0, dayOn(3, 4) + 600, dayOn(3, 11)).nearUltraviolet_Whm2;
    EXPECT_NEAR(first.best + rest.best, ten.best, 1e-9);
    EXPECT_EQ(m_ledger.at(0, dayOn(3, 5), dayOn(3, 1)).nearUltraviolet_Whm2.best, 0);
}

TEST_F(DoseLedgerTest, CountsFromThePullThroughEveryStay) {
    const std::vector<Stay> stays = {stayAt(0, moment(dayOn(3, 1)), moment(dayOn(3, 5))),
                                     stayAt(1, moment(dayOn(3, 5)), moment(dayOn(3, 9))),
                                     stayAt(0, moment(dayOn(3, 9)), {endOfTime, endOfTime})};
    const DoseSince all = m_ledger.since(stays, moment(dayOn(3, 2)), dayOn(3, 12));
    EXPECT_NEAR(all.dose.nearUltraviolet_Whm2.best, (3 + 3) * aDay_Whm2, 1e-9);
    ASSERT_EQ(all.stays.size(), 3u);
    EXPECT_EQ(all.stays[1].dose.nearUltraviolet_Whm2.high, 0);
    EXPECT_EQ(all.stays[0].from.earliest, dayOn(3, 2));
    EXPECT_EQ(all.stays[2].to.latest, dayOn(3, 12));
    // Nothing after the day that is asked for, nothing of stays before the pull.
    EXPECT_NEAR(
        m_ledger.since(stays, moment(dayOn(3, 2)), dayOn(3, 4)).dose.nearUltraviolet_Whm2.best,
        2 * aDay_Whm2, 1e-9);
    EXPECT_EQ(m_ledger.since(stays, moment(dayOn(3, 10)), dayOn(3, 12)).stays.size(), 1u);
}

TEST_F(DoseLedgerTest, GivesNothingToAFaceThatIsCovered) {
    Stay stay = stayAt(0, moment(dayOn(3, 1)), {endOfTime, endOfTime});
    stay.interleaved = true;
    const DoseSince all = m_ledger.since({stay}, moment(dayOn(3, 1)), dayOn(3, 12));
    EXPECT_EQ(all.dose.nearUltraviolet_Whm2.high, 0);
    EXPECT_TRUE(all.stays.front().interleaved);
}

TEST_F(DoseLedgerTest, WidensForBadlyKnownDates) {
    const TimeSpan march{dayOn(3, 1), dayOn(3, 11)};
    const std::vector<Stay> stays = {stayAt(1, moment(dayOn(2, 1)), march),
                                     stayAt(0, march, {endOfTime, endOfTime})};
    const Estimate dose =
        m_ledger.since(stays, moment(dayOn(2, 1)), dayOn(3, 21)).dose.nearUltraviolet_Whm2;
    EXPECT_NEAR(dose.best, 15 * aDay_Whm2, 1e-9);
    // 20 days at the most, and lamps of up to 14 h at 0.08 mW a lumen, which have nothing to do
    // with one another.
    const double up = std::exp(std::hypot(std::log(14.0 / 8), std::log(0.08 / 0.02)));
    EXPECT_NEAR(dose.high, 20 * aDay_Whm2 * up, 1e-9);
    EXPECT_EQ(dose.low, 0);
}

// Before the first move, and at places of which nothing is said, it may have been anywhere.
TEST_F(DoseLedgerTest, KnowsNoBestValueWhereItMayHaveBeenAnywhere) {
    const std::vector<Stay> late = {stayAt(0, moment(dayOn(3, 5)), {endOfTime, endOfTime})};
    const DoseSince all = m_ledger.since(late, moment(dayOn(3, 1)), dayOn(3, 10));
    EXPECT_FALSE(all.dose.nearUltraviolet_Whm2.isKnown());
    ASSERT_EQ(all.stays.size(), 2u);
    EXPECT_EQ(all.stays.front().place, -1);
    const std::vector<Stay> open = {stayAt(2, moment(dayOn(3, 1)), {endOfTime, endOfTime})};
    EXPECT_FALSE(m_ledger.since(open, moment(dayOn(3, 1)), dayOn(3, 10))
                     .dose.nearUltraviolet_Whm2.isKnown());
    const DoseSince none = m_ledger.since({}, moment(dayOn(3, 1)), dayOn(3, 10));
    EXPECT_FALSE(none.dose.nearUltraviolet_Whm2.isKnown());
    EXPECT_EQ(none.dose.nearUltraviolet_Whm2.low, 0);
}

TEST_F(DoseLedgerTest, TakesALateMoveForUndecided) {
    Stay stay = stayAt(0, moment(dayOn(3, 1)), moment(dayOn(3, 11)));
    stay.undecided = true;
    const Estimate dose =
        m_ledger.since({stay}, moment(dayOn(3, 1)), dayOn(3, 11)).dose.nearUltraviolet_Whm2;
    EXPECT_EQ(dose.low, 0);
    EXPECT_FALSE(dose.isKnown());
    EXPECT_GT(dose.high, 0);
}

}  // namespace
}  // namespace rackbook
