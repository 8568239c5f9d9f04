// What rackbook match says.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "commands/MatchPlan.h"

namespace rackbook {

void printMatch(Console& console, const InkBook& ink, const Match& match);

void addMatch(Tree& report, const InkBook& ink, const Match& match);

}  // namespace rackbook
