// Days of light against the finer sums of DaylightDose, whose own error stands there.
#include "calc/DaylightTable.h"

#include <gtest/gtest.h>

#include <cmath>

#include "SkyFixture.h"
#include "base/Error.h"
#include "calc/DaylightDose.h"

namespace rackbook {
namespace {

std::int64_t dayOn(int month, int day, std::int64_t year = 2023) {
    return daysFromCivil({year, month, day});
}

// The same solar day.
Estimate finely_Whm2(const GeoPoint& place, std::size_t plane, const Oktas& oktas,
                     std::int64_t day) {
    const UtcTime from{static_cast<double>(day * minutesPerDay) - 4 * place.longitude_deg};
    const UtcTime until = test::later(from, minutesPerDay);
    if (plane == static_cast<std::size_t>(DayPlane::level))
        return doseOnLevel(place, from, until, oktas).nearUltraviolet_Whm2;
    const UprightPlane upright{90.0 * static_cast<double>(plane - 1)};
    return doseOnUpright(place, upright, from, until, oktas).nearUltraviolet_Whm2;
}

void expectClose(double coarse, double fine) {
    constexpr double promised = 0.005;
    EXPECT_NEAR(coarse, fine, promised * fine + 1e-9);
}

const GeoPoint places[] = {{0, -78}, {30, 31}, {56, 10}, {-35, 139}, {-54.8, -68.3}, {65, 25}};

TEST(DaylightTable, IsWithinWhatItPromisesOfFinerSums) {
    for (const GeoPoint& place : places) {
        DaylightTable table(place);
        for (const int month : {1, 3, 5, 6, 9, 11, 12})
            for (const Sky sky : {Sky::sunny, Sky::broken, Sky::overcast})
                for (std::size_t plane = 0; plane < dayPlanes; ++plane) {
                    SCOPED_TRACE(testing::Message() << place.latitude_deg << "° month " << month
                                                    << " plane " << plane);
                    const std::int64_t day = dayOn(month, 21);
                    const Estimate coarse =
                        table.under(oktasOf(sky), day).nearUltraviolet_Whm2[plane];
                    const Estimate fine = finely_Whm2(place, plane, oktasOf(sky), day);
                    test::expectOrdered(coarse);
                    expectClose(coarse.low, fine.low);
                    expectClose(coarse.best, fine.best);
                    expectClose(coarse.high, fine.high);
                }
    }
}

TEST(DaylightTable, KnowsPolarDayAndPolarNight) {
    const GeoPoint polar{78.2, 15.6};
    DaylightTable table(polar);
    const DayLight& night = table.under(oktasOf(Sky::sunny), dayOn(12, 21));
    for (std::size_t plane = 0; plane < dayPlanes; ++plane) {
        EXPECT_EQ(night.nearUltraviolet_Whm2[plane].high, 0);
        for (const float share : night.fallenBy[plane])
            EXPECT_EQ(share, 1);
    }
    const DayLight& day = table.under(oktasOf(Sky::sunny), dayOn(6, 21));
    for (std::size_t plane = 0; plane < dayPlanes; ++plane) {
        expectClose(day.nearUltraviolet_Whm2[plane].best,
                    finely_Whm2(polar, plane, oktasOf(Sky::sunny), dayOn(6, 21)).best);
        // The sun does not set: some of it falls in the first hour of the night already.
        EXPECT_GT(day.fallenBy[plane].front(), 0);
    }
}

TEST(DaylightTable, FallsFromNothingToAllOfIt) {
    for (const GeoPoint& place : places) {
        DaylightTable table(place);
        for (const int month : {3, 6, 12}) {
            const DayLight& light = table.under(oktasOf(Sky::broken), dayOn(month, 21));
            for (std::size_t plane = 0; plane < dayPlanes; ++plane) {
                float before = 0;
                for (const float share : light.fallenBy[plane]) {
                    EXPECT_GE(share, before);
                    before = share;
                }
                EXPECT_EQ(before, 1);
            }
        }
    }
}

// The sun's course is the same before and after noon. On these days the equation of time is within
// half a minute of nothing (any almanac), so that noon of mean solar time is noon.
TEST(DaylightTable, HasHalfOfALevelPlanesLightByNoon) {
    for (const GeoPoint& place : places) {
        DaylightTable table(place);
        for (const std::int64_t day : {dayOn(4, 15), dayOn(6, 13), dayOn(9, 1), dayOn(12, 25)}) {
            const auto& fallen = table.under(oktasOf(Sky::sunny), day)
                                     .fallenBy[static_cast<std::size_t>(DayPlane::level)];
            EXPECT_NEAR(fallen[11], 0.5, 0.005) << place.latitude_deg << "°";
        }
    }
}

// A wall to the east has its light in the morning, one to the west in the afternoon.
TEST(DaylightTable, KnowsWhenAWallHasItsSun) {
    DaylightTable table({45, 0});
    const DayLight& light = table.under(oktasOf(Sky::sunny), dayOn(6, 13));
    const auto byNoon = [&](DayPlane plane) {
        return light.fallenBy[static_cast<std::size_t>(plane)][11];
    };
    EXPECT_GT(byNoon(DayPlane::east), 0.6F);
    EXPECT_LT(byNoon(DayPlane::west), 0.4F);
    EXPECT_NEAR(byNoon(DayPlane::east), 1 - byNoon(DayPlane::west), 0.01);
    EXPECT_NEAR(byNoon(DayPlane::south), 0.5, 0.01);
    const auto whole = [&](DayPlane plane) {
        return light.nearUltraviolet_Whm2[static_cast<std::size_t>(plane)].best;
    };
    EXPECT_GT(whole(DayPlane::south), whole(DayPlane::north));
}

TEST(DaylightTable, ReckonsEveryYearByOne) {
    EXPECT_EQ(DaylightTable::referenceDay(dayOn(1, 1, 1998)), dayOn(1, 1));
    EXPECT_EQ(DaylightTable::referenceDay(dayOn(12, 31, 2025)), dayOn(12, 31));
    EXPECT_EQ(DaylightTable::referenceDay(dayOn(12, 30, 2024)), dayOn(12, 31));
    EXPECT_EQ(DaylightTable::referenceDay(dayOn(12, 31, 2024)), dayOn(12, 31));
    EXPECT_EQ(DaylightTable::referenceDay(dayOn(2, 29, 2024)), dayOn(3, 1));
    EXPECT_EQ(DaylightTable::referenceDay(-1), dayOn(12, 31));
    DaylightTable table({56, 10});
    EXPECT_EQ(&table.under(oktasOf(Sky::sunny), dayOn(7, 1, 2031)),
              &table.under(oktasOf(Sky::sunny), dayOn(7, 1)));
}

// At the equinoxes a day more or less is 0.4° of the sun's height, 2 % of the light at 56° N.
TEST(DaylightTable, IsNearTheSumsOfOtherYears) {
    const GeoPoint place{56, 10};
    DaylightTable table(place);
    for (const std::int64_t year : {1925, 2024, 2026, 2028, 2096})
        for (const int month : {3, 6, 9, 12}) {
            const std::int64_t day = dayOn(month, 15, year);
            const double fine = finely_Whm2(place, 0, oktasOf(Sky::broken), day).best;
            EXPECT_NEAR(table.under(oktasOf(Sky::broken), day).nearUltraviolet_Whm2[0].best, fine,
                        0.03 * fine)
                << year << "-" << month;
        }
}

TEST(DaylightTable, TakesSkiesToAQuarterOfAnOkta) {
    DaylightTable table({56, 10});
    const DayLight& five = table.under({3, 5, 7}, dayOn(6, 1));
    EXPECT_EQ(&table.under({3.1, 4.9, 7}, dayOn(6, 1)), &five);
    EXPECT_NE(&table.under({3, 5.25, 7}, dayOn(6, 1)), &five);
    EXPECT_GT(five.nearUltraviolet_Whm2[0].best,
              table.under({3, 6, 7}, dayOn(6, 1)).nearUltraviolet_Whm2[0].best);
}

TEST(DaylightTable, RefusesWhatCannotBe) {
    EXPECT_THROW(DaylightTable({91, 0}), InputError);
    DaylightTable table({56, 10});
    EXPECT_THROW(table.under({0, 4, 9}, 0), InputError);
    EXPECT_THROW(table.under({5, 4, 6}, 0), InputError);
}

}  // namespace
}  // namespace rackbook
