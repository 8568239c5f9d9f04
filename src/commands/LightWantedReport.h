// What rackbook light-wanted says.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"
#include "calc/LightWanted.h"
#include "cli/Console.h"
#include "commands/ReadingDecay.h"

namespace rackbook {

struct LightWantedFacts {
    const History& history;
    const std::vector<ImpressionLabel>& labels;
    const std::vector<std::string>& lotIds;  // by position in the history
    const HouseRules& rules;
    CivilMinute asOf = 0;
    const LightWanted& wanted;
    const std::vector<ReadingDecay>& decays;
    bool givesRules = false;
};

void printLightWanted(Console& console, const LightWantedFacts& facts);

Tree lightWantedTree(const LightWantedFacts& facts);

}  // namespace rackbook
