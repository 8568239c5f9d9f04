// What the ink of every pull says about readiness: base and drier.
#pragma once

#include <cstdint>
#include <vector>

#include "calc/Estimate.h"
#include "records/History.h"
#include "records/HouseRules.h"

namespace rackbook {

enum class Richness : std::uint8_t { notRich, maybe, rich };

struct PullInk {
    Richness richness = Richness::maybe;
    bool remembered = false;  // extenderShare is the layer's remembered one
    Estimate extenderShare = Estimate::anyShare();
    Estimate drierShare = Estimate::anyShare();
};

// By position of the pull. The ledger's share of base decides where it can; where it cannot, the
// layer's remembered share does.
std::vector<PullInk> inkOfPulls(const History& history, const HouseRules& rules);

}  // namespace rackbook
