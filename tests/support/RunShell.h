// Runs a shell command over a text, for tests that hand what was made to the program it is for.
#pragma once

#include <gtest/gtest.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <stdexcept>
#include <string>

namespace rackbook::test {

struct ShellResult {
    int exitCode = -1;
    std::string output;  // standard output and standard error
};

inline bool hasProgram(const std::string& name) {
    return std::system(("command -v " + name + " >/dev/null 2>&1").c_str()) == 0;
}

// `command` reads the text from the file that "$FILE" names.
inline ShellResult runOn(const std::string& text, const std::string& command) {
    std::string path = testing::TempDir() + "rackbook-shell-XXXXXX";
    const int descriptor = mkstemp(path.data());
    if (descriptor < 0)
        throw std::runtime_error("no temporary file at " + path);
    close(descriptor);
    std::ofstream(path) << text;
    FILE* pipe = popen(("FILE='" + path + "'; { " + command + "\n} 2>&1").c_str(), "r");
    if (pipe == nullptr)
        throw std::runtime_error("no shell");
    ShellResult result;
    std::array<char, 4096> part{};
    while (const std::size_t count = fread(part.data(), 1, part.size(), pipe))
        result.output.append(part.data(), count);
    const int status = pclose(pipe);
    result.exitCode = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    unlink(path.c_str());
    return result;
}

}  // namespace rackbook::test
