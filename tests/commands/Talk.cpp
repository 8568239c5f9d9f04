#include "Talk.h"

#include <sstream>
#include <streambuf>

#include "commands/Run.h"

namespace rackbook {

namespace {

// Gives one line at a time and writes it to the terminal when it is asked for, as typing does.
class TypedLines : public std::streambuf {
public:
    TypedLines(const std::vector<std::string>& lines, std::ostream& terminal)
        : m_lines(lines), m_terminal(terminal) {}

private:
    int_type underflow() override {
        if (m_next == m_lines.size())
            return traits_type::eof();
        m_line = m_lines[m_next++] + "\n";
        m_terminal << m_line;
        setg(m_line.data(), m_line.data(), m_line.data() + m_line.size());
        return traits_type::to_int_type(m_line.front());
    }

    const std::vector<std::string>& m_lines;
    std::ostream& m_terminal;
    std::size_t m_next = 0;
    std::string m_line;
};

}  // namespace

Talk talk(const std::vector<std::string>& words, const std::vector<std::string>& answers) {
    std::ostringstream terminal;
    TypedLines typed(answers, terminal);
    std::istream in(&typed);
    Console console(terminal, terminal);
    Conversation conversation(in, console, true);
    Talk talk;
    talk.exitCode = runProgram({words.begin() + 1, words.end()}, conversation);
    talk.text = terminal.str();
    return talk;
}

}  // namespace rackbook
