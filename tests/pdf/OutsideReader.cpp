#include "OutsideReader.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>

#include "base/Files.h"

namespace rackbook {

std::string fileWith(const std::string& bytes, const std::string& name) {
    const std::string path =
        testing::TempDir() + "rackbook-" + std::to_string(getpid()) + "-" + name;
    writeFileSafely(path, bytes);
    return path;
}

Reading readWith(const std::string& command) {
    Reading reading;
    FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    if (!pipe)
        return reading;
    std::array<char, 4096> part{};
    for (std::size_t got = 0; (got = fread(part.data(), 1, part.size(), pipe)) > 0;)
        reading.output.append(part.data(), got);
    const int status = pclose(pipe);
    reading.exitCode = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return reading;
}

}  // namespace rackbook
