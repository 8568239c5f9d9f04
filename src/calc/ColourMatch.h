// Recipes from the lots that are there which come nearest to a colour.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "calc/Characterisation.h"
#include "calc/ColourTarget.h"

namespace rackbook {

struct MatchQuestion {
    const Characterisation& inks;
    ColourTarget target;
    std::vector<int> colours;         // lots that may be taken, each known to `inks`
    int base = -1;                    // the lot they are let down in; -1: none
    std::vector<LotShare> held;       // what goes in whatever the colours are, such as drier
    std::optional<double> baseShare;  // of the whole ink, where it is fixed; 0 … 1
    double filmWeightLeast_gm2 = 0;   // above 0; equal to the greatest where it is fixed
    double filmWeightGreatest_gm2 = 0;
    Bands paper{};  // as measured
    std::size_t mostColours = 4;
};

struct MatchFound {
    std::vector<LotShare> shares;  // of the whole ink, adding up to 1, by lot
    double filmWeight_gm2 = 0;
    Bands predicted{};   // as it would be measured
    double opacity = 0;  // contrast ratio: its Y over black by its Y over white, 0 … 1
    ColourMiss miss;
};

// The best first, each of other lots; one that needs more colours is there only where it comes
// nearer by 0.25 in ΔE00 than one with fewer of the same. At most `most`. Throws InputError where
// no lots are given, the shares that are held leave no room or are below 0, a share of no base is
// fixed, or the target is not a number.
std::vector<MatchFound> matchesFor(const MatchQuestion& question, std::size_t most);

// What an ink would be measured as over paper.
Bands predictedOver(const Bands& paper, const std::vector<LotShare>& shares, double filmWeight_gm2,
                    const Characterisation& inks);

}  // namespace rackbook
