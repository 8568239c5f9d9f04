#include "calc/InkFilm.h"

#include <gtest/gtest.h>

#include <cmath>

#include "FactRows.h"
#include "InventedInks.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using namespace test;

InkOptics evenInk(double absorption_m2g, double scattering_m2g) {
    return {evenly(absorption_m2g), evenly(scattering_m2g)};
}

void expectBands(const Bands& found, const Bands& expected, double tolerance) {
    for (std::size_t band = 0; band < bandCount; ++band)
        EXPECT_NEAR(found[band], expected[band], tolerance) << wavelengthOf_nm(band);
}

// Kubelka, Munk 1931 and Kubelka 1948: rows of the table at 40 digits.
TEST(InkFilm, GivesTheFilmsOfTheTable) {
    int checked = 0;
    for (const FactRow& row : factRows("kubelka-munk.csv")) {
        const std::string& kind = row.text("case");
        if (kind != "film" && kind != "film_K0" && kind != "film_S0")
            continue;
        SCOPED_TRACE(row.text("case_id"));
        const auto in = valuesIn(row.text("input"));
        expectBands(filmOver(evenly(in.at("Rg")), evenInk(in.at("K"), in.at("S")), in.at("X")),
                    evenly(valuesIn(row.text("expected")).at("R")), 1e-10);
        ++checked;
    }
    EXPECT_EQ(checked, 13);
}

// Rows 29 and 30 of the table: order matters through S only.
TEST(InkFilm, LaysOneFilmOverAnother) {
    const Bands paper = evenly(0.85);
    const InkOptics pale = evenInk(0.05, 0.02);
    const InkOptics deep = evenInk(0.5, 0.02);
    expectBands(filmOver(filmOver(paper, pale, 1), deep, 1), evenly(0.287240711716), 1e-10);
    expectBands(filmOver(filmOver(paper, deep, 1), pale, 1), evenly(0.295266710093), 1e-10);
}

// Rows 32 to 34 (Duncan 1940: K and S add by share).
TEST(InkFilm, MixesPasteAndExtenderAsTheTableDoes) {
    const std::vector<InkOptics> lots = {evenInk(12, 0.8), evenInk(0.004, 0.01)};
    const double shares[] = {0.03, 0.1, 0.5};
    const double expected[] = {0.415119559161, 0.0979732914014, 0.0316400383027};
    for (int i = 0; i < 3; ++i) {
        const InkOptics mix = mixedOf({{0, shares[i]}, {1, 1 - shares[i]}}, lots);
        expectBands(filmOver(evenly(0.85), mix, 1), evenly(expected[i]), 1e-10);
    }
}

// Row 58: paper through the surface, film, and out again.
TEST(InkFilm, GoesThroughTheSurfaceAndBackAsTheTableDoes) {
    const FilmSurface surface{0.04, 0.6, 1};
    const Bands inside = insideOf(evenly(0.85), surface);
    expectBands(inside, evenly(0.931034482759), 1e-10);
    const Bands film = filmOver(inside, evenInk(0.3638, 0.0337), 1);
    expectBands(film, evenly(0.453375903587), 1e-10);
    expectBands(measuredOf(film, surface), evenly(0.279151724488), 1e-10);
}

// Kubelka 1948: films in optical contact add up.
TEST(InkFilm, IsTheSameLaidInOneOrInTwo) {
    const Bands paper = insideOf(whitePaper(), {});
    for (const InkOptics& ink : inventedOptics())
        for (const double weight_gm2 : {0.2, 4.0, 30.0}) {
            const Bands once = filmOver(paper, ink, weight_gm2);
            expectBands(filmOver(paper, ink, 2 * weight_gm2), filmOver(once, ink, weight_gm2),
                        1e-12);
        }
}

TEST(InkFilm, MixesALotWithItselfToThatLot) {
    const std::vector<InkOptics> optics = inventedOptics();
    const InkOptics parts = mixedOf({{deepBlue, 0.3}, {deepBlue, 0.7}}, optics);
    const InkOptics alone = mixedOf({{deepBlue, 1}}, optics);
    expectBands(parts.absorption_m2g, alone.absorption_m2g, 1e-15);
    expectBands(parts.scattering_m2g, alone.scattering_m2g, 1e-15);
    EXPECT_EQ(alone.absorption_m2g, optics[deepBlue].absorption_m2g);
    EXPECT_EQ(alone.scattering_m2g, optics[deepBlue].scattering_m2g);
}

