#include "cli/Interrupts.h"

namespace rackbook {

namespace {

volatile std::sig_atomic_t noted = 0;

void note(int) {
    noted = 1;
}

}  // namespace

InterruptsHeld::InterruptsHeld() {
    noted = 0;
    struct sigaction held {};
    held.sa_handler = note;
    sigemptyset(&held.sa_mask);
    held.sa_flags = 0;  // no SA_RESTART: the read that waits for an answer must come back
    sigaction(SIGINT, &held, &m_before);
}

InterruptsHeld::~InterruptsHeld() {
    sigaction(SIGINT, &m_before, nullptr);
}

bool InterruptsHeld::taken() {
    const bool was = noted != 0;
    noted = 0;
    return was;
}

}  // namespace rackbook
