// What mix-again says: on the screen, step by step, and as JSON.
#pragma once

#include <optional>
#include <string>

#include "base/Tree.h"
#include "cli/Console.h"
#include "commands/MixAgainPlan.h"

namespace rackbook {

// The balance as it is called, and the most it carries, where that is known.
void printMixAgain(Console& console, const InkBook& ink, const MixAgain& again,
                   const std::string& balanceWords, std::optional<double> capacity_g);

void addMixAgain(Tree& report, const InkBook& ink, const MixAgain& again);

}  // namespace rackbook
