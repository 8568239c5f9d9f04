#include "calc/Colorimetry.h"

#include <gtest/gtest.h>
#include <lcms2.h>

#include <cmath>

#include "FactRows.h"
#include "FactSpectra.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::factRows;
using test::factSpectra;

ViewingLight lightNamed(const std::string& name) {
    for (const ViewingLight light : {ViewingLight::D50, ViewingLight::D65, ViewingLight::A})
        if (name == nameOf(light))
            return light;
    throw std::runtime_error("no light " + name);
}

void expectXyz(const Xyz& found, const Xyz& expected, double tolerance) {
    EXPECT_NEAR(found.x, expected.x, tolerance);
    EXPECT_NEAR(found.y, expected.y, tolerance);
    EXPECT_NEAR(found.z, expected.z, tolerance);
}

void expectLab(const Lab& found, const Lab& expected, double tolerance) {
    EXPECT_NEAR(found.l, expected.l, tolerance);
    EXPECT_NEAR(found.a, expected.a, tolerance);
    EXPECT_NEAR(found.b, expected.b, tolerance);
}

// A colour that differs from the first under other lights: bands that trade off under one.
Spectrum withBands(Spectrum spectrum, double low, double high) {
    spectrum.values[5] += low;
    spectrum.values[22] += high;
    return spectrum;
}

TEST(Colorimetry, GivesTheColoursOfKnownSpectra) {
    const auto spectra = factSpectra();
    const auto rows = factRows("spectral-to-lab.csv");
    ASSERT_EQ(rows.size(), 54u);
    for (const FactRow& row : rows) {
        SCOPED_TRACE(row.text("sample") + " " + row.text("illuminant"));
        const ViewingLight light = lightNamed(row.text("illuminant"));
        const Spectrum& spectrum = spectra.at(row.text("sample"));
        const Xyz found = xyzOf(spectrum, light, Observer::deg2);
        const Lab lab = labOf(spectrum, light, Observer::deg2);
        expectXyz(found, {row.number("X"), row.number("Y"), row.number("Z")}, 6e-5);
        expectLab(lab, {row.number("L"), row.number("a"), row.number("b")}, 6e-5);
        const Xyz other{row.number("otherX"), row.number("otherY"), row.number("otherZ")};
        expectXyz(found, other, 0.014);
    }
}

// The other program's CIELAB, with the white of its own sum.
TEST(Colorimetry, AgreesInCielabWithFinerSteps) {
    const auto spectra = factSpectra();
    const auto rows = factRows("spectral-to-lab.csv");
    std::map<std::string, Xyz> whites;
    const auto other = [](const FactRow& row) {
        return Xyz{row.number("otherX"), row.number("otherY"), row.number("otherZ")};
    };
    for (const FactRow& row : rows)
        if (row.text("sample") == "WHITE")
            whites[row.text("illuminant")] = other(row);
    ASSERT_EQ(whites.size(), 3u);
    for (const FactRow& row : rows) {
        SCOPED_TRACE(row.text("sample") + " " + row.text("illuminant"));
        const std::string& light = row.text("illuminant");
        expectLab(labOf(spectra.at(row.text("sample")), lightNamed(light), Observer::deg2),
                  labOf(other(row), whites.at(light)), 0.026);
    }
}

TEST(Colorimetry, MakesThePerfectWhiteExactlyWhite) {
    const Spectrum white{380, 10, std::vector<double>(36, 1.0)};
    for (const ViewingLight light :
         {ViewingLight::D50, ViewingLight::D65, ViewingLight::A, ViewingLight::FL11})
        for (const Observer observer : {Observer::deg2, Observer::deg10})
            expectLab(labOf(white, light, observer), {100, 0, 0}, 1e-12);
}

TEST(Colorimetry, ConvertsAsALibraryDoes) {
    const Xyz white = whiteOf(ViewingLight::D50, Observer::deg2);
    const cmsCIEXYZ otherWhite{white.x, white.y, white.z};
    for (double y = 0.05; y < 100; y *= 1.7)
        for (const double tint : {0.3, 0.8, 1.0, 1.9}) {
            const Xyz colour{y * tint, y, y / tint};
            const cmsCIEXYZ otherColour{colour.x, colour.y, colour.z};
            cmsCIELab other;
            cmsXYZ2Lab(&otherWhite, &other, &otherColour);
            expectLab(labOf(colour, white), {other.L, other.a, other.b}, 1e-9);
            expectXyz(xyzOf(labOf(colour, white), white), colour, 1e-10);
        }
}

// The published digits of the two branches meet at Y/Yn = (6/29)³, L* = 8.
TEST(Colorimetry, HasNoStepWhereTheScaleBends) {
    const Xyz white{100, 100, 100};
    const double bend = 100 * std::pow(6.0 / 29, 3);
    EXPECT_NEAR(labOf(Xyz{bend, bend, bend}, white).l, 8, 1e-12);
    EXPECT_NEAR(labOf(Xyz{bend + 1e-9, bend + 1e-9, bend + 1e-9}, white).l, 8, 1e-8);
    expectXyz(xyzOf(Lab{0, 0, 0}, white), {0, 0, 0}, 1e-14);
}

TEST(Colorimetry, GivesLightnessThatRisesWithReflectance) {
    double last = -1;
    for (int i = 0; i <= 50; ++i) {
        const Spectrum grey{400, 20, std::vector<double>(16, i / 50.0)};
        const Lab lab = labOf(grey, ViewingLight::A, Observer::deg10);
        EXPECT_GT(lab.l, last);
        EXPECT_LT(chromaOf(lab), 1e-9);
        last = lab.l;
    }
}

