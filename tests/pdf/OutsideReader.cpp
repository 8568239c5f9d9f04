#include "OutsideReader.h"

#include <gtest/gtest.h>
#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "base/Files.h"

namespace rackbook {

namespace {

class OwnFolder {
public:
    OwnFolder() : m_path(testing::TempDir() + "rackbook-pdf-XXXXXX") {
        if (!mkdtemp(m_path.data()))
            ADD_FAILURE() << "no folder could be made at " << m_path;
    }
    ~OwnFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }
    const std::string& path() const { return m_path; }

private:
    std::string m_path;
};

}  // namespace

std::string fileWith(const std::string& bytes, const std::string& name) {
    static const OwnFolder folder;
    const std::string path = pathOf(folder.path(), name);
    // Not made safe against a loss of power, which costs time.
    std::ofstream(path, std::ios::binary) << bytes;
    return path;
}

ToolRun readWith(const std::string& command) {
    ToolRun reading;
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

std::size_t timesIn(const std::string& text, const std::string& part) {
    std::size_t times = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
        ++times;
    return times;
}

}  // namespace rackbook
