// Whether what a program wrote outlives a cut of the power: read from the calls it made.
#pragma once

#include <string>
#include <vector>

namespace rackbook::faults {

// Every file is synced after it was last written, and before it gets its name; every folder after
// a file in it got a name. One sentence for each that is not. Lock files and SQLite's shared
// memory, which nobody needs after a cut, are left out.
std::vector<std::string> notDurable(const std::vector<std::string>& calls);

}  // namespace rackbook::faults
