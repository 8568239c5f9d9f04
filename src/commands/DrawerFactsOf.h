// The facts of drawers' sheets, from what rackbook drawers computes.
#pragma once

#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "records/RecordSet.h"
#include "sheets/DrawerFacts.h"

namespace rackbook {

struct DrawerWithFacts {
    std::string place;                     // id
    std::vector<std::string> impressions;  // ids of what lies there
    DrawerFacts facts;
};

// The place itself or the drawers within it, those to be aired first coming first, then by name.
// Throws UsageError where there is no drawer, no box and no print in a dark place.
std::vector<DrawerWithFacts> drawersWithFactsOf(const RecordSet& records, const Place& place,
                                                CivilMinute asOf);

}  // namespace rackbook
