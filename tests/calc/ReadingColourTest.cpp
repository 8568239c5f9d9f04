#include "calc/ReadingColour.h"

#include <gtest/gtest.h>

#include "PlanFixture.h"

namespace rackbook {
namespace {

using test::refusalOf;

Reading typed(double l, double a, double b) {
    Reading reading;
    reading.id = "r";
    reading.labL = l;
    reading.labA = a;
    reading.labB = b;
    return reading;
}

Reading grey(double reflectance) {
    Reading reading;
    reading.id = "r";
    reading.spectrumStart_nm = 400;
    reading.spectrumStep_nm = 10;
    reading.spectrum.assign(31, reflectance);
    return reading;
}

TEST(ReadingColour, IsComputedFromTheSpectrumUnderAnyLight) {
    // L* of a grey of 18 % reflectance: 116 · ∛0.18 − 16 = 49.496 (CIE 15), in every light.
    for (const ViewingLight light : {ViewingLight::D50, ViewingLight::A}) {
        const std::optional<ReadingColour> colour = colourOf(grey(0.18), light, Observer::deg10);
        ASSERT_TRUE(colour);
        EXPECT_FALSE(colour->isTyped);
        EXPECT_NEAR(colour->lab.l, 49.496, 0.001);
        EXPECT_NEAR(colour->lab.a, 0, 1e-9);
    }
}

TEST(ReadingColour, IsAsTypedOnlyForTheLightItWasTypedFor) {
    Reading reading = typed(60, 10, -5);
    const std::optional<ReadingColour> colour =
        colourOf(reading, ViewingLight::D50, Observer::deg2);
    ASSERT_TRUE(colour);
    EXPECT_TRUE(colour->isTyped);
    EXPECT_EQ(colour->lab.a, 10);
    EXPECT_FALSE(colourOf(reading, ViewingLight::D65, Observer::deg2));
    EXPECT_FALSE(colourOf(reading, ViewingLight::D50, Observer::deg10));
    reading.illuminant = Illuminant::D65;
    EXPECT_TRUE(colourOf(reading, ViewingLight::D65, Observer::deg2));
    EXPECT_FALSE(colourOf(Reading{}, ViewingLight::D50, Observer::deg2));
}

TEST(ReadingColour, HoldsWhatWasTypedAgainstTheSpectrum) {
    Reading reading = grey(0.18);
    EXPECT_FALSE(typedAgainstSpectrum(reading));
    reading.labL = 49.496;
    reading.labA = 0;
    reading.labB = 0;
    EXPECT_NEAR(*typedAgainstSpectrum(reading), 0, 0.001);
    reading.labL = 55;
    EXPECT_GT(*typedAgainstSpectrum(reading), 4);
}

TEST(ReadingColour, NamesTheReadingWhoseSpectrumCannotBeUsed) {
    Reading reading = grey(0.18);
    reading.spectrum.resize(5);
    EXPECT_EQ(refusalOf([&] { colourOf(reading, ViewingLight::D50, Observer::deg2); }).substr(0, 9),
              "reading r");
}

TEST(ReadingColour, TellsWhatWasDifferent) {
    Reading first = grey(0.2);
    Reading second = grey(0.3);
    EXPECT_TRUE(unlikeConditions(first, second).empty());
    first.condition = MeasurementCondition::M0;
    second.condition = MeasurementCondition::M1;
    first.geometry = "45:0";
    EXPECT_EQ(
        unlikeConditions(first, second),
        (std::vector<std::string>{"condition (M0 and M1)", "geometry (45:0 and not stated)"}));
}

}  // namespace
}  // namespace rackbook
