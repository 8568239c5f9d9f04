#include "Together.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <random>
#include <set>
#include <sstream>
#include <thread>

#include "BookState.h"
#include "Script.h"
#include "store/RecordReader.h"
#include "support/TempFolder.h"

namespace rackbook::faults {

namespace {

using Clock = std::chrono::steady_clock;
constexpr const char* book = "studio.rackbook";

long since_ms(Clock::time_point start) {
    return static_cast<long>(
        std::chrono::duration_cast<std::chrono::milliseconds>(Clock::now() - start).count());
}

pid_t start(const std::vector<std::string>& words, const std::string& output) {
    const pid_t process = fork();
    if (process != 0)
        return process;
    const int file = open(output.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    dup2(file, STDOUT_FILENO);
    dup2(file, STDERR_FILENO);
    std::vector<char*> arguments = {const_cast<char*>(RACKBOOK_PROGRAM)};
    for (const std::string& word : words)
        arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    execv(RACKBOOK_PROGRAM, arguments.data());
    _exit(127);
}

int endOf(pid_t process) {
    int status = 0;
    waitpid(process, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

std::vector<std::string> entering(const std::string& id) {
    return {"enter", "party", id, "name=" + id, "--wait", "60"};
}

// What one writer or reader saw; each thread has one of its own.
struct Share {
    std::vector<std::string> ids;
    std::size_t reads = 0;
    std::size_t killed = 0;
    long longest_ms = 0;
    std::vector<std::string> failures;
};

void write(const std::string& name, const std::string& output, int time_s, Share& share) {
    const Clock::time_point beginning = Clock::now();
    for (int i = 0; since_ms(beginning) < time_s * 1000L; ++i) {
        const std::string id = name + "-" + std::to_string(i);
        const Clock::time_point one = Clock::now();
        if (endOf(start(entering(id), output)) == 0)
            share.ids.push_back(id);
        else
            share.failures.push_back(id + ": " + test::bytesOf(output));
        share.longest_ms = std::max(share.longest_ms, since_ms(one));
    }
}

// What is read never becomes less.
void read(const std::string& output, int time_s, Share& share) {
    const Clock::time_point beginning = Clock::now();
    long before = 0;
    while (since_ms(beginning) < time_s * 1000L) {
        const Clock::time_point one = Clock::now();
        const int code = endOf(start({"list", "party"}, output));
        const std::string said = test::bytesOf(output);
        const long lines = std::count(said.begin(), said.end(), '\n');
        if (code != 0 || lines < before)
            share.failures.push_back("a reader: " + said);
        before = lines;
        ++share.reads;
        share.longest_ms = std::max(share.longest_ms, since_ms(one));
    }
}

void writeAndDie(const std::string& output, int time_s, Share& share) {
    std::mt19937 random(1);
    const Clock::time_point beginning = Clock::now();
    for (int i = 0; since_ms(beginning) < time_s * 1000L; ++i) {
        const pid_t process = start(entering("dying-" + std::to_string(i)), output);
        std::this_thread::sleep_for(std::chrono::milliseconds(random() % 60));
        kill(process, SIGKILL);
        if (endOf(process) == 0)
            share.ids.push_back("dying-" + std::to_string(i));
        else
            ++share.killed;
    }
}

void checkAll(const std::vector<Share>& shares, TogetherCounts& counts) {
    const BookState state = stateOfBook(book);
    if (!state.trouble.empty())
        counts.failures.push_back(state.trouble);
    std::set<std::string> held;
    const BookFile opened =
        BookFile::openToRead({book, std::string(RACKBOOK_SOURCE) + "/schema", 5});
    for (const Party& party : allOf<Party>(opened))
        held.insert(party.id);
    for (const Share& share : shares) {
        for (const std::string& id : share.ids)
            if (held.count(id) == 0)
                counts.failures.push_back(id + " was acknowledged and is lost");
        counts.acknowledged += share.ids.size();
        counts.killed += share.killed;
        counts.reads += share.reads;
        counts.longest_ms = std::max(counts.longest_ms, share.longest_ms);
        counts.failures.insert(counts.failures.end(), share.failures.begin(), share.failures.end());
    }
}

}  // namespace

TogetherCounts writeTogether(int writers, int readers, int time_s) {
    const FreshFolder folder;
    const test::TempFolder aside;
    runScript("studio");
    std::vector<Share> shares(static_cast<std::size_t>(writers + readers + 1));
    std::vector<std::thread> threads;
    for (std::size_t i = 0; i + 1 < shares.size(); ++i) {
        const std::string output = aside.file(std::to_string(i));
        if (i < static_cast<std::size_t>(writers))
            threads.emplace_back(write, "writer" + std::to_string(i), output, time_s,
                                 std::ref(shares[i]));
        else
            threads.emplace_back(read, output, time_s, std::ref(shares[i]));
    }
    threads.emplace_back(writeAndDie, aside.file("dying"), time_s, std::ref(shares.back()));
    for (std::thread& thread : threads)
        thread.join();
    TogetherCounts counts;
    checkAll(shares, counts);
    return counts;
}

}  // namespace rackbook::faults
