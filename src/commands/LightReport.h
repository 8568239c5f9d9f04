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

struct LayerLight {
    int layer = -1;  // of the history
    TimeSpan pulled;
    LightDose dose;  // since then
};

struct LightHad {
    std::size_t row = 0;  // of the readiness
    DoseSince dose;       // since the last extender-rich layer, where there is one
    std::vector<LayerLight> layers;
};

struct LightFacts {
    const History& history;
    const std::vector<ImpressionLabel>& labels;
    const HouseRules& rules;
    const Readiness& readiness;
    DoseLedger& ledger;
    bool givesRules = false;
    std::vector<LightHad> impressions;  // with an extender-rich layer
    std::vector<LightHad> notAffected;  // without
};

void printLight(Console& console, const LightFacts& facts);

Tree lightTree(const LightFacts& facts);

}  // namespace rackbook
