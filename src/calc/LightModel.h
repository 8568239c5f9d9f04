// What readiness asks about the light of a studio.
#pragma once

#include "calc/DoseLedger.h"
#include "calc/LightWanted.h"

namespace rackbook {

// All must outlive it. Wanted light and inks are by position of pulls of the history that is
// judged.
struct LightModel {
    DoseLedger& ledger;
    const LightWanted& wanted;
    const std::vector<PullInk>& inks;
};

}  // namespace rackbook
