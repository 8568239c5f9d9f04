// Ctrl-C that ends what is being told, and not the program.
#pragma once

#include <csignal>

namespace rackbook {

// While one lives, SIGINT is only noted (POSIX), and only while somebody waits for input; whoever
// waited asks taken(). One at a time; handler and mask before it are put back.
class InterruptsHeld {
public:
    InterruptsHeld();
    ~InterruptsHeld();
    InterruptsHeld(const InterruptsHeld&) = delete;
    InterruptsHeld& operator=(const InterruptsHeld&) = delete;

    // Waits until there is something to read, or the end of it; false where a signal came first,
    // also one that came before the wait began. Comes back at once where none lives.
    static bool awaitInput(int descriptor);

    // Whether there was one since this was asked last.
    static bool taken();

private:
    struct sigaction m_before {};
    sigset_t m_maskBefore{};
};

}  // namespace rackbook
