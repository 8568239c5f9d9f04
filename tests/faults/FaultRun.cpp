#include "FaultRun.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <sstream>

#include "support/TempFolder.h"

namespace rackbook::faults {

namespace {

namespace fs = std::filesystem;

constexpr unsigned longest_s = 60;

[[noreturn]] void become(const std::vector<std::string>& words, const std::string& kind,
                         std::size_t at, const test::TempFolder& aside) {
    const int output = open(aside.file("said").c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    const int nothing = open("/dev/null", O_RDONLY);
    dup2(nothing, STDIN_FILENO);
    dup2(output, STDOUT_FILENO);
    dup2(output, STDERR_FILENO);
    setenv("LD_PRELOAD", RACKBOOK_FAULTY_CALLS, 1);
    setenv("ASAN_OPTIONS", "verify_asan_link_order=0:detect_leaks=0", 1);
    setenv("RACKBOOK_FAULT_FOLDER", fs::current_path().c_str(), 1);
    setenv("RACKBOOK_FAULT_TRACE", aside.file("calls").c_str(), 1);
    setenv("RACKBOOK_FAULT_KIND", kind.c_str(), 1);
    setenv("RACKBOOK_FAULT_AT", std::to_string(at).c_str(), 1);
    std::vector<char*> arguments = {const_cast<char*>(RACKBOOK_PROGRAM)};
    for (const std::string& word : words)
        arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    alarm(longest_s);
    execv(RACKBOOK_PROGRAM, arguments.data());
    _exit(127);
}

}  // namespace

Run runProgramWith(const std::vector<std::string>& words, const std::string& kind, std::size_t at) {
    const test::TempFolder aside;
    const pid_t process = fork();
    if (process == 0)
        become(words, kind, at, aside);
    int status = 0;
    waitpid(process, &status, 0);
    Run run;
    if (WIFSIGNALED(status))
        run.outcome = WTERMSIG(status) == SIGKILL ? Outcome::killed : Outcome::hung;
    else
        run.exitCode = WEXITSTATUS(status);
    run.said = test::bytesOf(aside.file("said"));
    if (fs::exists(aside.file("calls"))) {
        std::istringstream lines(test::bytesOf(aside.file("calls")));
        for (std::string line; std::getline(lines, line);)
            run.calls.push_back(line);
    }
    return run;
}

FolderImage imageOfFolder() {
    FolderImage image;
    for (const auto& entry : fs::recursive_directory_iterator("."))
        if (!entry.is_symlink() && entry.is_regular_file())
            image[entry.path().lexically_normal().string()] = test::bytesOf(entry.path().string());
    return image;
}

void restoreFolder(const FolderImage& image) {
    for (const auto& entry : fs::directory_iterator("."))
        if (!entry.is_symlink())
            fs::remove_all(entry.path());
    for (const auto& [path, bytes] : image) {
        const fs::path folder = fs::path(path).parent_path();
        if (!folder.empty())
            fs::create_directories(folder);
        test::putFile(path, bytes);
    }
}

}  // namespace rackbook::faults
