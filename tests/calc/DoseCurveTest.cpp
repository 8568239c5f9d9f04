#include "calc/DoseCurve.h"

#include <gtest/gtest.h>

#include "LightFixture.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

class DoseCurveTest : public testing::Test {
protected:
    DoseCurveTest()
        : m_ultraviolet({56, 10}, usualSkies()),
          m_ledger(m_ultraviolet, placesWith({daylightOf(2), lightOf(LightKind::dark)}, "UTC")),
          m_stays({stayAt(0, exactly(pulled), exactly(pulled + 20 * minutesPerDay)),
                   stayAt(1, exactly(pulled + 20 * minutesPerDay), {endOfTime, endOfTime})}) {}

    const CivilMinute pulled = at("2026-05-01T10:00");
    PlaceUltraviolet m_ultraviolet;
    DoseLedger m_ledger;
    std::vector<Stay> m_stays;
};

TEST_F(DoseCurveTest, RisesFromNothingToTheDoseThatItHas) {
    const CivilMinute asOf = pulled + 30 * minutesPerDay + 100;
    const std::vector<DosePoint> points =
        doseCurveOf(m_ledger, m_stays, exactly(pulled), asOf, 100);
    ASSERT_EQ(points.size(), 32u);
    EXPECT_EQ(points.front().at, pulled);
    EXPECT_EQ(points.front().dose.sunnyDays.high, 0);
    EXPECT_EQ(points.back().at, asOf);
    EXPECT_NEAR(points.back().dose.sunnyDays.best,
                m_ledger.sumSince(m_stays, exactly(pulled), asOf).sunnyDays.best, 1e-12);
    for (std::size_t i = 1; i < points.size(); ++i) {
        EXPECT_GT(points[i].at, points[i - 1].at);
        EXPECT_GE(points[i].dose.sunnyDays.best, points[i - 1].dose.sunnyDays.best);
    }
    // Nothing comes in the dark.
    EXPECT_NEAR(points[20].dose.sunnyDays.best, points[31].dose.sunnyDays.best, 1e-12);
}

TEST_F(DoseCurveTest, HasNoMorePointsThanAreAskedFor) {
    for (const std::size_t most : {2U, 3U, 5U, 17U, 40U})
        for (const CivilMinute days : {1, 2, 7, 39, 40, 41, 365}) {
            const CivilMinute asOf = pulled + days * minutesPerDay;
            const auto points = doseCurveOf(m_ledger, m_stays, exactly(pulled), asOf, most);
            EXPECT_LE(points.size(), most);
            ASSERT_GE(points.size(), 2u);
            EXPECT_EQ(points.front().at, pulled);
            EXPECT_EQ(points.back().at, asOf);
            EXPECT_EQ((points[1].at - pulled) % minutesPerDay, 0);
        }
}

TEST_F(DoseCurveTest, IsEmptyWithoutABeginning) {
    EXPECT_TRUE(doseCurveOf(m_ledger, m_stays, {beginningOfTime, pulled}, pulled + 1, 9).empty());
    EXPECT_TRUE(doseCurveOf(m_ledger, m_stays, exactly(pulled), pulled, 9).empty());
    EXPECT_TRUE(doseCurveOf(m_ledger, m_stays, exactly(pulled), pulled - 1, 9).empty());
}

}  // namespace
}  // namespace rackbook
