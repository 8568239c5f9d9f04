// What rackbook light says.
#pragma once

#include <vector>

#include "base/Tree.h"
#include "calc/DoseLedger.h"
#include "calc/Readiness.h"
#include "cli/Console.h"
#include "records/HouseRules.h"
#include "store/HistoryQuery.h"

namespace rackbook {

// One impression with an extender-rich layer.
struct LightHad {
    std::size_t row = 0;  // of the readiness
    DoseSince dose;
};

struct LightFacts {
    const History& history;
    const std::vector<ImpressionLabel>& labels;
    const HouseRules& rules;
    const Readiness& readiness;
    std::vector<LightHad> impressions;
    std::vector<std::size_t> notAffected;  // rows of those without an extender-rich layer
    double sunnyDay_Whm2 = 0;              // what the doses are compared with
};

void printLight(Console& console, const LightFacts& facts);

Tree lightTree(const LightFacts& facts);

}  // namespace rackbook
