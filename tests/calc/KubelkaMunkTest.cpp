#include "calc/KubelkaMunk.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <map>

#include "FactRows.h"

namespace rackbook {
namespace {

using test::FactRow;
using test::factRows;
using Values = std::map<std::string, double>;

FilmOptics opticsIn(const Values& values) {
    return {values.at("K"), values.at("S")};
}

FilmSurface surfaceIn(const Values& values, double specularShare) {
    return {values.at("k1"), values.at("k2"), specularShare};
}

// Each kind of row: what the facts give and what is expected, to 1e-10 unless recovered.
void checkRow(const std::string& kind, const Values& in, const Values& out) {
    if (kind == "KS_from_R") {
        EXPECT_NEAR(ksRatioOf(in.at("R")), out.at("KS"), 1e-10);
    } else if (kind == "R_from_KS") {
        EXPECT_NEAR(opaqueReflectanceOf(in.at("KS")), out.at("Rinf"), 1e-10);
    } else if (kind == "film" || kind == "film_K0" || kind == "film_S0") {
        EXPECT_NEAR(reflectanceOver(in.at("Rg"), opticsIn(in), in.at("X")), out.at("R"), 1e-10);
    } else if (kind == "R0_T") {
        const BareFilm film = bareFilm(opticsIn(in), in.at("X"));
        EXPECT_NEAR(film.reflectance, out.at("R0"), 1e-10);
        EXPECT_NEAR(film.transmittance, out.at("T"), 1e-10);
    } else if (kind == "semigroup") {
        const double once = reflectanceOver(in.at("Rg"), opticsIn(in), 1);
        EXPECT_NEAR(reflectanceOver(once, opticsIn(in), 1), out.at("R"), 1e-10);
        EXPECT_NEAR(reflectanceOver(in.at("Rg"), opticsIn(in), 2), out.at("R"), 1e-10);
    } else if (kind == "recover_KS" || kind == "recover_KS_rounded") {
        const FilmOptics found =
            opticsFrom({in.at("Rblack"), in.at("Rwhite"), 0.04, 0.86}, in.at("X"));
        EXPECT_NEAR(found.absorption, out.at("K"), 1e-6);
        EXPECT_NEAR(found.scattering, out.at("S"), 1e-6);
    } else if (kind == "recover_a_ideal_black") {
        const FilmOptics found = opticsFrom({in.at("R0"), in.at("Rw"), 0, in.at("Rg")}, 1);
        EXPECT_NEAR(1 + found.absorption / found.scattering, out.at("a"), 1e-6);
    } else if (kind == "saunderson_fwd" || kind == "saunderson_fwd_spec_excl") {
        const FilmSurface surface = surfaceIn(in, kind == "saunderson_fwd" ? 1 : 0);
        EXPECT_NEAR(measuredOf(in.at("Ri"), surface), out.at("Rm"), 1e-10);
        EXPECT_NEAR(insideOf(out.at("Rm"), surface), in.at("Ri"), 1e-10);
    } else if (kind == "saunderson_inv") {
        EXPECT_NEAR(insideOf(in.at("Rm"), surfaceIn(in, 1)), out.at("Ri"), 1e-10);
    } else {
        ADD_FAILURE() << "a kind of row that is not checked: " << kind;
    }
}

TEST(KubelkaMunk, GivesTheValuesOfTheTable) {
    const auto rows = factRows("kubelka-munk.csv");
    ASSERT_EQ(rows.size(), 58u);
    int checked = 0;
    for (const FactRow& row : rows) {
        SCOPED_TRACE(row.text("case_id") + " " + row.text("case"));
        const std::string& kind = row.text("case");
        // Put in words; the next two tests hold them.
        if (kind == "two_layers" || kind == "mix_two_constant" || kind == "pipeline")
            continue;
        checkRow(kind, test::valuesIn(row.text("input")), test::valuesIn(row.text("expected")));
        ++checked;
    }
    EXPECT_EQ(checked, 52);
}

// Rows 29 and 30: order matters only through S.
TEST(KubelkaMunk, LaysOneFilmOverAnother) {
    const FilmOptics pale{0.05, 0.02};
    const FilmOptics deep{0.5, 0.02};
    EXPECT_NEAR(reflectanceOver(reflectanceOver(0.85, pale, 1), deep, 1), 0.287240711716, 1e-10);
    EXPECT_NEAR(reflectanceOver(reflectanceOver(0.85, deep, 1), pale, 1), 0.295266710093, 1e-10);
}

// Rows 32 to 34 (Duncan 1940: K and S add by share) and 58.
TEST(KubelkaMunk, GivesMixturesAndReadingsThroughTheSurface) {
    const double shares[] = {0.03, 0.1, 0.5};
    const double expected[] = {0.415119559161, 0.0979732914014, 0.0316400383027};
    for (int i = 0; i < 3; ++i) {
        const double c = shares[i];
        const FilmOptics mix{12 * c + 0.004 * (1 - c), 0.8 * c + 0.01 * (1 - c)};
        EXPECT_NEAR(reflectanceOver(0.85, mix, 1), expected[i], 1e-10);
    }
    const FilmSurface surface{0.04, 0.6, 1};
    const double paper = insideOf(0.85, surface);
    const double inside = reflectanceOver(paper, {0.3638, 0.0337}, 1);
    EXPECT_NEAR(inside, 0.453375903587, 1e-10);
    EXPECT_NEAR(measuredOf(inside, surface), 0.279151724488, 1e-10);
}

// K, S and film weights from clear to opaque, S = 0 and K = 0 among them.
void forFilms(const std::function<void(const FilmOptics&, double)>& check) {
    for (const double k : {0.0, 1e-12, 1e-5, 0.02, 0.4, 6.0, 900.0})
        for (const double s : {0.0, 1e-12, 1e-5, 0.03, 0.7, 40.0})
            for (const double x : {0.0, 1e-6, 0.3, 1.0, 12.0}) {
                SCOPED_TRACE(testing::Message() << "K=" << k << " S=" << s << " X=" << x);
                check({k, s}, x);
            }
}

// The usual form with a and b in higher precision, where it loses few digits.
TEST(KubelkaMunk, AgreesWithTheUsualForm) {
    int compared = 0;
    forFilms([&](const FilmOptics& optics, double x) {
        if (optics.scattering < 1e-5 || optics.absorption < 1e-5 || x < 0.1)
            return;
        const long double a = 1 + static_cast<long double>(optics.absorption) / optics.scattering;
        const long double b = std::sqrt(a * a - 1);
        const long double c = b / std::tanh(b * optics.scattering * x);
        for (const double g : {0.0, 0.05, 0.85, 1.0})
            EXPECT_NEAR(reflectanceOver(g, optics, x),
                        static_cast<double>((1 - g * (a - c)) / (a - g + c)), 1e-11);
        ++compared;
    });
    EXPECT_GT(compared, 50);
}

TEST(KubelkaMunk, NeedsNoScattering) {
    for (const double s : {0.0, 1e-300, 1e-18})
        EXPECT_NEAR(reflectanceOver(0.8, {0.3, s}, 1), 0.8 * std::exp(-0.6), 1e-15);
    EXPECT_NEAR(reflectanceOver(0.8, {1e-17, 0}, 1), 0.8, 1e-15);
}

TEST(KubelkaMunk, KeepsAnOpaqueFilmOverItself) {
    forFilms([](const FilmOptics& optics, double x) {
        if (optics.scattering == 0)
            return;
        const double opaque = opaqueReflectanceOf(optics.absorption / optics.scattering);
        EXPECT_NEAR(reflectanceOver(opaque, optics, x), opaque, 1e-14);
    });
}

TEST(KubelkaMunk, AddsFilmWeights) {
    forFilms([](const FilmOptics& optics, double x) {
        for (const double g : {0.0, 0.3, 0.9, 1.0})
            EXPECT_NEAR(reflectanceOver(reflectanceOver(g, optics, 0.7 * x), optics, 0.3 * x),
                        reflectanceOver(g, optics, x), 1e-14);
    });
}

TEST(KubelkaMunk, GivesTheBareFilmThatBackingsSee) {
    forFilms([](const FilmOptics& optics, double x) {
        const BareFilm film = bareFilm(optics, x);
        EXPECT_LE(film.reflectance + film.transmittance, 1 + 1e-15);
        EXPECT_NEAR(reflectanceOver(0, optics, x), film.reflectance, 1e-15);
        EXPECT_NEAR(reflectanceOver(0.7, optics, x),
                    film.reflectance + film.transmittance * film.transmittance * 0.7 /
                                           (1 - 0.7 * film.reflectance),
                    1e-14);
    });
}

TEST(KubelkaMunk, DarkensWithAbsorptionAndLightensWithScatteringOverBlack) {
    double darker = 2;
    double lighter = -1;
    for (double amount = 0; amount < 5; amount += 0.25) {
        const double withK = reflectanceOver(0.85, {amount, 0.2}, 1);
        const double withS = reflectanceOver(0, {0.2, amount}, 1);
        EXPECT_LT(withK, darker);
        EXPECT_GT(withS, lighter);
        darker = withK;
        lighter = withS;
    }
}

TEST(KubelkaMunk, RecoversWhatMadeTheReadings) {
    int recovered = 0;
    forFilms([&](const FilmOptics& optics, double x) {
        const TwoBackings readings{reflectanceOver(0.04, optics, x),
                                   reflectanceOver(0.86, optics, x), 0.04, 0.86};
        // Where next to nothing shines through, the digits that tell are gone.
        if (x < 0.1 || readings.overWhite - readings.overBlack < 1e-3)
            return;
        const FilmOptics found = opticsFrom(readings, x);
        EXPECT_NEAR(found.absorption * x, optics.absorption * x, 1e-10);
        EXPECT_NEAR(found.scattering * x, optics.scattering * x, 1e-10);
        ++recovered;
    });
    EXPECT_GT(recovered, 50);
}

TEST(KubelkaMunk, CrossesTheSurfaceBothWays) {
    for (const double share : {0.0, 0.4, 1.0})
        for (const double k2 : {0.0, 0.4, 0.6, 0.95})
            for (double inside = 0; inside <= 1; inside += 0.05) {
                const FilmSurface surface{0.04, k2, share};
                EXPECT_NEAR(insideOf(measuredOf(inside, surface), surface), inside, 1e-12);
            }
    EXPECT_EQ(measuredOf(0.3, {0, 0, 0}), 0.3);
    EXPECT_EQ(FilmSurface{}.outerReflection, 0.04);
    EXPECT_EQ(FilmSurface{}.innerReflection, 0.60);
    EXPECT_EQ(FilmSurface{}.specularShare, 0);
}

TEST(KubelkaMunk, LoosensByTheSpreadOfTheReadings) {
    // A clear film, read 0.001 too dark over black and 0.002 too light over white.
    const FilmOptics clear = opticsFrom({0.0390, 0.8620, 0.04, 0.86}, 2, 0.002);
    EXPECT_EQ(clear.scattering, 0);
    EXPECT_EQ(clear.absorption, 0);
    const FilmOptics tinted = opticsFrom({0.0150, 0.3440, 0.04, 0.86}, 2, 0.002);
    EXPECT_EQ(tinted.scattering, 0);
    EXPECT_NEAR(tinted.absorption, -std::log(0.4) / 4, 1e-12);
}

}  // namespace
}  // namespace rackbook
