// Invented lots for the tests of colour: a base, a drier and twelve inks. None was ever measured;
// strengths are of the order that a few grams of ink on a square metre need.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "calc/Characterisation.h"

namespace rackbook::test {

constexpr int clearBase = 0;
constexpr int honeyDrier = 1;
constexpr int firstInk = 2;
constexpr int inkCount = 12;
constexpr int coldYellow = firstInk;
constexpr int warmRed = firstInk + 3;
constexpr int coldRed = firstInk + 4;
constexpr int deepBlue = firstInk + 6;
constexpr int greenBlue = firstInk + 7;
constexpr int softBlack = firstInk + 10;
constexpr int thinWhite = firstInk + 11;

inline std::vector<LotKind> inventedKinds() {
    std::vector<LotKind> kinds(firstInk + inkCount, LotKind::ink);
    kinds[clearBase] = LotKind::base;
    kinds[honeyDrier] = LotKind::drier;
    return kinds;
}

// Where an ink absorbs: two humps over the wavelengths, and what it scatters.
struct InventedInk {
    double centre_nm;
    double width_nm;
    double height_m2g;
    double otherCentre_nm;
    double otherWidth_nm;
    double otherHeight_m2g;
    double scattering_m2g;
};

inline double hump(double at_nm, double centre_nm, double width_nm) {
    const double off = (at_nm - centre_nm) / width_nm;
    return std::exp(-off * off / 2);
}

inline InkOptics opticsOf(const InventedInk& ink) {
    InkOptics optics;
    for (std::size_t band = 0; band < bandCount; ++band) {
        const double at_nm = wavelengthOf_nm(band);
        optics.absorption_m2g[band] =
            0.004 + ink.height_m2g * hump(at_nm, ink.centre_nm, ink.width_nm) +
            ink.otherHeight_m2g * hump(at_nm, ink.otherCentre_nm, ink.otherWidth_nm);
        optics.scattering_m2g[band] = ink.scattering_m2g * (1.3 - 0.3 * (at_nm - 380) / 350);
    }
    return optics;
}

inline InkOptics inventedBase() {
    InkOptics optics;
    for (std::size_t band = 0; band < bandCount; ++band) {
        optics.absorption_m2g[band] = 0.0006 + 0.006 * std::exp((380 - wavelengthOf_nm(band)) / 35);
        optics.scattering_m2g[band] = 0.0015;
    }
    return optics;
}

inline InkOptics inventedDrier() {
    InkOptics optics;
    for (std::size_t band = 0; band < bandCount; ++band) {
        optics.absorption_m2g[band] = 0.002 + 0.05 * std::exp((380 - wavelengthOf_nm(band)) / 70);
        optics.scattering_m2g[band] = 0.002;
    }
    return optics;
}

// By lot: base, drier, inks.
inline std::vector<InkOptics> inventedOptics() {
    const std::vector<InventedInk> inks = {
        {425, 35, 1.30, 400, 60, 0.30, 0.030},  {450, 40, 1.10, 390, 40, 0.60, 0.035},
        {475, 45, 1.00, 420, 50, 0.70, 0.030},  {515, 40, 1.10, 440, 60, 0.60, 0.025},
        {545, 32, 1.20, 420, 40, 0.15, 0.015},  {570, 45, 0.90, 520, 60, 0.35, 0.012},
        {610, 45, 1.30, 570, 50, 0.40, 0.010},  {655, 60, 1.20, 600, 30, 0.30, 0.010},
        {645, 40, 1.00, 425, 35, 0.55, 0.020},  {400, 110, 0.60, 520, 90, 0.20, 0.040},
        {560, 300, 0.90, 400, 60, 0.10, 0.015}, {390, 20, 0.03, 500, 200, 0.001, 0.140}};
    std::vector<InkOptics> optics = {inventedBase(), inventedDrier()};
    for (const InventedInk& ink : inks)
        optics.push_back(opticsOf(ink));
    return optics;
}

// As if every lot had been learnt without error.
inline Characterisation knownInks() {
    Characterisation known;
    known.optics = inventedOptics();
    for (std::size_t lot = 0; lot < known.optics.size(); ++lot) {
        LotOptics its;
        its.lot = static_cast<int>(lot);
        its.optics = known.optics[lot];
        known.lots.push_back(its);
    }
    return known;
}

inline std::vector<int> allInks() {
    std::vector<int> lots;
    for (int ink = 0; ink < inkCount; ++ink)
        lots.push_back(firstInk + ink);
    return lots;
}

// As measured.
inline Bands whitePaper() {
    Bands paper{};
    for (std::size_t band = 0; band < bandCount; ++band)
        paper[band] = 0.87 - 0.12 * std::exp((380 - wavelengthOf_nm(band)) / 40);
    return paper;
}

inline Bands blackCard() {
    Bands card{};
    card.fill(0.045);
    return card;
}

// What an instrument without error would read.
inline Bands readingOver(const Bands& backing, const std::vector<LotShare>& shares,
                         double filmWeight_gm2, const FilmSurface& surface = {}) {
    return measuredOf(
        filmOver(insideOf(backing, surface), mixedOf(shares, inventedOptics()), filmWeight_gm2),
        surface);
}

inline DrawdownSample drawdownOf(const std::string& id, const std::vector<LotShare>& shares,
                                 double filmWeight_gm2,
                                 const std::vector<Bands>& backings = {whitePaper(), blackCard()},
                                 const FilmSurface& surface = {}) {
    DrawdownSample sample{id, shares, filmWeight_gm2, {}};
    for (const Bands& backing : backings)
        sample.over.push_back({backing, readingOver(backing, shares, filmWeight_gm2, surface)});
    return sample;
}

inline std::vector<LotShare> letDown(int ink, double share) {
    return {{clearBase, 1 - share}, {ink, share}};
}

// The same numbers on every machine, which the distributions of the standard library are not.
class Chance {
public:
    explicit Chance(std::uint32_t seed) : m_random(seed) {}

    double between(double least, double greatest) {
        return least + (greatest - least) * (static_cast<double>(m_random()) / 4294967295.0);
    }
    std::size_t below(std::size_t count) { return m_random() % count; }
    // Nearly normal, of spread 1: the sum of twelve even ones.
    double spread() {
        double sum = -6;
        for (int i = 0; i < 12; ++i)
            sum += between(0, 1);
        return sum;
    }

private:
    std::mt19937 m_random;
};

inline Bands evenly(double value) {
    Bands bands{};
    bands.fill(value);
    return bands;
}

inline void expectOptics(const InkOptics& found, const InkOptics& expected, double shareOfK,
                         double shareOfS) {
    for (std::size_t band = 0; band < bandCount; ++band) {
        SCOPED_TRACE(wavelengthOf_nm(band));
        EXPECT_NEAR(found.absorption_m2g[band], expected.absorption_m2g[band],
                    shareOfK * expected.absorption_m2g[band]);
        EXPECT_NEAR(found.scattering_m2g[band], expected.scattering_m2g[band],
                    shareOfS * expected.scattering_m2g[band]);
    }
}

}  // namespace rackbook::test
