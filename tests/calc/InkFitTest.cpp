#include "calc/InkFit.h"

#include <gtest/gtest.h>

#include <cmath>

#include "FactRows.h"
#include "InventedInks.h"

namespace rackbook {
namespace {

using namespace test;

FilmReading readingOf(const Bands& backing, const InkOptics& ink, double filmWeight_gm2,
                      double share = 1, const InkOptics& rest = {}) {
    InkOptics film = rest;
    for (std::size_t band = 0; band < bandCount; ++band) {
        film.absorption_m2g[band] += share * ink.absorption_m2g[band];
        film.scattering_m2g[band] += share * ink.scattering_m2g[band];
    }
    return {filmWeight_gm2, share, rest, backing, filmOver(backing, film, filmWeight_gm2)};
}

// Kubelka 1948: what made the readings of the table, of films over black and over white. The pull
// towards a usual S costs about 1e-6 beside readings without error: it moves K and S by less than
// a thousandth where S shows in them. In the last film S·X is 0.0006, which changes the reading
// over black by 0.0006: there the pull wins over S, and K, which shows over white, stays within 4
// %.
TEST(InkFit, RecoversWhatMadeTheReadingsOfTheTable) {
    int checked = 0;
    for (const FactRow& row : factRows("kubelka-munk.csv")) {
        if (row.text("case") != "recover_KS")
            continue;
        SCOPED_TRACE(row.text("case_id"));
        const auto in = valuesIn(row.text("input"));
        const auto out = valuesIn(row.text("expected"));
        const bool isAlmostClear = out.at("S") < 0.001;
        for (const FilmSurface& surface : {FilmSurface{}, FilmSurface{0, 0, 0}}) {
            const InkOptics found =
                fittedOptics({{in.at("X"), 1, {}, evenly(0.04), evenly(in.at("Rblack"))},
                              {in.at("X"), 1, {}, evenly(0.86), evenly(in.at("Rwhite"))}},
                             surface, 1e-2);
            expectOptics(found, {evenly(out.at("K")), evenly(out.at("S"))},
                         isAlmostClear ? 0.04 : 0.001, isAlmostClear ? 1 : 0.001);
        }
        ++checked;
    }
    EXPECT_EQ(checked, 4);
}

TEST(InkFit, RecoversInksLetDownInBase) {
    const std::vector<InkOptics> lots = inventedOptics();
    const Bands white = insideOf(whitePaper(), {});
    const Bands black = insideOf(blackCard(), {});
    for (const int ink : {coldYellow, greenBlue}) {
        std::vector<FilmReading> readings;
        for (const double share : {0.03, 0.25})
            for (const Bands& backing : {white, black})
                readings.push_back(readingOf(backing, lots[static_cast<std::size_t>(ink)], 6, share,
                                             mixedOf({{clearBase, 1 - share}}, lots)));
        expectOptics(fittedOptics(readings, {}, 1e-2), lots[static_cast<std::size_t>(ink)], 0.005,
                     0.01);
    }
}

TEST(InkFit, DoesNotMindTheOrderOfReadings) {
    const InkOptics ink = inventedOptics()[coldRed];
    const std::vector<FilmReading> readings = {readingOf(evenly(0.9), ink, 3),
                                               readingOf(evenly(0.05), ink, 3),
                                               readingOf(evenly(0.9), ink, 0.5)};
    const InkOptics one = fittedOptics(readings, {}, 1e-2);
    const InkOptics other = fittedOptics({readings[2], readings[0], readings[1]}, {}, 1e-2);
    expectOptics(one, other, 1e-3, 1e-3);
}

TEST(InkFit, HoldsTheScatteringOfAnInkReadOnce) {
    InkOptics ink = inventedOptics()[coldRed];
    ink.scattering_m2g = evenly(0.012);
    const FilmReading reading = readingOf(evenly(0.9), ink, 3);
    expectOptics(fittedOptics({reading}, {}, 0.012), ink, 0.001, 1e-9);
    // Next to without scattering, Beer's law: K = ln(Rg/R)/(2X).
    const InkOptics clear = fittedOptics({reading}, {}, 1e-7);
    for (std::size_t band = 0; band < bandCount; ++band) {
        EXPECT_NEAR(clear.scattering_m2g[band], 1e-7, 1e-12);
        const double k = std::log(0.9 / reading.film[band]) / 6;
        EXPECT_NEAR(clear.absorption_m2g[band], k, 0.001 * k);
    }
}

// S makes next to no difference in a film that lets all light through over a backing that sends
// nearly all of it back, nor is K told from nothing.
TEST(InkFit, TakesTheUsualScatteringWhereReadingsDoNotTell) {
    const Bands white = evenly(1);
    const InkOptics found = fittedOptics({{1, 1, {}, white, white}}, {}, 1e-2);
    for (std::size_t band = 0; band < bandCount; ++band) {
        EXPECT_NEAR(found.scattering_m2g[band], 0.01, 0.0005);
        EXPECT_NEAR(found.absorption_m2g[band], 0, 1e-4);
    }
}

TEST(InkFit, GivesNoLessThanNothingForReadingsThatNoFilmGives) {
    const Bands white = evenly(0.8);
    const Bands black = evenly(0.05);
    for (const double overWhite : {0.0, 0.5, 0.85, 1.0})
        for (const double overBlack : {0.0, 0.04, 0.9}) {
            const InkOptics found = fittedOptics(
                {{5, 1, {}, white, evenly(overWhite)}, {5, 1, {}, black, evenly(overBlack)}}, {},
                1e-2);
            for (std::size_t band = 0; band < bandCount; ++band) {
                EXPECT_TRUE(std::isfinite(found.absorption_m2g[band]));
                EXPECT_TRUE(std::isfinite(found.scattering_m2g[band]));
                EXPECT_GE(found.absorption_m2g[band], 0);
                EXPECT_GE(found.scattering_m2g[band], 0);
            }
        }
}

// Two readings of one film that differ: the fit lies between them, as least squares does.
TEST(InkFit, LiesBetweenReadingsThatDisagree) {
    const InkOptics ink{evenly(0.1), evenly(0.02)};
    const FilmReading exact = readingOf(evenly(0.9), ink, 4);
    FilmReading darker = exact;
    FilmReading lighter = exact;
    for (std::size_t band = 0; band < bandCount; ++band) {
        darker.film[band] -= 0.01;
        lighter.film[band] += 0.01;
    }
    const FilmReading black = readingOf(evenly(0.05), ink, 4);
    const InkOptics found = fittedOptics({darker, lighter, black}, {}, 1e-2);
    for (const double reflectance : filmOver(evenly(0.9), found, 4))
        EXPECT_NEAR(reflectance, exact.film[0], 0.002);
}

}  // namespace
}  // namespace rackbook
