#include "calc/MostDaylight.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "SkyFixture.h"
#include "calc/DaylightDose.h"
#include "calc/LuminousEfficacy.h"
#include "calc/UltravioletShare.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::later;
using test::utc;

const GeoPoint copenhagen{55.68, 12.57};
const GeoPoint longyearbyen{78.22, 15.65};

// 2,000 lx and 1 W/m² of lamps, and no sun: the sun is down at Copenhagen from about 19:45 to 02:30
// UTC about 2 June, and at Longyearbyen from the end of October to the middle of February (from
// memory).
TEST(MostDaylight, IsThatOfLampsWhileTheSunIsDown) {
    for (const auto& [place, moment] : {std::pair(copenhagen, "2025-06-01T22:00:00Z"),
                                        {copenhagen, "2025-12-21T07:00:00Z"},
                                        {longyearbyen, "2025-12-21T11:00:00Z"}}) {
        const LightRate most = mostLightAt(place, utc(moment));
        EXPECT_EQ(most.illuminance_lx, 2'000) << moment;
        EXPECT_EQ(most.ultravioletA_Wm2, 1) << moment;
    }
}

// Full sun has 100,000 to 130,000 lx and 60 to 70 W/m² of UV-A (from memory); what is measured in
// it must pass, and no hour may pass all that light on Earth can be.
TEST(MostDaylight, HoldsFullSunAndNoMore) {
    const LightRate noon = mostLightAt(copenhagen, utc("2025-06-21T11:10:00Z"));
    EXPECT_GT(noon.illuminance_lx, 130'000);
    EXPECT_EQ(noon.illuminance_lx, 152'000);
    EXPECT_GT(noon.ultravioletA_Wm2, 75);
    EXPECT_LE(noon.ultravioletA_Wm2, 91);
    // The sun in the zenith.
    const LightRate zenith = mostLightAt({0, 0}, utc("2025-03-20T12:07:00Z"));
    EXPECT_EQ(zenith.illuminance_lx, 152'000);
    EXPECT_EQ(zenith.ultravioletA_Wm2, 91);
}

// A low winter sun: the direct light of a very clear hour at 11° has some 600 W/m² and 50,000 lx on
// a plane that faces it (from memory), far less than that of summer.
TEST(MostDaylight, FollowsTheHeightOfTheSun) {
    const LightRate winter = mostLightAt(copenhagen, utc("2025-12-21T11:08:00Z"));
    EXPECT_GT(winter.illuminance_lx, 55'000);
    EXPECT_LT(winter.illuminance_lx, 110'000);
    EXPECT_LT(winter.ultravioletA_Wm2, 45);
}

// Whatever plane, day and place: never below the upper bounds of what falls on it, less what the
// ground sends back, which the factor of 1.5 leaves room for; but where those bounds, each at its
// worst, pass full sun, no more than that.
TEST(MostDaylight, IsAboveEveryPlaneUnderAClearSky) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> latitude(-70, 70);
    std::uniform_real_distribution<double> facing(0, 360);
    std::uniform_int_distribution<int> minute(0, 525'600);
    for (int i = 0; i < 300; ++i) {
        const GeoPoint place{latitude(random), 0};
        const UtcTime from = later(utc("2025-01-01T00:00:00Z"), minute(random));
        const UtcTime until = later(from, 47);
        const LightSum most = mostLightBetween(place, from, until, 47.0 / 60);
        const DaylightDose level = doseOnLevel(place, from, until, Oktas::exactly(0));
        const DaylightDose upright =
            doseOnUpright(place, {facing(random), 0.2}, from, until, Oktas::exactly(0));
        for (const DaylightDose& dose : {level, upright}) {
            EXPECT_GT(most.exposure_lxh, dose.exposure_lxh.best);
            EXPECT_GT(most.nearUltraviolet_Whm2, dose.nearUltraviolet_Whm2.best);
            EXPECT_GT(most.exposure_lxh, std::min(dose.exposure_lxh.high, 150'000 * 47.0 / 60));
            EXPECT_GT(most.nearUltraviolet_Whm2,
                      std::min(dose.nearUltraviolet_Whm2.high, 90 * 47.0 / 60));
        }
    }
}

TEST(MostDaylight, SumsRatesOverTime) {
    const UtcTime dark = utc("2025-12-21T19:00:00Z");
    EXPECT_NEAR(mostLightBetween(copenhagen, dark, later(dark, 95), 95.0 / 60).exposure_lxh,
                2'000 * 95.0 / 60, 1e-6);
    const UtcTime noon = utc("2025-06-21T10:00:00Z");
    EXPECT_NEAR(mostLightBetween(copenhagen, noon, later(noon, 120), 2).exposure_lxh, 304'000,
                1e-6);
    EXPECT_EQ(mostLightBetween(copenhagen, noon, noon, 0).exposure_lxh, 0);
}

// From four in the night to ten an instrument that saw one hour may have seen the brightest.
TEST(MostDaylight, TakesTheBrightestHourOfWhatWasSeenInPart) {
    const UtcTime from = utc("2025-12-21T04:00:00Z");
    const UtcTime until = later(from, 360);
    const double brightest = mostLightAt(copenhagen, until).illuminance_lx;
    EXPECT_NEAR(mostLightBetween(copenhagen, from, until, 0.25).exposure_lxh, brightest / 4, 1e-6);
    EXPECT_LT(mostLightBetween(copenhagen, from, until, 6).exposure_lxh, brightest * 3);
}

TEST(MostDaylight, RefusesTimesThatEndBeforeTheyBegin) {
    const UtcTime from = utc("2025-12-21T04:00:00Z");
    EXPECT_EQ(test::messageOf([&] { mostLightBetween(copenhagen, from, later(from, -1), 1); }),
              "daylight: the time ends before it begins. Give the earlier instant first.");
}

// The bound lies above the bluest sky by its upper bounds and far below all of sunlight.
TEST(MostDaylight, AllowsTheBluestSkyToEachLumen) {
    const double bluest_mWlm =
        1000 * skyUltravioletShare(Oktas::exactly(0)).high / skyEfficacy_lmW(Oktas::exactly(0)).low;
    EXPECT_GT(bluest_mWlm, 1.2);
    EXPECT_GT(mostUltraviolet_mWlm, 2 * bluest_mWlm);
    EXPECT_LT(mostUltraviolet_mWlm, 1000 / globalEfficacy_lmW().high / 2);
}

}  // namespace
}  // namespace rackbook
