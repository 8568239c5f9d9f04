// What the ink of every pull says about readiness: base and drier.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
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

// Which house rule the days in light come from.
enum class LightRule : std::uint8_t {
    withDrier,     // lightDays
    withoutDrier,  // lightDaysCareful: that ink held no drier, or next to none
    drierNotKnown  // lightDaysCareful: not known whether it held drier
};

// By the house rule drierLeastShare.
LightRule lightRuleOf(const Estimate& drierShare, double drierLeastShare);

// By position of the pull. The ledger's share of base decides where it can; where it cannot, the
// layer's remembered share does.
std::vector<PullInk> inkOfPulls(const History& history, const HouseRules& rules);

struct LastRichPull {
    std::optional<std::uint32_t> pull;  // the last certainly extender-rich one
    // One that may be rich came to it too, or the day of a rich one is badly known.
    bool isDoubtful = false;
};

// Of the pulls of an impression up to asOf.
LastRichPull lastRichPullOf(const History& history, const std::vector<PullInk>& inks,
                            std::size_t impression, CivilMinute asOf);

}  // namespace rackbook
