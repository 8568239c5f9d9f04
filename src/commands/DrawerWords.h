// Words for what lies in drawers. Part of DrawersReport.
#pragma once

#include <string>
#include <vector>

#include "commands/DrawersReport.h"

namespace rackbook {

// "EEL 3,11,17; BRK 2", in the order of editions in the history.
std::string printNames(const DrawersFacts& facts, const std::vector<int>& impressions);

// "6", "6 of 60", "62 of 60, over capacity".
std::string fillWords(const DrawerContents& drawer);

// "2026-03-01", "2019-05-04 to 2019-06-01", "by 1999-12-31": never the time of day.
std::string daysOf(const TimeSpan& span);

// "2026-03-31", "2026-03-31, due", "due". Empty where the print is not at risk.
std::string airingWords(const DrawersFacts& facts, const LyingPrint& print);

// How it felt when it was put there, and whether it was found dry since: "dry", "tacky",
// "no look, dry on 2026-03-09".
std::string touchWords(const DrawersFacts& facts, const LyingPrint& print);

// A sentence or two for prints that were put away without being known to be dry.
std::string softWords(const DrawersFacts& facts, const PutAwaySoft& soft);

}  // namespace rackbook
