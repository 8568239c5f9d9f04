// A quantity between two bounds, with its best value where one is known.
#pragma once

#include <cmath>
#include <limits>

#include "records/History.h"

namespace rackbook {

// low ≤ best ≤ high. best is notKnown where nothing between the bounds is likelier than the rest;
// high may be infinite.
struct Estimate {
    double low = 0;
    double best = notKnown;
    double high = std::numeric_limits<double>::infinity();

    bool isKnown() const { return !std::isnan(best); }
    static Estimate exactly(double value) { return {value, value, value}; }
    static Estimate anyShare() { return {0, notKnown, 1}; }
    static Estimate anyMass() { return {}; }
};

}  // namespace rackbook
