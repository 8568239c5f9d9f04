#include "cli/Interrupts.h"

#include <poll.h>

#include <cerrno>

namespace rackbook {

namespace {

volatile std::sig_atomic_t noted = 0;
// The mask while input is waited for; nothing where no signal is held.
const sigset_t* maskOfWait = nullptr;

void note(int) {
    noted = 1;
}

}  // namespace

InterruptsHeld::InterruptsHeld() {
    noted = 0;
    struct sigaction held {};
    held.sa_handler = note;
    sigemptyset(&held.sa_mask);
    sigaction(SIGINT, &held, &m_before);
    // Blocked but for the wait: between a look whether one came and a read, one would be lost.
    sigset_t interrupts;
    sigemptyset(&interrupts);
    sigaddset(&interrupts, SIGINT);
    pthread_sigmask(SIG_BLOCK, &interrupts, &m_maskBefore);
    maskOfWait = &m_maskBefore;
}

InterruptsHeld::~InterruptsHeld() {
    maskOfWait = nullptr;
    pthread_sigmask(SIG_SETMASK, &m_maskBefore, nullptr);
    sigaction(SIGINT, &m_before, nullptr);
}

bool InterruptsHeld::awaitInput(int descriptor) {
    if (maskOfWait == nullptr)
        return true;
    pollfd input{descriptor, POLLIN, 0};
    while (noted == 0) {
        const int ready = ppoll(&input, 1, nullptr, maskOfWait);
        if (ready > 0 || (ready < 0 && errno != EINTR))
            return true;
    }
    return false;
}

bool InterruptsHeld::taken() {
    const bool was = noted != 0;
    noted = 0;
    return was;
}

}  // namespace rackbook
