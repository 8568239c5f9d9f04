// Ctrl-C that ends what is being told, and not the program.
#pragma once

#include <csignal>

namespace rackbook {

// While one lives, SIGINT is only noted (POSIX): a read from the terminal comes back at once, and
// whoever reads asks taken(). One at a time; the handler before it is put back.
class InterruptsHeld {
public:
    InterruptsHeld();
    ~InterruptsHeld();
    InterruptsHeld(const InterruptsHeld&) = delete;
    InterruptsHeld& operator=(const InterruptsHeld&) = delete;

    // Whether there was one since this was asked last.
    static bool taken();

private:
    struct sigaction m_before {};
};

}  // namespace rackbook
