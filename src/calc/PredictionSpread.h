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
    // How far off the drawdown of an ink that lays down most nearly as much of it was, predicted
    // from the others of that ink; the largest of the inks in it. Nothing where none could be
    // checked so.
    std::optional<double> inks_dE00;
    std::vector<int> uncheckedInks;  // lots
    std::vector<int> takenAsClear;   // lots that were never measured
    double together_dE00 = 0;        // root of the sum of squares (JCGM 100:2008, 5.1.2)
};

// One cause after the other is moved by its uncertainty, up and down; the larger distance counts.
PredictionSpread spreadOf(const SpreadQuestion& question, const std::vector<LotKind>& lotKinds);

}  // namespace rackbook
