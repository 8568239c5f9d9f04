// How the program itself grows with the book: verbs as a user gives them, on books of several
// sizes, each beside the bare engine.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

struct ScaleBenchTerms {
    std::string program;  // rackbook
    std::string self;     // this bench, which is started anew for each piece of work
    std::string folder;   // books of those sizes are looked for there, and made where missing
    std::vector<int> impressions;
};

// Prints a table for each size: wall-clock and processor time and highest memory, of a process of
// its own each. Throws where a verb fails.
void measureScale(const ScaleBenchTerms& terms);

// What the bare engine does beside the verb of that name; to be run in a process of its own.
void runBare(const std::string& verb, const std::string& bookPath);

}  // namespace rackbook