TEST(InkFilm, MixesInAnyOrder) {
    const std::vector<InkOptics> optics = inventedOptics();
    const InkOptics one = mixedOf({{clearBase, 0.6}, {coldRed, 0.1}, {deepBlue, 0.3}}, optics);
    const InkOptics other = mixedOf({{deepBlue, 0.3}, {clearBase, 0.6}, {coldRed, 0.1}}, optics);
    expectBands(one.absorption_m2g, other.absorption_m2g, 1e-15);
    expectBands(one.scattering_m2g, other.scattering_m2g, 1e-15);
    EXPECT_EQ(mixedOf({}, optics).absorption_m2g, evenly(0));
}

TEST(InkFilm, LeavesWhatIsBelowWhereItDoesNothing) {
    const Bands paper = insideOf(whitePaper(), {});
    for (const double weight_gm2 : {0.0, 5.0, 1e6})
        expectBands(filmOver(paper, {}, weight_gm2), paper, 1e-15);
    expectBands(filmOver(paper, inventedOptics()[deepBlue], 0), paper, 1e-15);
}

TEST(InkFilm, StaysBetweenBlackAndWhite) {
    for (const double k : {0.0, 1e-9, 0.1, 1e3})
        for (const double s : {0.0, 1e-9, 0.1, 1e3, 1e12})
            for (const double below : {0.0, 0.5, 1.0})
                for (const double over : filmOver(evenly(below), evenInk(k, s), 7)) {
                    EXPECT_GE(over, 0);
                    EXPECT_LE(over, 1);
                }
}

TEST(InkFilm, UndoesTheSurface) {
    for (const FilmSurface& surface : {FilmSurface{}, FilmSurface{0.04, 0.6, 1},
                                       FilmSurface{0, 0, 0}, FilmSurface{0.05, 0.4, 0.3}})
        for (double inside = 0; inside <= 1; inside += 0.125)
            expectBands(insideOf(measuredOf(evenly(inside), surface), surface), evenly(inside),
                        1e-12);
}

// Paper with brighteners sends back more than falls on it.
TEST(InkFilm, TakesPaperThatPassesWhiteAsWhite) {
    Bands paper = whitePaper();
    paper[6] = 1.07;
    const Bands inside = insideOf(paper, {});
    EXPECT_EQ(inside[6], 1);
    EXPECT_LT(inside[5], 1);
    EXPECT_LT(inside[7], 1);
    EXPECT_EQ(insideOf(evenly(1.2), {0.04, 0.6, 1}), evenly(1));
}

TEST(InkFilm, TakesWhatIsDarkerThanItsSurfaceAsBlack) {
    const FilmSurface glossSeen{0.04, 0.6, 1};
    EXPECT_EQ(insideOf(evenly(0.02), glossSeen), evenly(0));
    EXPECT_EQ(insideOf(evenly(-0.01), {}), evenly(0));
}

TEST(InkFilm, RefusesAWrongSurfaceAndWhatIsNoNumber) {
    EXPECT_EQ(messageOf<InputError>([] {
                  insideOf(evenly(0.5), {0.04, 1, 0});
              }),
              "surface: the surface would reflect 1. Give k1 and k2 as fractions of 0 or more and "
              "below 1, such as 0.04 and 0.6.");
    EXPECT_EQ(messageOf<InputError>([] {
                  insideOf(evenly(0.5), {0.04, 0.6, -1});
              }),
              "surface: the share of the gloss is -1. Give a fraction: 0 for 45°/0°, 1 for a "
              "sphere with gloss included.");
    EXPECT_NE(messageOf<InputError>([] { insideOf(evenly(std::nan("")), {}); }),
              "(nothing was thrown)");
    EXPECT_EQ(messageOf<InputError>([] { filmOver(evenly(0.5), evenInk(0.1, 0.1), -1); }),
              "film: the film weight is -1. Give 0 or more.");
    EXPECT_EQ(messageOf<InputError>([] { filmOver(evenly(1.1), evenInk(0.1, 0.1), 1); }),
              "film: the reflectance of the backing is 1.1. Give a fraction, 0 to 1.");
}

}  // namespace
}  // namespace rackbook
