#include "cli/Console.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <cstdlib>
#include <iostream>
#include <optional>
#include <sstream>

#include "base/Text.h"

namespace rackbook {
namespace {

ConsoleTraits terminalTraits() {
    ConsoleTraits traits;
    traits.outIsTerminal = true;
    traits.errIsTerminal = true;
    traits.allowsColour = true;
    traits.width = 80;
    traits.errWidth = 80;
    return traits;
}

class ConsoleTest : public ::testing::Test {
protected:
    std::ostringstream m_out;
    std::ostringstream m_err;
};

TEST_F(ConsoleTest, TakesStreamsOfItsOwnForNoTerminals) {
    const Console console(m_out, m_err);
    EXPECT_FALSE(console.outIsTerminal());
    EXPECT_FALSE(console.errIsTerminal());
    EXPECT_EQ(console.width(), 100);
    EXPECT_EQ(console.emphasis("word"), "word");
    EXPECT_EQ(console.warningColour("word"), "word");
}

TEST_F(ConsoleTest, ColoursOnlyTheStreamThatIsATerminal) {
    ConsoleTraits traits = terminalTraits();
    traits.outIsTerminal = false;
    const Console console(m_out, m_err, traits);
    EXPECT_EQ(console.emphasis("word"), "word");
    EXPECT_EQ(console.warningColour("word"), "\x1b[31mword\x1b[0m");
    EXPECT_EQ(console.warningColour("word", Console::Stream::out), "word");
    EXPECT_EQ(console.emphasis("word", Console::Stream::err), "\x1b[1mword\x1b[0m");
}

TEST_F(ConsoleTest, LeavesTextPlainWhereColourIsNotAllowed) {
    ConsoleTraits traits = terminalTraits();
    traits.allowsColour = false;
    const Console console(m_out, m_err, traits);
    EXPECT_EQ(console.emphasis("word"), "word");
    EXPECT_EQ(console.warningColour("word"), "word");
}

// Standard output becomes a pseudo-terminal of 60 columns for the length of a test.
class TerminalTraits : public ::testing::Test {
protected:
    void SetUp() override {
        for (const char* name : m_names) {
            const char* value = std::getenv(name);
            m_before.push_back(value == nullptr ? std::nullopt : std::optional<std::string>(value));
            unsetenv(name);
        }
        m_controller = posix_openpt(O_RDWR | O_NOCTTY);
        ASSERT_GE(m_controller, 0);
        ASSERT_EQ(grantpt(m_controller), 0);
        ASSERT_EQ(unlockpt(m_controller), 0);
        const int terminal = open(ptsname(m_controller), O_RDWR | O_NOCTTY);
        ASSERT_GE(terminal, 0);
        setColumns(60);
        std::cout.flush();
        m_saved = dup(STDOUT_FILENO);
        dup2(terminal, STDOUT_FILENO);
        close(terminal);
    }

    void TearDown() override {
        if (m_saved >= 0) {
            dup2(m_saved, STDOUT_FILENO);
            close(m_saved);
        }
        if (m_controller >= 0)
            close(m_controller);
        for (std::size_t i = 0; i < m_before.size(); ++i)
            if (m_before[i])
                setenv(m_names[i], m_before[i]->c_str(), 1);
            else
                unsetenv(m_names[i]);
    }

    void setColumns(unsigned short columns) const {
        winsize size{};
        size.ws_col = columns;
        ASSERT_EQ(ioctl(m_controller, TIOCSWINSZ, &size), 0);
    }

    int width() const { return consoleTraits(std::cout, m_err).width; }
    bool allowsColour() const { return consoleTraits(std::cout, m_err).allowsColour; }

