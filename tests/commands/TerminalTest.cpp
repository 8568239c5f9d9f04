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
#include "commands/DayDraft.h"

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

    void endAtOnce() { kill(m_child, SIGKILL); }

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
    ASSERT_TRUE(terminal.waitFor("When [2026-03-28 19:00]: ")) << terminal.seen();
    terminal.type("\n");
    ASSERT_TRUE(terminal.waitFor("reaches the face [y/N]: ")) << terminal.seen();
    terminal.type("\n");
    ASSERT_TRUE(terminal.waitFor("Is that right [Y/n]: ")) << terminal.seen();
    terminal.type("y\n");
    EXPECT_EQ(terminal.finish(), 0) << terminal.seen();
    EXPECT_NE(transcriptOf({"rackbook", "show", "impression", "TIDE:1"}).find("line"),
              std::string::npos);
}

// The same questions in German, from the environment, and records in the book's own words.
TEST_F(TerminalTest, AsksInGerman) {
    setenv("RACKBOOK_LANGUAGE", "de", 1);
    OnTerminal terminal({"pull"});
    ASSERT_TRUE(terminal.waitFor("Welche Auflage [TIDE]: ")) << terminal.seen();
    EXPECT_NE(terminal.seen().find("Sikkative und Lösemittel:"), std::string::npos);
    terminal.type("\n");
    ASSERT_TRUE(terminal.waitFor("Welche Schicht wurde gedruckt [1]: ")) << terminal.seen();
    terminal.type("\n");
    ASSERT_TRUE(terminal.waitFor("nach Arbeitsnummer [1-8]: ")) << terminal.seen();
    terminal.type("1 bis 4 und 6\n");
    ASSERT_TRUE(terminal.waitFor("Welche davon sind verdorben [keine]: ")) << terminal.seen();
    EXPECT_NE(terminal.seen().find("Das ist 1-4,6."), std::string::npos) << terminal.seen();
    terminal.type("keine\n");
    ASSERT_TRUE(terminal.waitFor("Welche Farbportion war es [keine]: ")) << terminal.seen();
    terminal.type("veil-a\n");
    ASSERT_TRUE(terminal.waitFor("Wann begann es [2026-03-28 19:00]: ")) << terminal.seen();
    terminal.type("gestern 18.10\n");
    ASSERT_TRUE(terminal.waitFor("Druckstock [keine]: ")) << terminal.seen();
    terminal.type("19 Uhr\n19.00 Uhr\n\n\n\n");
    ASSERT_TRUE(terminal.waitFor("Grad Celsius [keine]: ")) << terminal.seen();
    EXPECT_NE(terminal.seen().find("„19 Uhr“ ist kein Datum."), std::string::npos)
        << terminal.seen();
    terminal.type("900\n21,5\n\n\n\n");
    ASSERT_TRUE(terminal.waitFor("Stimmt das [J/n]: ")) << terminal.seen();
    EXPECT_NE(terminal.seen().find("900 °C kann nicht sein."), std::string::npos)
        << terminal.seen();
    terminal.type("j\n");
    EXPECT_EQ(terminal.finish(), 0) << terminal.seen();
    EXPECT_NE(terminal.seen().find("In studio.rackbook verzeichnet."), std::string::npos)
        << terminal.seen();
    setenv("RACKBOOK_LANGUAGE", "en", 1);
    const std::string pulls = transcriptOf({"rackbook", "list", "pull"});
    EXPECT_NE(pulls.find("2026-03-27T18:10"), std::string::npos) << pulls;
    EXPECT_NE(pulls.find("TIDE:1-4,6"), std::string::npos) << pulls;
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

// Ctrl-C within an entry costs that entry; between entries it leaves the day.
TEST_F(TerminalTest, LosesOneEntryOfADayWhenInterrupted) {
    const std::string before = stateOfBook();
    OnTerminal terminal({"day"});
    ASSERT_TRUE(terminal.waitFor("What happened [none]: ")) << terminal.seen();
    terminal.type("hang\n");
    ASSERT_TRUE(terminal.waitFor("such as EEL:1-12,15: ")) << terminal.seen();
    terminal.type("TIDE:1-4\nline\n\n\ny\n");
    ASSERT_TRUE(terminal.waitFor("Enter where that is all [none]: ")) << terminal.seen();
    terminal.type("look\n");
    ASSERT_TRUE(terminal.waitFor("such as EEL:4: ")) << terminal.seen();
    terminal.type("\x03");
    ASSERT_TRUE(terminal.waitFor("Enter where that is all [none]: ")) << terminal.seen();
    EXPECT_NE(terminal.seen().find("That entry was left out; 1 is kept so far."), std::string::npos)
        << terminal.seen();
    EXPECT_EQ(stateOfBook(), before);
    terminal.type("\x03");
    EXPECT_EQ(terminal.finish(), 2) << terminal.seen();
    EXPECT_NE(terminal.seen().find("What was told before is kept"), std::string::npos);
    EXPECT_EQ(stateOfBook(), before);
    OnTerminal again({"day"});
    ASSERT_TRUE(again.waitFor("Go on with them [Y/n]: ")) << again.seen();
    again.type("\n\ny\n");
    EXPECT_EQ(again.finish(), 0) << again.seen();
    EXPECT_NE(stateOfBook(), before);
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

std::size_t timesIn(const std::string& text, const std::string& words) {
    std::size_t times = 0;
    for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1))
        ++times;
    return times;
}

// Ended at any moment of the conversation, soon after what was typed or later: every entry that was
// said to be kept is kept, no more than was told, and the book has all of the day or nothing.
TEST_F(TerminalTest, KeepsWhatWasToldWheneverItIsEnded) {
    const std::string wholeDay = "hang\nTIDE:1-4\nline\n\n\ny\nhang\nTIDE:5-8\nline\n\n\ny\n\ny\n";
    const std::string before = stateOfBook();
    for (std::size_t typed = 1; typed <= wholeDay.size(); typed += 3) {
        OnTerminal terminal({"day"});
        ASSERT_TRUE(terminal.waitFor("What happened [none]: ")) << terminal.seen();
        terminal.type(wholeDay.substr(0, typed));
        usleep(static_cast<useconds_t>(typed % 4) * 20'000);
        terminal.endAtOnce();
        terminal.finish();
        const std::size_t kept = timesIn(terminal.seen(), "Enter where that is all [none]: ");
        if (stateOfBook() != before) {
            EXPECT_EQ(typed, wholeDay.size()) << terminal.seen();
            break;
        }
        const std::size_t told = timesIn(wholeDay.substr(0, typed), "\n\n\ny\n");
        const std::size_t drafted = DayDraft("studio.rackbook").entries().size();
        EXPECT_GE(drafted, kept) << typed << ": " << terminal.seen();
        EXPECT_LE(drafted, told) << typed << ": " << terminal.seen();
        DayDraft("studio.rackbook").clear();
    }
}

}  // namespace
}  // namespace rackbook
