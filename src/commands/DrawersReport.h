// What drawers and boxes hold, as text and as JSON.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"
#include "cli/Console.h"
#include "commands/DrawersPlan.h"

namespace rackbook {

// Refers to its parts, which must outlive it.
struct DrawersFacts {
    const History& history;
    const std::vector<ImpressionLabel>& labels;
    const HouseRules& rules;
    const Readiness& readiness;
    const DrawersPlan& plan;
    bool inDetail = false;    // impression by impression
    bool isFiltered = false;  // only some prints count
};

// A table, what was put away without being known to be dry, and the house rule.
void printDrawers(Console& console, const DrawersFacts& facts);

// {"on", "airing_days", "atRisk": how many, "drawers": […], "houseRules"}. A drawer has "place",
// "name", "capacity" (impressions, null where it has none), "lying" (how many), "overCapacity",
// "atRisk" (how many), "nextAiring" (a day, null where nothing is at risk, or where something is to
// be brought out now or the beginning of the dark is open: "airingDue" is true then), "airingDue",
// "impressions" and "notKnownDry". An impression has "impression" (id),
// "edition", "workingNumber", "spoiled", "verdict" (null where spoiled), "atRisk", "since" (in this
// drawer), "darkSince" (both "earliest" and "latest"), "airing" (a day, or null as above),
// "airingDue", "interleaved", "perhapsElsewhere", "touch" (wet, tacky, dry by the last look before
// it was put there, or null) and "touchLookOn", "foundDrySinceOn" (days or null). An entry of
// "notKnownDry" has "impressions" (ids), "putAway", "interleaved", "touch", "besideThen" and
// "besideNow", each of those a list of {"impression", "interleaved"}.
Tree drawersTree(const DrawersFacts& facts);

}  // namespace rackbook