    const std::vector<const char*> m_names = {"COLUMNS", "NO_COLOR", "TERM"};
    std::vector<std::optional<std::string>> m_before;
    std::ostringstream m_err;
    int m_controller = -1;
    int m_saved = -1;
};

TEST_F(TerminalTraits, KnowsATerminalAndAsksItsWidth) {
    const ConsoleTraits traits = consoleTraits(std::cout, m_err);
    EXPECT_TRUE(traits.outIsTerminal);
    EXPECT_FALSE(traits.errIsTerminal);
    EXPECT_EQ(traits.width, 60);
    EXPECT_EQ(traits.errWidth, 100);
}

TEST_F(TerminalTraits, PrefersColumnsWhereItIsSensible) {
    setenv("COLUMNS", "132", 1);
    EXPECT_EQ(width(), 132);
    for (const char* bad : {"", "abc", "0", "-5", "10001", "80x"}) {
        setenv("COLUMNS", bad, 1);
        EXPECT_EQ(width(), 60) << bad;
    }
    setenv("COLUMNS", "3", 1);
    EXPECT_EQ(width(), 20);
}

TEST_F(TerminalTraits, TakesEightyColumnsWhereTheTerminalDoesNotSay) {
    setColumns(0);
    EXPECT_EQ(width(), 80);
}

TEST_F(TerminalTraits, ObeysTheWishForNoColour) {
    EXPECT_TRUE(allowsColour());
    setenv("NO_COLOR", "", 1);
    EXPECT_TRUE(allowsColour());
    setenv("NO_COLOR", "1", 1);
    EXPECT_FALSE(allowsColour());
    unsetenv("NO_COLOR");
    setenv("TERM", "dumb", 1);
    EXPECT_FALSE(allowsColour());
    setenv("TERM", "linux", 1);
    EXPECT_TRUE(allowsColour());
}

class ProgressTest : public ConsoleTest {
protected:
    void wait(int milliseconds) { m_now += std::chrono::milliseconds(milliseconds); }
    Progress::NowFunction clock() {
        return [this] { return m_now; };
    }

    Progress::TimePoint m_now{};
};

TEST_F(ProgressTest, SaysNothingInTheFirstSecond) {
    Console console(m_out, m_err, terminalTraits());
    {
        Progress progress(console, "Sheets", 3, clock());
        progress.advance();
        wait(999);
        progress.advance();
    }
    EXPECT_EQ(m_err.str(), "");
}

TEST_F(ProgressTest, RewritesOneLineAndClearsIt) {
    Console console(m_out, m_err, terminalTraits());
    {
        Progress progress(console, "Sheets", 12, clock());
        wait(1000);
        progress.advance(3);
        EXPECT_EQ(m_err.str(), "\rSheets 3 of 12");
        wait(99);
        progress.advance();
        EXPECT_EQ(m_err.str(), "\rSheets 3 of 12");
        wait(1);
        progress.advance();
        EXPECT_EQ(m_err.str(), "\rSheets 3 of 12\rSheets 5 of 12");
        m_err.str("");
    }
    EXPECT_EQ(m_err.str(), "\r" + std::string(14, ' ') + "\r");
    EXPECT_EQ(m_out.str(), "");
}

TEST_F(ProgressTest, SaysNothingWhereStandardErrorIsNoTerminal) {
    ConsoleTraits traits = terminalTraits();
    traits.errIsTerminal = false;
    Console console(m_out, m_err, traits);
    Progress progress(console, "Sheets", 12, clock());
    wait(5000);
    progress.advance();
    progress.finish();
    EXPECT_EQ(m_err.str(), "");
}

TEST_F(ProgressTest, ShowsOnlyTheCountWhereTheTotalIsNotKnown) {
    Console console(m_out, m_err, terminalTraits());
    Progress progress(console, "Rows", 0, clock());
    wait(1000);
    progress.advance(7);
    EXPECT_EQ(m_err.str(), "\rRows 7");
}

TEST_F(ProgressTest, ShortensTheLabelToStayOnOneLine) {
    ConsoleTraits traits = terminalTraits();
    traits.errWidth = 20;
    Console console(m_out, m_err, traits);
    Progress progress(console, "Reading\n measurements", 40, clock());
    wait(1000);
    progress.advance(12);
    EXPECT_EQ(m_err.str(), "\rReading\\u… 12 of 40");
    EXPECT_EQ(displayWidth(m_err.str().substr(1)), 19);
}

}  // namespace
}  // namespace rackbook
