// How far a predicted colour may be off, by what is known of its causes.
#pragma once

#include <optional>
#include <vector>

#include "calc/Characterisation.h"

namespace rackbook {

struct SpreadQuestion {
    const Characterisation& inks;
    std::vector<LotShare> shares;
    // Standard uncertainty of each of the shares, absolute, in their order; empty: none.
    std::vector<double> shareUncertainties;
    double filmWeight_gm2 = 0;
    double filmWeightUncertainty_gm2 = 0;  // standard uncertainty, below the film weight
    Bands paper{};                         // as measured
};

// Each a standard uncertainty as a distance from the predicted colour, in ΔE00 under D50.
struct PredictionSpread {
    double filmWeight_dE00 = 0;
    double weighing_dE00 = 0;
    // For each lot, how far it moves the colour, times how well it is known (relativeError); of
    // several inks also how far they move it together, times how well drawdowns of mixes are
    // predicted; root of the sum of squares. Nothing where no ink of the studio's could be checked.
    std::optional<double> inks_dE00;
    std::vector<int> uncheckedLots;  // lots in it
    std::vector<int> takenAsClear;   // lots that were never measured
    double together_dE00 = 0;        // root of the sum of squares (JCGM 100:2008, 5.1.2)
};

// How well a lot is known, as a share of what it does (LotOptics::relativeError). One that was read
// and could not be checked counts as the worst known ink of the studio's; one that was never
// measured counts as known, and is told of (takenAsClear). Nothing where no ink could be checked.
std::optional<double> assumedRelativeError(const Characterisation& inks, int lot,
                                           const std::vector<LotKind>& lotKinds);

// One cause after the other is moved by its uncertainty, up and down; the larger distance counts.
// Of the shares, the largest follows from the others.
PredictionSpread spreadOf(const SpreadQuestion& question, const std::vector<LotKind>& lotKinds);

}  // namespace rackbook
