#include "sheets/Plot.h"

#include <gtest/gtest.h>

#include <cmath>

#include "base/Numbers.h"

namespace rackbook {
namespace {

PlotAxis axisOf(double from, double to, int most) {
    return evenAxis(from, to, "title", most,
                    [](double at, int decimals) { return formatFixed(at, decimals); });
}

std::string wordsOf(const PlotAxis& axis) {
    std::string all;
    for (const PlotTick& tick : axis.ticks)
        all += (all.empty() ? "" : " ") + tick.text;
    return all;
}

// Worked out by hand.
TEST(EvenAxis, PutsTicksWhereAHandWould) {
    EXPECT_EQ(wordsOf(axisOf(0, 10, 6)), "0 2 4 6 8 10");
    EXPECT_EQ(wordsOf(axisOf(0, 10, 5)), "0 5 10");
    EXPECT_EQ(wordsOf(axisOf(0, 1, 2)), "0 1");
    EXPECT_EQ(wordsOf(axisOf(0.12, 0.87, 5)), "0.2 0.4 0.6 0.8");
    EXPECT_EQ(wordsOf(axisOf(0.12, 0.87, 7)), "0.2 0.3 0.4 0.5 0.6 0.7 0.8");
    EXPECT_EQ(wordsOf(axisOf(-3, 3, 4)), "-2 0 2");
    EXPECT_EQ(wordsOf(axisOf(950, 1050, 3)), "950 1000 1050");
    EXPECT_EQ(wordsOf(axisOf(0, 0.0042, 5)), "0.000 0.001 0.002 0.003 0.004");
    EXPECT_EQ(wordsOf(axisOf(2.4, 2.6, 3)), "2.4 2.5 2.6");
    // Three tenths are a little more than 0.3.
    EXPECT_EQ(wordsOf(axisOf(0, 0.3, 4)), "0.0 0.1 0.2 0.3");
}

TEST(EvenAxis, KeepsWhatItWasGiven) {
    const PlotAxis axis = axisOf(1.5, 7.25, 4);
    EXPECT_EQ(axis.from, 1.5);
    EXPECT_EQ(axis.to, 7.25);
    EXPECT_EQ(axis.title, "title");
}

// 1, 2 or 5 times a power of ten; NaN for another step.
double mantissaOf(double step) {
    const double mantissa = step / std::pow(10.0, std::floor(std::log10(step) + 1e-6));
    for (const double good : {1.0, 2.0, 5.0})
        if (std::abs(mantissa - good) < 1e-6)
            return good;
    return std::nan("");
}

TEST(EvenAxis, StaysInsideOnWholeStepsAndNeverAboveTheNumberAskedFor) {
    for (double from = -7.3; from < 8; from += 1.37)
        for (double span = 0.00013; span < 4e6; span *= 2.9)
            for (int most = 2; most <= 12; ++most) {
                const PlotAxis axis = axisOf(from, from + span, most);
                const std::string where = formatShortest(from) + " + " + formatShortest(span) +
                                          " in " + std::to_string(most);
                EXPECT_LE(axis.ticks.size(), static_cast<std::size_t>(most)) << where;
                for (const PlotTick& tick : axis.ticks) {
                    EXPECT_GE(tick.at, axis.from) << where;
                    EXPECT_LE(tick.at, axis.to) << where;
                }
                for (std::size_t i = 1; i < axis.ticks.size(); ++i) {
                    const double step = axis.ticks[i].at - axis.ticks[i - 1].at;
                    EXPECT_FALSE(std::isnan(mantissaOf(step))) << where << ": " << step;
                    const double steps = axis.ticks[i].at / step;
                    EXPECT_NEAR(steps, std::round(steps), 1e-4 * std::max(1.0, std::abs(steps)))
                        << where;
                }
            }
}

// Every tick can be told from its neighbour.
TEST(EvenAxis, AsksForTheDecimalsThatTheStepNeeds) {
    for (double span = 0.00013; span < 4e6; span *= 2.9) {
        const PlotAxis axis = axisOf(0, span, 6);
        for (const PlotTick& tick : axis.ticks)
            EXPECT_NEAR(*parseNumber(tick.text), tick.at, 1e-9 * std::max(1.0, span));
    }
}

}  // namespace
}  // namespace rackbook
