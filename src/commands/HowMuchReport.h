// What how-much says, on the screen and as JSON.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "commands/HowMuchPlan.h"

namespace rackbook {

void printHowMuch(Console& console, const InkBook& ink, const HowMuch& much);

void addHowMuch(Tree& report, const InkBook& ink, const HowMuch& much);

}  // namespace rackbook
