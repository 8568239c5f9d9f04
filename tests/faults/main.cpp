// faultsTests            what ctest runs: some faults of every command
// faultsTests --all      the whole matrix, with its counts; verbs after it: only those
// faultsTests --writers SECONDS   writers and readers at once for so long
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QCoreApplication>
#include <cstdlib>
#include <iostream>
#include <set>

#include "FaultMatrix.h"
#include "Together.h"

namespace {

using namespace rackbook::faults;

int runAll(const std::set<std::string>& verbs) {
    MatrixCounts total;
    for (const WritingCommand& command : writingCommands()) {
        if (!verbs.empty() && verbs.count(command.verb) == 0)
            continue;
        const MatrixCounts counts = runMatrix(command, 0);
        total.add(counts);
        std::cout << command.line << ": " << counts.calls << " calls, " << counts.cases
                  << " faults, " << counts.failures.size() << " failures" << std::endl;
        for (const std::string& failure : counts.failures)
            std::cout << "  " << failure << "\n";
    }
    std::cout << total.commands << " commands, " << total.calls << " calls, " << total.cases
              << " faults: " << total.killed << " killed, " << total.refused << " refused, "
              << total.acknowledged << " done all the same; " << total.failures.size()
              << " failures\n";
    return total.failures.empty() ? 0 : 1;
}

int runTogether(int time_s) {
    const TogetherCounts counts = writeTogether(4, 4, time_s);
    std::cout << counts.acknowledged << " entries by 4 writers, " << counts.reads
              << " readings by 4 readers, the longest wait " << counts.longest_ms << " ms; "
              << counts.failures.size() << " failures\n";
    for (const std::string& failure : counts.failures)
        std::cout << "  " << failure << "\n";
    return counts.failures.empty() ? 0 : 1;
}

// In memory where that is to be had: what is tested is the order of calls, not the disk.
void useMemoryForFiles() {
    struct stat there;
    if (stat("/dev/shm", &there) == 0 && S_ISDIR(there.st_mode) && access("/dev/shm", W_OK) == 0)
        setenv("TMPDIR", "/dev/shm", 0);
}

}  // namespace

int main(int argc, char** argv) {
    useMemoryForFiles();
    testing::InitGoogleTest(&argc, argv);
    const QCoreApplication application(argc, argv);
    const std::vector<std::string> words(argv + 1, argv + argc);
    if (!words.empty() && words.front() == "--all")
        return runAll({words.begin() + 1, words.end()});
    if (words.size() == 2 && words.front() == "--writers")
        return runTogether(std::atoi(words[1].c_str()));
    return RUN_ALL_TESTS();
}
