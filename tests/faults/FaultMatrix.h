// Every writing command, every fault, every writing call: what must hold after each.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "WritingVerbs.h"

namespace rackbook::faults {

struct MatrixCounts {
    std::size_t commands = 0;
    std::size_t calls = 0;  // writing calls of the commands where nothing fails
    std::size_t cases = 0;  // runs with a fault
    std::size_t killed = 0;
    std::size_t refused = 0;       // ended with a message
    std::size_t acknowledged = 0;  // ended well all the same
    std::vector<std::string> failures;

    void add(const MatrixCounts& other);
};

// Runs one command with at most `bound` faults, spread over all there are; 0: with all of them.
MatrixCounts runMatrix(const WritingCommand& command, std::size_t bound);

}  // namespace rackbook::faults