TEST(Colorimetry, GivesChromaAndHue) {
    EXPECT_DOUBLE_EQ(chromaOf({50, 3, -4}), 5);
    EXPECT_DOUBLE_EQ(*hueOf_deg({50, 1, 0}), 0);
    EXPECT_DOUBLE_EQ(*hueOf_deg({50, 0, 2}), 90);
    EXPECT_DOUBLE_EQ(*hueOf_deg({50, -1, -1}), 225);
    EXPECT_LT(*hueOf_deg({50, 1, -1e-18}), 360);
    EXPECT_FALSE(hueOf_deg({50, 0, 0}));
    EXPECT_FALSE(hueOf_deg({50, 3e-7, -3e-7}));
}

TEST(Colorimetry, GivesVisualDensity) {
    EXPECT_DOUBLE_EQ(visualDensity({0, 100, 0}), 0);
    EXPECT_DOUBLE_EQ(visualDensity({0, 1, 0}), 2);
    EXPECT_NEAR(visualDensity({0, 18, 0}), 0.744727, 1e-6);
    EXPECT_EQ(test::messageOf<InputError>([] {
                  visualDensity({0, 0, 0});
              }),
              "density: Y is 0. Give a colour with Y above 0.");
}

TEST(Colorimetry, FindsNoMetamerismInTheSameSpectrum) {
    const Spectrum spectrum = factSpectra().at("TCS09");
    for (const auto correction :
         {MatchCorrection::none, MatchCorrection::multiplicative, MatchCorrection::additive}) {
        const Metamerism found = metamerismOf(spectrum, spectrum, ViewingLight::D50,
                                              ViewingLight::A, Observer::deg2, correction);
        EXPECT_NEAR(found.referenceE00, 0, 1e-9);
        EXPECT_NEAR(found.testE00, 0, 1e-9);
        EXPECT_NEAR(found.testEab, 0, 1e-9);
    }
}

// Greys of other lightness have the same colour in every light, so that both corrections, which
// take away what they miss by under the reference, leave nothing.
TEST(Colorimetry, CorrectsWhatAPairMissesUnderTheReference) {
    const Spectrum grey{380, 10, std::vector<double>(36, 0.5)};
    const Spectrum other{380, 10, std::vector<double>(36, 0.54)};
    const auto found = [&](MatchCorrection correction) {
        return metamerismOf(grey, other, ViewingLight::D50, ViewingLight::FL11, Observer::deg2,
                            correction);
    };
    const Metamerism plain = found(MatchCorrection::none);
    EXPECT_GT(plain.referenceE00, 1);
    EXPECT_NEAR(plain.testE00, plain.referenceE00, 1e-9);
    EXPECT_NEAR(found(MatchCorrection::multiplicative).testE00, 0, 1e-9);
    EXPECT_NEAR(found(MatchCorrection::additive).testE00, 0, 1e-9);
    EXPECT_EQ(found(MatchCorrection::additive).referenceE00, plain.referenceE00);
}

TEST(Colorimetry, TellsHowAMatchFailsInAnotherLight) {
    const Spectrum first = factSpectra().at("GREY50");
    const Spectrum second = withBands(first, 0.05, -0.02);
    const Metamerism plain = metamerismOf(first, second, ViewingLight::D50, ViewingLight::A,
                                          Observer::deg2, MatchCorrection::none);
    const Xyz white = whiteOf(ViewingLight::A, Observer::deg2);
    const Lab one = labOf(xyzOf(first, ViewingLight::A, Observer::deg2), white);
    const Lab two = labOf(xyzOf(second, ViewingLight::A, Observer::deg2), white);
    EXPECT_DOUBLE_EQ(plain.testE00, deltaE00(one, two));
    EXPECT_DOUBLE_EQ(plain.testEab, deltaEab(one, two));
    // Uncorrected, the test difference also holds what the pair misses by under D50.
    const Lab aim = labOf(first, ViewingLight::D50, Observer::deg2);
    const Lab reached = labOf(second, ViewingLight::D50, Observer::deg2);
    const Metamerism shifted = metamerismOf(first, second, ViewingLight::D50, ViewingLight::A,
                                            Observer::deg2, MatchCorrection::additive);
    EXPECT_NEAR(shifted.testEab,
                std::hypot(two.l - one.l - (reached.l - aim.l), two.a - one.a - (reached.a - aim.a),
                           two.b - one.b - (reached.b - aim.b)),
                1e-12);
    const Metamerism scaled = metamerismOf(first, second, ViewingLight::D50, ViewingLight::A,
                                           Observer::deg2, MatchCorrection::multiplicative);
    EXPECT_GT(scaled.testE00, 0.05);
    EXPECT_NEAR(scaled.testE00, shifted.testE00, 0.2);
}

TEST(Colorimetry, RefusesWhatCannotBeCompared) {
    const Spectrum grey{380, 10, std::vector<double>(36, 0.5)};
    const Spectrum black{380, 10, std::vector<double>(36, 0.0)};
    const Spectrum coarse{380, 40, std::vector<double>(10, 0.5)};
    const auto refusal = [](const Spectrum& first, const Spectrum& second) {
        return test::messageOf<InputError>([&] {
            metamerismOf(first, second, ViewingLight::D50, ViewingLight::A, Observer::deg2,
                         MatchCorrection::multiplicative);
        });
    };
    EXPECT_EQ(refusal(grey, black),
              "metamerism: the second colour is black under the reference light, so that no factor "
              "makes it equal to the first. Use the additive correction.");
    EXPECT_EQ(refusal(coarse, grey),
              "first spectrum: the step is 40 nm. Give values every 5, 10 or 20 nm.");
    EXPECT_EQ(refusal(grey, coarse),
              "second spectrum: the step is 40 nm. Give values every 5, 10 or 20 nm.");
}

}  // namespace
}  // namespace rackbook
