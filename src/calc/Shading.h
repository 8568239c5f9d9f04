// What to add to a batch whose test drawdown was measured, so that it comes nearest to the colour
// it is to have.
//
// The model is not trusted for the colour itself, only for the change: what it predicts is brought
// to the reading of the test, band by band by their ratio, where it is darker than 0.001 by their
// difference (of a test that is known as CIELAB only, the difference of those), and the same
// correction is taken to hold once something was added.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "calc/Characterisation.h"
#include "calc/ColourTarget.h"

namespace rackbook {

struct ShadingQuestion {
    const Characterisation& inks;
    std::vector<LotShare> shares;  // of the batch in hand, adding up to 1
    double mass_g = 0;             // of it, above 0
    double filmWeight_gm2 = 0;     // of the test drawdown, above 0
    Bands paper{};                 // below it, as measured
    ColourTarget test;             // what was read of it
    ColourTarget target;
    std::vector<int> additions;  // lots that may go in, inks and base
    std::size_t mostAdditions = 2;
    double greatestGrowth = 1;  // grams added of one lot for a gram of the batch, at most
};

struct Addition {
    int lot = -1;
    double mass_g = 0;  // above 0
};

struct Shaded {
    std::vector<Addition> additions;
    std::vector<LotShare> shares;  // of what it becomes, by lot
    Lab expected_D50;
    std::optional<Bands> expected;  // where the test was known as a spectrum
    ColourMiss miss;
};

// The batch with those additions. Throws InputError where the batch or the test is wrong.
Shaded shadedWith(const ShadingQuestion& question, const std::vector<Addition>& additions);

// The best first, each of other lots; one with more additions only where it comes nearer by 0.1 in
// ΔE00. At most `most`; none where nothing that may go in brings it nearer by that much. Throws as
// shadedWith.
std::vector<Shaded> shadings(const ShadingQuestion& question, std::size_t most);

}  // namespace rackbook
