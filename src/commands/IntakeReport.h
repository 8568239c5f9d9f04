// What an intake did, for the screen.
#pragma once

#include <string>

#include "cli/Console.h"
#include "commands/Recording.h"

namespace rackbook {

// How many records of each kind are new, changed and so on, and where they went.
void printTally(Console& console, const IntakeTally& tally, bool dryRun, const std::string& book);

}  // namespace rackbook
