// Work on bytes from outside, done in a process that cannot take much or harm much.
#pragma once

#include <cstddef>
#include <functional>
#include <string>

namespace rackbook {

struct ProcessLimits {
    std::size_t memory_MB = 256;  // beyond what this process has when the work begins
    unsigned time_s = 10;         // of the processor; of the clock, thrice that
    std::size_t output_MB = 64;
};

enum class ProcessEnd {
    finished,
    outOfMemory,
    outOfTime,
    tooMuchOutput,
    failed  // a crash, or a throw
};

struct ProcessOutcome {
    ProcessEnd end = ProcessEnd::failed;
    std::string output;  // where it finished; as little to be trusted as what was worked on
};

// Runs the work in a copy of this process and gives what it returned.
//
// A copy (fork), and no other program started anew: it works from every program that links this
// room, needs no path to be found, and cannot be of another version. It is safe because this
// program has no threads; a caller that has some must not use it. The copy holds no open file of
// this process, may open one file at a time, writes none, leaves no core, says nothing, and ends
// without destructors and exit handlers, so that locks and half-written files stay with their
// owner. Under the address sanitizer, whose bookkeeping takes terabytes of address space and files
// of its own, memory is not limited, and some more files may be open.
//
// Throws RenderError where no process can be started.
ProcessOutcome runGuarded(const std::function<std::string()>& work,
                          const ProcessLimits& limits = {});

}  // namespace rackbook
