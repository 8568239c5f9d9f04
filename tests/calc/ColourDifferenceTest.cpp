#include "calc/ColourDifference.h"

#include <gtest/gtest.h>
#include <lcms2.h>

#include <cmath>
#include <random>

#include "FactRows.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::factRows;

Lab labIn(const FactRow& row, const std::string& number) {
    return {row.number("L" + number), row.number("a" + number), row.number("b" + number)};
}

double otherE00(const Lab& first, const Lab& second) {
    const cmsCIELab one{first.l, first.a, first.b};
    const cmsCIELab two{second.l, second.a, second.b};
    return cmsCIE2000DeltaE(&one, &two, 1, 1, 1);
}

class Colours {
public:
    Lab next() { return {m_l(m_random), m_ab(m_random), m_ab(m_random)}; }
    Lab near(const Lab& colour) {
        return {colour.l + m_ab(m_random) / 50, colour.a + m_ab(m_random) / 50,
                colour.b + m_ab(m_random) / 50};
    }

private:
    std::mt19937 m_random{20};
    std::uniform_real_distribution<double> m_l{0, 100};
    std::uniform_real_distribution<double> m_ab{-100, 100};
};

TEST(ColourDifference, GivesThePublishedPairs) {
    const auto rows = factRows("ciede2000.csv");
    ASSERT_EQ(rows.size(), 34u);
    for (const FactRow& row : rows) {
        const double found = deltaE00(labIn(row, "1"), labIn(row, "2"));
        EXPECT_NEAR(found, row.number("dE00_published"), 6e-5) << row.text("pair");
        EXPECT_NEAR(found, row.number("dE00_computed"), 6e-9) << row.text("pair");
    }
}

// Away from opposite hues, where rounding decides in the library (see below).
TEST(ColourDifference, AgreesWithALibrary) {
    Colours colours;
    int compared = 0;
    for (int i = 0; i < 20000; ++i) {
        const Lab first = colours.next();
        const Lab second = i % 2 == 0 ? colours.next() : colours.near(first);
        const double other = otherE00(first, second);
        if (std::fabs(other - otherE00(second, first)) > 1e-9)
            continue;
        ++compared;
        ASSERT_NEAR(deltaE00(first, second), other, 1e-10 * (1 + other));
    }
    EXPECT_GT(compared, 19900);
}

TEST(ColourDifference, IsSymmetricAndZeroOnlyForTheSame) {
    Colours colours;
    for (int i = 0; i < 5000; ++i) {
        const Lab first = colours.next();
        const Lab second = colours.near(first);
        ASSERT_NEAR(deltaE00(first, second), deltaE00(second, first), 1e-12);
        ASSERT_EQ(deltaE00(first, first), 0);
        ASSERT_GT(deltaE00(first, second), 0);
        ASSERT_EQ(deltaEab(first, second), deltaEab(second, first));
    }
}

// Opposite hues: the mean is the plain one on both sides of rounding, in either order.
TEST(ColourDifference, IsSymmetricForOppositeHues) {
    const Lab first{50, -99.625419841904858, 0.14493268921269695};
    const Lab second{50, 8.6889182625082881, -0.012640431449453678};
    EXPECT_NEAR(deltaE00(first, second), deltaE00(second, first), 1e-6);
    EXPECT_NEAR(deltaE00(first, second), 61.0691515, 1e-6);  // the library's, in one of two orders
    std::mt19937 random(21);
    std::uniform_real_distribution<double> ab(-100, 100);
    std::uniform_real_distribution<double> share(0.05, 0.95);
    for (int i = 0; i < 20000; ++i) {
        const Lab one{50, ab(random), ab(random)};
        const double part = share(random);
        const Lab opposite{60, -one.a * part, -one.b * part};
        ASSERT_NEAR(deltaE00(one, opposite), deltaE00(opposite, one), 1e-6)
            << one.a << ' ' << one.b;
    }
}

TEST(ColourDifference, GrowsAlongALine) {
    for (const Lab& direction : {Lab{1, 0, 0}, Lab{0, 1, 0}, Lab{0, 0, 1}, Lab{0.3, -0.5, 0.2}}) {
        double last = 0;
        for (int step = 1; step <= 20; ++step) {
            const double d = step / 4.0;
            const double found = deltaE00(
                {60, 30, 20}, {60 + d * direction.l, 30 + d * direction.a, 20 + d * direction.b});
            EXPECT_GT(found, last);
            last = found;
        }
    }
}

TEST(ColourDifference, MeasuresGreysByLightnessAlone) {
    EXPECT_NEAR(deltaE00({50, 0, 0}, {51, 0, 0}), otherE00({50, 0, 0}, {51, 0, 0}), 1e-12);
    EXPECT_NEAR(deltaE00({49.5, 0, 0}, {50.5, 0, 0}), 1, 1e-12);
}

TEST(ColourDifference, GivesTheDistanceOf1976) {
    EXPECT_DOUBLE_EQ(deltaEab({50, 1, 2}, {52, 4, 8}), 7);
}

}  // namespace
}  // namespace rackbook
