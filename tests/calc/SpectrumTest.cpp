#include "calc/Spectrum.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

Spectrum flat(double start_nm, double step_nm, double end_nm, double value = 0.5) {
    const auto count = static_cast<std::size_t>((end_nm - start_nm) / step_nm) + 1;
    return {start_nm, step_nm, std::vector<double>(count, value)};
}

std::string refusalOf(const Spectrum& spectrum) {
    return test::messageOf<InputError>([&] { requireUsable(spectrum); });
}

std::string refusalWith(std::size_t index, double value) {
    Spectrum spectrum = flat(380, 10, 730);
    spectrum.values.at(index) = value;
    return refusalOf(spectrum);
}

double cubic(double at_nm) {
    const double t = (at_nm - 550) / 200;
    return 0.4 + 0.2 * t - 0.1 * t * t + 0.15 * t * t * t;
}

TEST(Spectrum, TakesStepsOf5And10And20) {
    for (const double step_nm : {5.0, 10.0, 20.0})
        EXPECT_EQ(refusalOf(flat(400, step_nm, 700)), "(nothing was thrown)");
    EXPECT_EQ(refusalOf(flat(300, 10, 830)), "(nothing was thrown)");
    EXPECT_EQ(refusalOf(flat(385, 5, 730)), "(nothing was thrown)");
    EXPECT_EQ(refusalWith(0, 0), "(nothing was thrown)");
    EXPECT_EQ(refusalWith(0, 1.2), "(nothing was thrown)");
}

TEST(Spectrum, RefusesOtherSteps) {
    EXPECT_EQ(refusalOf(flat(400, 4, 700)),
              "spectrum: the step is 4 nm. Give values every 5, 10 or 20 nm.");
    EXPECT_EQ(refusalOf(flat(383, 10, 733)),
              "spectrum: it starts at 383 nm. Let it start at a multiple of 5 nm.");
}

TEST(Spectrum, RefusesWrongRanges) {
    EXPECT_EQ(refusalOf({400, 10, {}}),
              "spectrum: it holds no values. Give at least those from 400 to 700 nm.");
    EXPECT_EQ(refusalOf(flat(290, 10, 730)),
              "spectrum: it runs from 290 to 730 nm. Leave out what lies below 300 nm or above 830 "
              "nm.");
    EXPECT_EQ(refusalOf(flat(380, 20, 840)),
              "spectrum: it runs from 380 to 840 nm. Leave out what lies below 300 nm or above 830 "
              "nm.");
    EXPECT_EQ(refusalOf(flat(410, 10, 700)),
              "spectrum: it runs from 410 to 700 nm. Give at least the values from 400 to 700 nm.");
    EXPECT_EQ(refusalOf(flat(400, 10, 690)),
              "spectrum: it runs from 400 to 690 nm. Give at least the values from 400 to 700 nm.");
}

TEST(Spectrum, RefusesWrongValues) {
    EXPECT_EQ(refusalWith(4, std::numeric_limits<double>::quiet_NaN()),
              "spectrum: the value at 420 nm is not a number. Give a fraction, 0 to 1.2.");
    EXPECT_EQ(refusalWith(4, std::numeric_limits<double>::infinity()),
              "spectrum: the value at 420 nm is not a number. Give a fraction, 0 to 1.2.");
    EXPECT_EQ(refusalWith(4, -0.01),
              "spectrum: the value at 420 nm is -0.01. Give a fraction, 0 to 1.2.");
    EXPECT_EQ(refusalWith(4, 1000),
              "spectrum: the value at 420 nm is 1000. Give a fraction, 0 to 1.2.");
}

TEST(Spectrum, RecognisesPerCent) {
    Spectrum spectrum = flat(380, 10, 730, 84.2);
    EXPECT_EQ(
        refusalOf(spectrum),
        "spectrum: the values reach 84.2 and seem to be per cent. Divide all of them by 100.");
    spectrum.values[3] = 4.5;  // a dark band is still per cent
    spectrum.values[4] = 0.9;
    spectrum.values[5] = 4.5;
    spectrum.values[2] = spectrum.values[6] = 30;
    spectrum.values[20] = 0;
    EXPECT_EQ(
        refusalOf(spectrum),
        "spectrum: the values reach 84.2 and seem to be per cent. Divide all of them by 100.");
}

TEST(Spectrum, RecognisesMixedUnits) {
    const std::string message =
        "spectrum: the values at 410 and 420 nm are 0.5 and 51: fractions and per cent seem to be "
        "mixed. Give all of them as fractions, 0 to 1.";
    EXPECT_EQ(refusalWith(4, 51), message);
    Spectrum spectrum = flat(380, 10, 730);
    for (std::size_t i = 4; i < spectrum.values.size(); ++i)
        spectrum.values[i] = 51;
    EXPECT_EQ(refusalOf(spectrum), message);
}

TEST(Spectrum, BeginsItsMessagesAsAsked) {
    EXPECT_EQ(test::messageOf<InputError>([] { requireUsable(flat(400, 4, 700), "R7"); }),
              "R7: the step is 4 nm. Give values every 5, 10 or 20 nm.");
    EXPECT_EQ(test::messageOf<InputError>([] { reflectanceOnTable(flat(400, 4, 700)); }),
              "spectrum: the step is 4 nm. Give values every 5, 10 or 20 nm.");
}

// The cubic through four points is exact for every cubic, whatever the step.
TEST(Spectrum, InterpolatesCubicsExactly) {
    for (const double step_nm : {5.0, 10.0, 20.0}) {
        Spectrum spectrum = flat(380, step_nm, 740);
        for (std::size_t i = 0; i < spectrum.values.size(); ++i)
            spectrum.values[i] = cubic(spectrum.wavelength_nm(i));
        const CieColumn column = reflectanceOnTable(spectrum);
        for (std::size_t i = 0; i < tableSize; ++i) {
            const double at_nm = tableStart_nm + tableStep_nm * static_cast<double>(i);
            EXPECT_NEAR(column[i], cubic(std::fmin(std::fmax(at_nm, 380), 740)), 1e-14) << at_nm;
        }
    }
}

TEST(Spectrum, KeepsWhatWasMeasured) {
    Spectrum spectrum = flat(385, 20, 785, 0);
    for (std::size_t i = 0; i < spectrum.values.size(); ++i)
        spectrum.values[i] = static_cast<double>((i * 37) % 11) / 11;
    const CieColumn column = reflectanceOnTable(spectrum);
    for (std::size_t i = 0; i < spectrum.values.size(); ++i)
        EXPECT_EQ(column[5 + 4 * i], spectrum.values[i]);
}

TEST(Spectrum, LeavesOutWhatLiesBelowTheTables) {
    Spectrum spectrum = flat(300, 5, 830);
    for (std::size_t i = 0; i < spectrum.values.size(); ++i)
        spectrum.values[i] = static_cast<double>(i) / 1000;
    const CieColumn column = reflectanceOnTable(spectrum);
    EXPECT_EQ(column.front(), 0.012);
    EXPECT_EQ(column.back(), 0.106);
}

TEST(Spectrum, ComesFromAReading) {
    Reading reading;
    EXPECT_FALSE(spectrumIn(reading));
    reading.spectrumStart_nm = 380;
    reading.spectrumStep_nm = 10;
    EXPECT_FALSE(spectrumIn(reading));
    reading.spectrum = {0.1, 0.2};
    const auto spectrum = spectrumIn(reading);
    ASSERT_TRUE(spectrum);
    EXPECT_EQ(spectrum->end_nm(), 390);
    EXPECT_EQ(spectrum->values, reading.spectrum);
}

}  // namespace
}  // namespace rackbook
