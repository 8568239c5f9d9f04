// How prints felt when they were put into a drawer, and what lay beside those that were not known
// to be dry. Part of DrawersPlan.
#pragma once

#include <vector>

#include "commands/DrawersPlan.h"

namespace rackbook {

struct StayOfPrint {
    int impression = -1;
    Stay stay;
};

// Fills what looks say of touch when the print's stay began, and since, from its impression and its
// stay. Only looks that were certainly made after the last pull before count.
void fillTouch(LyingPrint& print, const History& history, CivilMinute asOf);

// Those of `prints` that were not known to be dry, gathered where they were put away alike. `stays`
// are all stays at that place, of any print.
std::vector<PutAwaySoft> putAwaySoft(const std::vector<LyingPrint>& prints,
                                     const std::vector<StayOfPrint>& stays);

}  // namespace rackbook
