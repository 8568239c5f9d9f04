// What looks at prints say of the dose at which their colour returned.
#pragma once

#include <cstdint>
#include <vector>

#include "calc/DoseLedger.h"
#include "calc/PullInk.h"
#include "calc/ThresholdLooks.h"
#include "records/HouseRules.h"

namespace rackbook {

// Prints of one pull that hung together and were looked at together are one observation, however
// many they are. Positions are those of the history.
struct ReturnLook {
    std::uint32_t pull = 0;  // the extender-rich one that it speaks of
    // Of the first of the impressions: the last that did not find the colour true, the first that
    // did; -1 where there is none.
    int notYetLook = -1;
    int trueLook = -1;
    ThresholdObservation observed;
    std::vector<std::uint32_t> impressions;
};

// Of the last extender-rich pull of each impression that had none that may have been, where the
// doses at the looks have a best value and the pull and the looks are known to the day. A first
// look that finds the colour true counts only after `lightDays`: fresh ink looks true before it
// turns. What was found after the first true look says nothing more of the threshold. In the order
// of impressions.
std::vector<ReturnLook> returnLooksOf(const History& history, const std::vector<PullInk>& inks,
                                      const HouseRules& rules, DoseLedger& ledger,
                                      CivilMinute asOf);

}  // namespace rackbook
