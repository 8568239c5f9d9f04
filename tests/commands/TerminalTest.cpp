// The program itself on a pseudo-terminal (POSIX), from the first question to the book.
#include <gtest/gtest.h>
#include <poll.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <string>
#include <vector>

#include "Script.h"

namespace rackbook {
namespace {

class OnTerminal {
public:
    explicit OnTerminal(const std::vector<std::string>& words) {
        winsize size{};
        size.ws_col = 90;
        size.ws_row = 40;
        m_child = forkpty(&m_terminal, nullptr, nullptr, &size);
        if (m_child == 0) {
            unsetenv("COLUMNS");
            std::vector<char*> arguments = {const_cast<char*>(RACKBOOK_PROGRAM)};
            for (const std::string& word : words)
                arguments.push_back(const_cast<char*>(word.c_str()));
            arguments.push_back(nullptr);
            execv(RACKBOOK_PROGRAM, arguments.data());
            _exit(127);
        }
    }

    ~OnTerminal() {
        if (m_child > 0) {
            kill(m_child, SIGKILL);
            waitpid(m_child, nullptr, 0);
        }
        close(m_terminal);
    }

    // Reads until the text stands at the end of what was shown; false where it never does.
    bool waitFor(const std::string& prompt) {
        const auto stands = [&] {
            return m_seen.size() >= prompt.size() &&
                   m_seen.compare(m_seen.size() - prompt.size(), prompt.size(), prompt) == 0;
        };
        while (!stands())
            if (!readSome())
                return false;
        return true;
    }

    void type(const std::string& text) {
        ASSERT_EQ(write(m_terminal, text.data(), text.size()), static_cast<ssize_t>(text.size()));
    }

    // Its exit code, or minus the signal that ended it.
    int finish() {
        while (readSome()) {
        }
        int status = 0;
        waitpid(m_child, &status, 0);
        m_child = 0;
        return WIFSIGNALED(status) ? -WTERMSIG(status) : WEXITSTATUS(status);
    }

    const std::string& seen() const { return m_seen; }

private:
    bool readSome() {
        constexpr int patience_ms = 30'000;
        pollfd ready{m_terminal, POLLIN, 0};
        if (poll(&ready, 1, patience_ms) <= 0)
            return false;
        char buffer[4096];
        const ssize_t count = read(m_terminal, buffer, sizeof buffer);
        if (count <= 0)
            return false;
        m_seen.append(buffer, static_cast<std::size_t>(count));
        return true;
    }

    int m_terminal = -1;
    pid_t m_child = 0;
    std::string m_seen;
};

class TerminalTest : public ::testing::Test {
protected:
    TerminalTest() { runScript("studio"); }
    const FreshFolder m_folder;
};

TEST_F(TerminalTest, RecordsAHangingByQuestions) {
    OnTerminal terminal({"hang"});
    ASSERT_TRUE(terminal.waitFor("such as EEL:1-12,15: ")) << terminal.seen();
    terminal.type("TIDE:1-4\n");
    ASSERT_TRUE(terminal.waitFor("Where do they hang: ")) << terminal.seen();
    terminal.type("line\n");
    ASSERT_TRUE(terminal.waitFor("When [2026-03-28T19:00]: ")) << terminal.seen();
    terminal.type("\n");
    ASSERT_TRUE(terminal.waitFor("reaches the face [y/N]: ")) << terminal.seen();
    terminal.type("\n");
    ASSERT_TRUE(terminal.waitFor("Is that right [Y/n]: ")) << terminal.seen();
    terminal.type("y\n");
    EXPECT_EQ(terminal.finish(), 0) << terminal.seen();
    EXPECT_NE(transcriptOf({"rackbook", "show", "impression", "TIDE:1"}).find("line"),
              std::string::npos);
}

// What is longer than the screen goes through the pager, which here marks each line.
TEST_F(TerminalTest, ShowsLongReportsThroughThePager) {
    setenv("PAGER", "sed 's/^/paged /'", 1);
    OnTerminal help({"--help"});
    EXPECT_EQ(help.finish(), 0);
    EXPECT_NE(help.seen().find("paged Usage: rackbook VERB"), std::string::npos) << help.seen();
    OnTerminal list({"list", "place"});
    EXPECT_EQ(list.finish(), 0);
    EXPECT_EQ(list.seen().find("paged"), std::string::npos) << list.seen();
    setenv("PAGER", "/no/such/pager", 1);
    OnTerminal broken({"--help"});
    EXPECT_EQ(broken.finish(), 0);
    EXPECT_NE(broken.seen().find("Usage: rackbook VERB"), std::string::npos) << broken.seen();
    unsetenv("PAGER");
}

TEST_F(TerminalTest, SavesNothingWhenInterrupted) {
    const std::string before = stateOfBook();
    OnTerminal terminal({"hang", "TIDE:1-4"});
    ASSERT_TRUE(terminal.waitFor("Where do they hang: ")) << terminal.seen();
    terminal.type("\x03");  // Ctrl-C
    EXPECT_EQ(terminal.finish(), -SIGINT) << terminal.seen();
    EXPECT_EQ(stateOfBook(), before);
}

TEST_F(TerminalTest, KeepsTheDayWhenTheWindowCloses) {
    const std::string before = stateOfBook();
    {
        OnTerminal terminal({"day"});
        ASSERT_TRUE(terminal.waitFor("What happened [none]: ")) << terminal.seen();
        terminal.type("hang\n");
        ASSERT_TRUE(terminal.waitFor("such as EEL:1-12,15: ")) << terminal.seen();
        terminal.type("TIDE:1-4\nline\n\n\ny\n");
        ASSERT_TRUE(terminal.waitFor("Enter where that is all [none]: ")) << terminal.seen();
    }
    EXPECT_EQ(stateOfBook(), before);
    OnTerminal terminal({"day"});
    ASSERT_TRUE(terminal.waitFor("Go on with them [Y/n]: ")) << terminal.seen();
    terminal.type("\n\ny\n");
    EXPECT_EQ(terminal.finish(), 0) << terminal.seen();
    EXPECT_NE(stateOfBook(), before);
}

}  // namespace
}  // namespace rackbook
