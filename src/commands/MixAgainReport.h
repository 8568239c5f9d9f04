// What mix-again says: on the screen, step by step, and as JSON.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "commands/MixAgainPlan.h"

namespace rackbook {

// How the balance is called: "Kitchen balance, 0.1 g".
void printMixAgain(Console& console, const InkBook& ink, const MixAgain& again,
                   const std::string& balanceWords);

void addMixAgain(Tree& report, const InkBook& ink, const MixAgain& again);

}  // namespace rackbook
