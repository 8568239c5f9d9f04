#include "calc/CieTables.h"

#include <gtest/gtest.h>

#include <cmath>

#include "FactRows.h"
#include "calc/Colorimetry.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::factRows;

std::size_t indexAt(double wavelength_nm) {
    return static_cast<std::size_t>((wavelength_nm - tableStart_nm) / tableStep_nm);
}

TEST(CieTables, HoldTheFiguresOfThe1931Observer) {
    const auto rows = factRows("cie-1931-2deg-10nm.csv");
    ASSERT_EQ(rows.size(), 48u);
    const ColourMatching& matching = matchingOf(Observer::deg2);
    for (const FactRow& row : rows) {
        const std::size_t i = indexAt(row.number("wavelength_nm"));
        EXPECT_EQ(matching.x.at(i), row.number("xbar"));
        EXPECT_EQ(matching.y.at(i), row.number("ybar"));
        EXPECT_EQ(matching.z.at(i), row.number("zbar"));
    }
}

TEST(CieTables, HoldTheFiguresOfTheIlluminants) {
    const auto rows = factRows("cie-illuminants-10nm.csv");
    ASSERT_EQ(rows.size(), 43u);
    for (const FactRow& row : rows) {
        const std::size_t i = indexAt(row.number("wavelength_nm"));
        EXPECT_NEAR(powerOf(ViewingLight::D50).at(i), row.number("D50"),
                    0.00051);  // 3 decimals there
        EXPECT_EQ(powerOf(ViewingLight::D65).at(i), row.number("D65"));
        EXPECT_NEAR(powerOf(ViewingLight::A).at(i), row.number("A"), 0.000051);
    }
}

// CIE 15: tungsten at 2848 K by the radiation constant of its definition.
TEST(CieTables, GiveIlluminantAAsItsFormula) {
    const auto planck = [](double at_nm) {
        return std::pow(560 / at_nm, 5) * std::expm1(1.435e7 / (2848 * 560)) /
               std::expm1(1.435e7 / (2848 * at_nm));
    };
    for (std::size_t i = 0; i < tableSize; ++i)
        EXPECT_NEAR(powerOf(ViewingLight::A)[i],
                    100 * planck(tableStart_nm + tableStep_nm * static_cast<double>(i)), 0.0006)
            << i;
}

// CIE 15: daylight is tabulated every 10 nm and runs straight between.
TEST(CieTables, GiveDaylightStraightBetweenTens) {
    for (const ViewingLight light : {ViewingLight::D50, ViewingLight::D65})
        for (std::size_t i = 1; i + 1 < tableSize; i += 2) {
            const CieColumn& power = powerOf(light);
            EXPECT_NEAR(power[i], (power[i - 1] + power[i + 1]) / 2, 0.00051) << i;
        }
}

// White points of ASTM E308: FL11 and 10° from memory.
TEST(CieTables, GiveThePublishedWhitePoints) {
    struct White {
        ViewingLight light;
        Observer observer;
        double x;
        double z;
    };
    const White whites[] = {
        {ViewingLight::D50, Observer::deg2, 96.422, 82.521},
        {ViewingLight::D65, Observer::deg2, 95.047, 108.883},
        {ViewingLight::A, Observer::deg2, 109.850, 35.585},
        {ViewingLight::FL11, Observer::deg2, 100.962, 64.350},
        {ViewingLight::D50, Observer::deg10, 96.720, 81.427},
        {ViewingLight::D65, Observer::deg10, 94.811, 107.304},
        {ViewingLight::A, Observer::deg10, 111.144, 35.200},
        {ViewingLight::FL11, Observer::deg10, 103.863, 65.607},
    };
    for (const White& white : whites) {
        const Xyz found = whiteOf(white.light, white.observer);
        EXPECT_NEAR(found.x, white.x, 0.0021) << nameOf(white.light);
        EXPECT_EQ(found.y, 100) << nameOf(white.light);
        EXPECT_NEAR(found.z, white.z, 0.021) << nameOf(white.light);
    }
}

// Sums from 380 to 780 nm, where a wrong digit in any figure shows: the check sums of CIE 15:2004
// (T.4 and T.5, as quoted).
TEST(CieTables, HaveThePublishedSums) {
    const auto sum = [](const CieColumn& column) {
        double total = 0;
        for (std::size_t i = indexAt(380); i <= indexAt(780); ++i)
            total += column[i];
        return total;
    };
    const ColourMatching& of1931 = matchingOf(Observer::deg2);
    EXPECT_NEAR(sum(of1931.x), 21.371524, 3e-6);
    EXPECT_NEAR(sum(of1931.y), 21.371327, 3e-6);
    EXPECT_NEAR(sum(of1931.z), 21.371540, 3e-6);
    const ColourMatching& of1964 = matchingOf(Observer::deg10);
    EXPECT_NEAR(sum(of1964.x), 23.329353, 3e-6);
    EXPECT_NEAR(sum(of1964.y), 23.332036, 3e-6);
    EXPECT_NEAR(sum(of1964.z), 23.334153, 3e-6);
}

TEST(CieTables, NameTheirLights) {
    EXPECT_EQ(viewingLightOf(Illuminant::D50), ViewingLight::D50);
    EXPECT_EQ(viewingLightOf(Illuminant::D65), ViewingLight::D65);
    EXPECT_EQ(viewingLightOf(Illuminant::A), ViewingLight::A);
    EXPECT_STREQ(nameOf(ViewingLight::D50), "D50");
    EXPECT_STREQ(nameOf(ViewingLight::D65), "D65");
    EXPECT_STREQ(nameOf(ViewingLight::A), "A");
    EXPECT_STREQ(nameOf(ViewingLight::FL11), "FL11");
}

}  // namespace
}  // namespace rackbook
