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

// {"on", "sunnyDay_Whm2", "impressions": […], "notAffected": […], "houseRules"}. An impression has
// "impression" (id), and in the first list "layer", "pulled", "dose" ("nearUltraviolet_Whm2" and
// "sunnyDays", each "low", "best", "high"), "returnedChance" (0 … 1; null where there is none to
// tell) and "returnedChanceWhy" (told, foundTrue, datesTooWide, lightNotKnown), "foundTrueOn"
// ("earliest" and "latest" of the last look, null but where foundTrue), "stays", and "plot" where
// it is the only one; in both lists "layers".
Tree lightTree(const LightFacts& facts);

}  // namespace rackbook
