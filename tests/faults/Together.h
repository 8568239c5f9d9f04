// Several programs at one book at once, some of which are killed on the way.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace rackbook::faults {

struct TogetherCounts {
    std::size_t acknowledged = 0;  // entries that a writer was told are recorded
    std::size_t killed = 0;        // writers that were killed at work
    std::size_t reads = 0;
    long longest_ms = 0;  // that any one command took
    std::vector<std::string> failures;
};

// Each writer records places of its own one after the other for `time_s`, each reader counts them;
// a further one starts to record and is killed at a random moment, again and again.
TogetherCounts writeTogether(int writers, int readers, int time_s);

}  // namespace rackbook::faults
