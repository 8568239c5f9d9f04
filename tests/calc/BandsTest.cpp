#include "calc/Bands.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "FactRows.h"
#include "FactSpectra.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::factRows;
using test::factSpectra;

constexpr ViewingLight allLights[] = {ViewingLight::D50, ViewingLight::D65, ViewingLight::A,
                                      ViewingLight::FL11};

Spectrum sampled(double start_nm, double step_nm, double end_nm,
                 const std::function<double(double)>& reflectanceAt) {
    Spectrum spectrum{start_nm, step_nm, {}};
    for (double at_nm = start_nm; at_nm <= end_nm; at_nm += step_nm)
        spectrum.values.push_back(reflectanceAt(at_nm));
    return spectrum;
}

double cubicAt(double at_nm) {
    const double t = (at_nm - 550) / 200;
    return 0.45 + 0.2 * t - 0.1 * t * t + 0.15 * t * t * t;
}

void expectLab(const Lab& found, const Lab& expected, double tolerance) {
    EXPECT_NEAR(found.l, expected.l, tolerance);
    EXPECT_NEAR(found.a, expected.a, tolerance);
    EXPECT_NEAR(found.b, expected.b, tolerance);
}

// CIE 13.3 test colours and greys, with the tolerances of ColorimetryTest: the digits of the facts,
// and what another program's finer steps differ by.
TEST(Bands, GiveThePublishedColoursOfPublishedSpectra) {
    const auto spectra = factSpectra();
    int compared = 0;
    for (const FactRow& row : factRows("spectral-to-lab.csv"))
        for (const ViewingLight light : allLights) {
            if (row.text("illuminant") != nameOf(light))
                continue;
            SCOPED_TRACE(row.text("sample") + " " + row.text("illuminant"));
            const Bands bands = bandsOf(spectra.at(row.text("sample")));
            expectLab(labOf(bands, light), {row.number("L"), row.number("a"), row.number("b")},
                      6e-5);
            const Xyz found = xyzOf(bands, light);
            EXPECT_NEAR(found.x, row.number("X"), 6e-5);
            EXPECT_NEAR(found.y, row.number("Y"), 6e-5);
            EXPECT_NEAR(found.z, row.number("Z"), 6e-5);
            EXPECT_NEAR(found.x, row.number("otherX"), 0.014);
            EXPECT_NEAR(found.y, row.number("otherY"), 0.014);
            EXPECT_NEAR(found.z, row.number("otherZ"), 0.014);
            ++compared;
        }
    EXPECT_EQ(compared, 54);
}

TEST(Bands, AreTheSameSumsAsThoseOfTheSpectrumInEveryLight) {
    for (const auto& [name, spectrum] : factSpectra())
        for (const ViewingLight light : allLights) {
            SCOPED_TRACE(name + " " + nameOf(light));
            expectLab(labOf(bandsOf(spectrum), light), labOf(spectrum, light, Observer::deg2),
                      1e-9);
        }
}

TEST(Bands, KeepWhatWasMeasuredEveryFiveAndTenNanometres) {
    for (const double step_nm : {5.0, 10.0}) {
        // Nothing smooth, so that interpolation would show.
        const auto jagged = [](double at_nm) {
            return 0.1 + 0.0005 * std::fmod(at_nm * at_nm, 977);
        };
        const Bands bands = bandsOf(sampled(360, step_nm, 780, jagged));
        for (std::size_t band = 0; band < bandCount; ++band)
            EXPECT_NEAR(bands[band], jagged(wavelengthOf_nm(band)), 1e-12) << step_nm;
    }
}

// Lagrange's cubic through four points is exact for cubics.
TEST(Bands, FollowACubicBetweenWhatWasMeasured) {
    for (const Spectrum& spectrum :
         {sampled(380, 20, 740, cubicAt), sampled(375, 10, 735, cubicAt),
          sampled(365, 20, 745, cubicAt), sampled(370, 20, 730, cubicAt)}) {
        const Bands bands = bandsOf(spectrum);
        for (std::size_t band = 0; band < bandCount; ++band)
            EXPECT_NEAR(bands[band], cubicAt(wavelengthOf_nm(band)), 1e-12);
    }
}

