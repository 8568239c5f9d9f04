// A print's dose of light over time, to be plotted.
#pragma once

#include <vector>

#include "calc/DoseLedger.h"

namespace rackbook {

struct DosePoint {
    CivilMinute at = 0;
    LightDose dose;  // since the pull
};

// From the pull (its first moment, where that is known) up to asOf, in equal steps of whole days,
// no more than `mostPoints` (at least 2) of them; the last is asOf. Empty where the pull's first
// moment is open or not before asOf.
std::vector<DosePoint> doseCurveOf(DoseLedger& ledger, const std::vector<Stay>& stays,
                                   const TimeSpan& pulled, CivilMinute asOf,
                                   std::size_t mostPoints);

}  // namespace rackbook
