#include "calc/CloudCover.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "FactRows.h"
#include "SkyFixture.h"
#include "calc/ClearSky.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::valuesIn;

constexpr double radiansPerDegree = 3.14159265358979323846 / 180;
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

double hamburgClear_Wm2(double elevation_deg) {
    return std::max(0.0, 910 * std::sin(elevation_deg * radiansPerDegree) - 30);
}

TEST(CloudCover, GivesTheRowsOfTheTable) {
    int checked = 0;
    for (const FactRow& row : test::factRows("irradiance.csv")) {
        SCOPED_TRACE(row.text("row"));
        const std::string& quantity = row.text("quantity");
        const double expected = row.number("expected");
        if (quantity != "kasten_czeplak_cloud_factor" && quantity != "kasten_czeplak_ghi_Wm2" &&
            quantity != "haurwitz0.059_x_cloud_Wm2")
            continue;
        const auto in = valuesIn(row.text("input"));
        const double factor = kastenCzeplakFactor(in.at("N_okta"));
        if (quantity == "kasten_czeplak_cloud_factor")
            EXPECT_NEAR(factor, expected, 1e-8);
        else if (quantity == "kasten_czeplak_ghi_Wm2")
            EXPECT_NEAR(hamburgClear_Wm2(in.at("elevation_deg")) * factor, expected, 1e-6);
        else
            EXPECT_NEAR(haurwitzGlobal_Wm2(in.at("elevation_deg")) * factor, expected, 1e-6);
        ++checked;
    }
    EXPECT_EQ(checked, 17);
}

// Kasten, Czeplak 1980, overcast by kind of cloud, from memory: 0.16 to 0.61.
TEST(CloudCover, ReachesFromThickToThinCloud) {
    const Estimate overcast = cloudFactor(Oktas::exactly(8));
    EXPECT_NEAR(overcast.low, 0.16, 1e-12);
    EXPECT_NEAR(overcast.best, 0.25, 1e-12);
    EXPECT_NEAR(overcast.high, 0.61, 1e-12);
    const Estimate clear = cloudFactor(Oktas::exactly(0));
    EXPECT_EQ(clear.low, 1);
    EXPECT_EQ(clear.high, 1);
}

TEST(CloudCover, LetsLessThroughTheMoreThereIs) {
    double before = 1.1;
    for (double oktas = 0; oktas <= 8; oktas += 0.25) {
        const Estimate here = cloudFactor(Oktas::exactly(oktas));
        test::expectOrdered(here);
        EXPECT_LT(here.best, before);
        before = here.best;
    }
}

TEST(CloudCover, WidensWithWhatIsNotKnown) {
    const Estimate wide = cloudFactor({2, 4, 7});
    EXPECT_EQ(wide.low, cloudFactor(Oktas::exactly(7)).low);
    EXPECT_EQ(wide.best, kastenCzeplakFactor(4));
    EXPECT_EQ(wide.high, cloudFactor(Oktas::exactly(2)).high);
    EXPECT_FALSE(cloudFactor({0, notKnown, 8}).isKnown());
}

TEST(CloudCover, OrdersTheWordsOfTheSky) {
    const Oktas sunny = oktasOf(Sky::sunny);
    const Oktas broken = oktasOf(Sky::broken);
    const Oktas overcast = oktasOf(Sky::overcast);
    for (const Oktas& oktas : {sunny, broken, overcast}) {
        EXPECT_NO_THROW(requireOktas(oktas));
        test::expectOrdered(oktas);
    }
    EXPECT_LT(sunny.high, broken.best);
    EXPECT_LT(broken.best, overcast.low);
    EXPECT_EQ(sunny.low, 0);
    EXPECT_EQ(overcast.high, 8);
}

std::string refusalOf(const Oktas& oktas) {
    return test::messageOf<InputError>([&] { cloudFactor(oktas); });
}

TEST(CloudCover, RefusesWhatIsNotInEighths) {
    EXPECT_EQ(refusalOf(Oktas::exactly(9)),
              "cloud cover: it is 9 oktas. Give eighths of the sky, 0 to 8.");
    EXPECT_EQ(refusalOf({-1, 3, 5}),
              "cloud cover: it is -1 oktas. Give eighths of the sky, 0 to 8.");
    EXPECT_EQ(refusalOf({5, notKnown, 3}),
              "cloud cover: it lies from 5 down to 3 oktas. Give eighths of the sky, 0 to 8.");
    EXPECT_EQ(refusalOf({2, 6, 4}),
              "cloud cover: the best value, 6 oktas, is not between 2 and 4. Give eighths of the "
              "sky, 0 to 8.");
    EXPECT_NE(refusalOf({unknown, 1, 2}), "(nothing was thrown)");
    EXPECT_NE(refusalOf({0, 1, std::numeric_limits<double>::infinity()}), "(nothing was thrown)");
    EXPECT_NE(test::messageOf<InputError>([] { kastenCzeplakFactor(unknown); }),
              "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
