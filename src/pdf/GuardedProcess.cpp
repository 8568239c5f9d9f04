#include "pdf/GuardedProcess.h"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <chrono>
#include <fstream>
#include <new>

#include "base/Error.h"

namespace rackbook {

namespace {

// Sanitizers look at memory through pipes of their own.
#if defined(__SANITIZE_ADDRESS__)
constexpr bool isSanitized = true;
#else
constexpr bool isSanitized = false;
#endif

constexpr std::size_t bytesPerMB = 1 << 20;
constexpr int pipeInChild = 3;
// One more for the file that is read.
constexpr int descriptorsOfChild = pipeInChild + 2 + (isSanitized ? 8 : 0);

enum ChildExit { wroteAll = 0, threw = 1, lackedMemory = 2, wroteTooMuch = 3 };

void limit(int resource, rlim_t most) {
    const rlimit both{most, most};
    if (setrlimit(static_cast<__rlimit_resource>(resource), &both) != 0)
        _exit(threw);
}

std::size_t addressSpaceInUse() {
    std::size_t pages = 0;
    std::ifstream("/proc/self/statm") >> pages;
    return pages * static_cast<std::size_t>(sysconf(_SC_PAGESIZE));
}

void shutIn(int pipe, const ProcessLimits& limits) {
    const std::size_t memory = addressSpaceInUse() + limits.memory_MB * bytesPerMB;
    // The pipe may have the number of a standard stream that the program was started without.
    const int kept = fcntl(pipe, F_DUPFD, pipeInChild + 1);
    if (kept < 0)
        _exit(threw);
    const int nothing = open("/dev/null", O_RDWR);
    for (int standard = 0; standard < pipeInChild; ++standard)
        if (dup2(nothing, standard) < 0)
            _exit(threw);
    if (dup2(kept, pipeInChild) < 0)
        _exit(threw);
    closefrom(pipeInChild + 1);
    limit(RLIMIT_NOFILE, descriptorsOfChild);
    limit(RLIMIT_CORE, 0);
    limit(RLIMIT_FSIZE, 0);
    limit(RLIMIT_CPU, limits.time_s);
    if (!isSanitized)
        limit(RLIMIT_AS, memory);
    for (const int fault : {SIGXCPU, SIGPIPE, SIGTERM, SIGINT})
        signal(fault, SIG_DFL);
}

int workIn(const std::function<std::string()>& work, std::size_t mostBytes) {
    try {
        const std::string output = work();
        if (output.size() > mostBytes)
            return wroteTooMuch;
        for (std::size_t at = 0; at < output.size();) {
            const ssize_t written = write(pipeInChild, output.data() + at, output.size() - at);
            if (written < 0 && errno != EINTR)
                return threw;
            at += written > 0 ? static_cast<std::size_t>(written) : 0;
        }
        return wroteAll;
    } catch (const std::bad_alloc&) {
        return lackedMemory;
    } catch (...) {
        return threw;
    }
}

// Whoever starts the program may have told it to ignore the end of its children, and then nobody
// can ask how they ended.
class ChildrenWaitedFor {
public:
    ChildrenWaitedFor() {
        struct sigaction usual {};
        usual.sa_handler = SIG_DFL;
        sigaction(SIGCHLD, &usual, &m_before);
    }
    ~ChildrenWaitedFor() { sigaction(SIGCHLD, &m_before, nullptr); }
    ChildrenWaitedFor(const ChildrenWaitedFor&) = delete;
    ChildrenWaitedFor& operator=(const ChildrenWaitedFor&) = delete;

private:
    struct sigaction m_before {};
};

// The parent's side.
class Child {
    using Clock = std::chrono::steady_clock;

public:
    Child(pid_t id, int pipe) : m_id(id), m_pipe(pipe) {}
    ~Child() {
        close(m_pipe);
        if (m_ended)
            return;
        kill(m_id, SIGKILL);
        while (waitpid(m_id, nullptr, 0) < 0 && errno == EINTR) {
        }
    }
    Child(const Child&) = delete;
    Child& operator=(const Child&) = delete;

    ProcessOutcome outcome(const ProcessLimits& limits) {
        const Clock::time_point until = Clock::now() + std::chrono::seconds(3 * limits.time_s);
        ProcessOutcome outcome;
        std::array<char, 1 << 16> part{};
        for (;;) {
            const auto left =
                std::chrono::duration_cast<std::chrono::milliseconds>(until - Clock::now());
            if (left.count() <= 0)
                return {ProcessEnd::outOfTime, {}};
            pollfd waited{m_pipe, POLLIN, 0};
            if (poll(&waited, 1, static_cast<int>(left.count())) <= 0)
                continue;
            const ssize_t got = read(m_pipe, part.data(), part.size());
            if (got < 0 && errno == EINTR)
                continue;
            if (got <= 0)
                break;
            outcome.output.append(part.data(), static_cast<std::size_t>(got));
            if (outcome.output.size() > limits.output_MB * bytesPerMB)
                return {ProcessEnd::tooMuchOutput, {}};
        }
        outcome.end = endBefore(until);
        return outcome.end == ProcessEnd::finished ? outcome : ProcessOutcome{outcome.end, {}};
    }

private:
    // A process may shut its pipe and go on. One whose end nobody can tell has not finished.
    ProcessEnd endBefore(Clock::time_point until) {
        for (;;) {
            int status = 0;
            const pid_t ended = waitpid(m_id, &status, WNOHANG);
            if (ended < 0 && errno == EINTR)
                continue;
            if (ended != 0) {
                m_ended = true;
                return ended < 0 ? ProcessEnd::failed : endOf(status);
            }
            if (Clock::now() >= until)
                return ProcessEnd::outOfTime;
            poll(nullptr, 0, 1);
        }
    }

    // A process at the hard limit of its time is killed outright.
    static ProcessEnd endOf(int status) {
        if (WIFSIGNALED(status))
            return WTERMSIG(status) == SIGXCPU || WTERMSIG(status) == SIGKILL
                       ? ProcessEnd::outOfTime
                       : ProcessEnd::failed;
        switch (WEXITSTATUS(status)) {
            case wroteAll:
                return ProcessEnd::finished;
            case lackedMemory:
                return ProcessEnd::outOfMemory;
            case wroteTooMuch:
                return ProcessEnd::tooMuchOutput;
            default:
                return ProcessEnd::failed;
        }
    }

    pid_t m_id;
    int m_pipe;
    bool m_ended = false;
};

}  // namespace

ProcessOutcome runGuarded(const std::function<std::string()>& work, const ProcessLimits& limits) {
    const ChildrenWaitedFor waitedFor;
    std::array<int, 2> pipe{};
    if (pipe2(pipe.data(), O_CLOEXEC) != 0)
        throw RenderError("process", "no pipe could be made", "Close other programs.");
    const pid_t id = fork();
    if (id == 0) {
        shutIn(pipe[1], limits);
        _exit(workIn(work, limits.output_MB * bytesPerMB));
    }
    close(pipe[1]);
    if (id < 0) {
        close(pipe[0]);
        throw RenderError("process", "no process could be started", "Close other programs.");
    }
    return Child(id, pipe[0]).outcome(limits);
}

}  // namespace rackbook
