// The mass that a weighing or a pull moved, in g, with its bounds.
#pragma once

#include <cmath>

#include "calc/Estimate.h"
#include "records/History.h"

namespace rackbook {

// A mass that was not recorded lies between 0 and infinity, or between its bounds.
inline Estimate massOf(const HistoryWeighing& weighing) {
    Estimate mass =
        std::isnan(weighing.mass_g) ? Estimate::anyMass() : Estimate::exactly(weighing.mass_g);
    if (!std::isnan(weighing.massLow_g))
        mass.low = weighing.massLow_g;
    if (!std::isnan(weighing.massHigh_g))
        mass.high = weighing.massHigh_g;
    return mass;
}

inline Estimate massOf(const HistoryPull& pull) {
    return std::isnan(pull.inkUsed_g) ? Estimate::anyMass() : Estimate::exactly(pull.inkUsed_g);
}

}  // namespace rackbook
