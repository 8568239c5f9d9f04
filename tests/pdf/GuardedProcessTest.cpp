#include "pdf/GuardedProcess.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <stdexcept>
#include <vector>

#include "OutsideReader.h"

namespace rackbook {
namespace {

ProcessLimits smallLimits() {
    ProcessLimits limits;
    limits.memory_MB = 64;
    limits.time_s = 1;
    limits.output_MB = 1;
    return limits;
}

ProcessEnd endOf(const std::function<std::string()>& work) {
    return runGuarded(work, smallLimits()).end;
}

TEST(GuardedProcess, GivesWhatTheWorkReturned) {
    const std::string bytes = std::string(900000, 'x') + std::string("\0y", 2);
    const ProcessOutcome outcome = runGuarded([&] { return bytes; }, smallLimits());
    EXPECT_EQ(outcome.end, ProcessEnd::finished);
    EXPECT_EQ(outcome.output, bytes);
    EXPECT_EQ(runGuarded([] { return std::string(); }).end, ProcessEnd::finished);
}

TEST(GuardedProcess, OutlivesThrowsAndCrashes) {
    EXPECT_EQ(endOf([]() -> std::string { throw std::runtime_error("no"); }), ProcessEnd::failed);
    EXPECT_EQ(endOf([]() -> std::string { throw 1; }), ProcessEnd::failed);
    EXPECT_EQ(endOf([]() -> std::string { std::abort(); }), ProcessEnd::failed);
    EXPECT_EQ(endOf([]() -> std::string {
                  std::raise(SIGSEGV);
                  return {};
              }),
              ProcessEnd::failed);
}

TEST(GuardedProcess, EndsWorkThatDoesNotEnd) {
    const auto start = std::chrono::steady_clock::now();
    EXPECT_EQ(endOf([]() -> std::string {
                  for (volatile unsigned turn = 0;; turn = turn + 1) {
                  }
              }),
              ProcessEnd::outOfTime);
    EXPECT_EQ(endOf([]() -> std::string {
                  for (;;)
                      pause();
              }),
              ProcessEnd::outOfTime);
    EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(8));
}

TEST(GuardedProcess, EndsWorkThatWantsTooMuchMemory) {
#if defined(__SANITIZE_ADDRESS__)
    GTEST_SKIP() << "memory is not limited under the address sanitizer";
#endif
    EXPECT_EQ(endOf([] { return std::string(100 << 20, 'x'); }), ProcessEnd::outOfMemory);
}

TEST(GuardedProcess, EndsWorkThatSaysTooMuch) {
    EXPECT_EQ(endOf([] { return std::string((1 << 20) + 1, 'x'); }), ProcessEnd::tooMuchOutput);
}

TEST(GuardedProcess, HoldsNoFileOfTheProgramAndWritesNone) {
    const std::string path = fileWith("before", "held.txt");
    const int held = open(path.c_str(), O_RDWR);
    ASSERT_GT(held, 2);
    // Above its own pipe, which may have the number of a file that the program holds.
    const int high = fcntl(held, F_DUPFD, 100);
    const ProcessOutcome outcome = runGuarded([&] {
        std::string said;
        said += write(high, "x", 1) == 1 ? "wrote " : "";
        const int again = open(path.c_str(), O_RDWR);
        said += again >= 0 ? "opened " : "";
        said += write(again, "x", 1) == 1 ? "wrote again " : "";
        said += open(path.c_str(), O_RDONLY) >= 0 ? "opened two" : "";
        return said;
    });
    close(high);
    close(held);
    EXPECT_EQ(outcome.output, "");
    EXPECT_EQ(outcome.end, ProcessEnd::failed) << "writing a file ends it";
    EXPECT_EQ(readWith("cat " + path).output, "before");
}

// What `checked` says in a copy of the tests that it may spoil.
bool holdsInACopy(const std::function<bool()>& checked) {
    const pid_t id = fork();
    if (id == 0) {
        alarm(20);
        _exit(checked() ? 0 : 1);
    }
    int status = 0;
    return waitpid(id, &status, 0) == id && WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

// POSIX leaves it to who starts a program whether the standard streams are open.
TEST(GuardedProcess, WorksWithoutStandardStreams) {
    for (const std::vector<int>& shut : {std::vector<int>{0}, {1}, {2}, {0, 1}, {1, 2}, {0, 1, 2}})
        EXPECT_TRUE(holdsInACopy([&] {
            for (const int stream : shut)
                close(stream);
            const ProcessOutcome outcome =
                runGuarded([] { return std::string("said"); }, smallLimits());
            return outcome.end == ProcessEnd::finished && outcome.output == "said";
        })) << shut.front()
            << " to " << shut.back();
}

// POSIX, wait(): where SIGCHLD is ignored, it fails with ECHILD.
TEST(GuardedProcess, TellsHowWorkEndedWhereEndsOfChildrenAreIgnored) {
    EXPECT_TRUE(holdsInACopy([] {
        signal(SIGCHLD, SIG_IGN);
        const bool told = endOf([]() -> std::string { std::abort(); }) == ProcessEnd::failed &&
                          endOf([] { return std::string(); }) == ProcessEnd::finished;
        return told && signal(SIGCHLD, SIG_DFL) == SIG_IGN;
    }));
}

TEST(GuardedProcess, EndsWorkThatShutsItsPipeAndGoesOn) {
    EXPECT_TRUE(holdsInACopy([] {
        return endOf([]() -> std::string {
                   closefrom(0);
                   for (;;)
                       pause();
               }) == ProcessEnd::outOfTime;
    }));
}

}  // namespace
}  // namespace rackbook