// What Spectrum.h says of steps of 20 nm: up to 0.36 in ΔE00 for the CIE test colours.
TEST(Bands, ComeNearFromStepsOfTwentyNanometres) {
    for (const auto& [name, fine] : factSpectra()) {
        Spectrum coarse{380, 20, {}};
        for (std::size_t i = 0; i < fine.values.size(); i += 2)
            coarse.values.push_back(fine.values[i]);
        EXPECT_LT(deltaE00(labOf(bandsOf(fine), ViewingLight::D50),
                           labOf(bandsOf(coarse), ViewingLight::D50)),
                  0.37)
            << name;
    }
}

TEST(Bands, HoldTheEndsThatWereNotMeasured) {
    for (const double step_nm : {5.0, 10.0, 20.0}) {
        const Spectrum spectrum = sampled(400, step_nm, 700, cubicAt);
        const Bands bands = bandsOf(spectrum);
        for (std::size_t band = 0; band < bandCount; ++band)
            EXPECT_NEAR(bands[band], cubicAt(std::clamp(wavelengthOf_nm(band), 400.0, 700.0)),
                        1e-12)
                << step_nm << " " << wavelengthOf_nm(band);
        // The two ends of the eye's range weigh little.
        EXPECT_LT(deltaE00(labOf(bands, ViewingLight::D50),
                           labOf(spectrum, ViewingLight::D50, Observer::deg2)),
                  0.01);
    }
}

TEST(Bands, GoBackToASpectrum) {
    const auto spectra = factSpectra();
    const Bands bands = bandsOf(spectra.at("TCS09"));
    const Spectrum back = spectrumOf(bands);
    EXPECT_EQ(back.start_nm, 380);
    EXPECT_EQ(back.step_nm, 10);
    EXPECT_EQ(back.end_nm(), 730);
    EXPECT_EQ(back.values, std::vector<double>(bands.begin(), bands.end()));
    EXPECT_EQ(bandsOf(back), bands);
}

// CIE 15: the perfect white is 100, 0, 0 in every light; L* of an even grey is 116·∛R − 16.
TEST(Bands, MakeWhiteAndGreyWithoutColour) {
    for (const ViewingLight light : allLights)
        for (const double reflectance : {1.0, 0.5, 0.18, 0.05}) {
            Bands even{};
            even.fill(reflectance);
            expectLab(labOf(even, light), {116 * std::cbrt(reflectance) - 16, 0, 0}, 1e-9);
        }
}

TEST(Bands, AreSummedAlsoWherePaperPassesWhite) {
    Bands bright{};
    bright.fill(1.15);
    EXPECT_NEAR(xyzOf(bright, ViewingLight::D50).y, 115, 1e-9);
}

TEST(Bands, RefuseWhatNoSpectrumIs) {
    const auto refusalOf = [](const Spectrum& spectrum) {
        return test::messageOf<InputError>([&] { bandsOf(spectrum); });
    };
    EXPECT_EQ(refusalOf({400, 10, {}}),
              "spectrum: it holds no values. Give at least those from 400 to 700 nm.");
    EXPECT_EQ(refusalOf(sampled(420, 10, 700, cubicAt)),
              "spectrum: it runs from 420 to 700 nm. Give at least the values from 400 to 700 nm.");
    EXPECT_EQ(refusalOf({400, 10, std::vector<double>(31, 45)}),
              "spectrum: the values reach 45 and seem to be per cent. Divide all of them by 100.");
    EXPECT_EQ(refusalOf({400, 7, std::vector<double>(60, 0.5)}),
              "spectrum: the step is 7 nm. Give values every 5, 10 or 20 nm.");
    EXPECT_NE(refusalOf({400, 10, std::vector<double>(31, std::nan(""))}), "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
