// The real program, run with a fault at one of its writing calls.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace rackbook::faults {

enum class Outcome { ended, killed, hung };

struct Run {
    Outcome outcome = Outcome::ended;
    int exitCode = 0;
    std::string said;                // standard output, then standard error
    std::vector<std::string> calls;  // that changed something below the folder, in order
};

// Runs `words` (the verb first) in the current folder. `kind` as FaultyCalls.cpp names it, at the
// call `at` from 1; 0: nothing fails. After 60 s it is killed and counts as hung.
Run runProgramWith(const std::vector<std::string>& words, const std::string& kind = {},
                   std::size_t at = 0);

// Regular files below the current folder, by their paths, with their bytes. Links are left out.
using FolderImage = std::map<std::string, std::string>;
FolderImage imageOfFolder();
// Makes the current folder what it was then. Links stay.
void restoreFolder(const FolderImage& image);

}  // namespace rackbook::faults
