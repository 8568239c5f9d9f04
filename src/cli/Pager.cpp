#include "cli/Pager.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdio>
#include <cstdlib>

namespace rackbook {

namespace {

// The environment's own command line, as every program that pages runs it. less leaves what fits
// one screen alone, keeps emphasis, does not clear the screen, and says below how to leave it.
std::string pagerCommand() {
    const char* chosen = std::getenv("PAGER");
    if (chosen == nullptr)
        return "less -FRX '-PsSpace goes on, q leaves'";
    return std::string(chosen) == "cat" ? std::string() : std::string(chosen);
}

// Whoever leaves the pager before the end has read enough.
class WithoutBrokenPipes {
public:
    WithoutBrokenPipes() : m_before(std::signal(SIGPIPE, SIG_IGN)) {}
    ~WithoutBrokenPipes() { std::signal(SIGPIPE, m_before); }
    WithoutBrokenPipes(const WithoutBrokenPipes&) = delete;
    WithoutBrokenPipes& operator=(const WithoutBrokenPipes&) = delete;

private:
    void (*m_before)(int);
};

// False where the pager did not run.
bool pagedBy(const std::string& command, const std::string& text) {
    constexpr int notFound = 127;
    constexpr int notRun = 126;
    const WithoutBrokenPipes quiet;
    FILE* pager = popen(command.c_str(), "w");
    if (pager == nullptr)
        return false;
    std::fwrite(text.data(), 1, text.size(), pager);
    const int status = pclose(pager);
    const int code = WIFEXITED(status) ? WEXITSTATUS(status) : 0;
    return status >= 0 && code != notFound && code != notRun;
}

}  // namespace

int terminalRows() {
    winsize size{};
    return ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 ? size.ws_row : 0;
}

void showPaged(const std::string& text, std::ostream& out) {
    const std::string command = pagerCommand();
    const int rows = terminalRows();
    const auto lines = std::count(text.begin(), text.end(), '\n');
    out.flush();
    if (command.empty() || rows == 0 || lines < rows || !pagedBy(command, text))
        out << text;
}

}  // namespace rackbook
