// What put-right says, on the screen and as JSON.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "commands/PutRightPlan.h"

namespace rackbook {

void printPutRight(Console& console, const InkBook& ink, const PutRight& plan,
                   const std::optional<BalanceGiven>& balance);

void addPutRight(Tree& report, const InkBook& ink, const PutRight& plan,
                 const std::optional<BalanceGiven>& balance);

}  // namespace rackbook
