// The two streams a person reads, and what may be done on them.
#pragma once

#include <chrono>
#include <cstddef>
#include <functional>
#include <ostream>
#include <string>

namespace rackbook {

struct ConsoleTraits {
    bool outIsTerminal = false;
    bool errIsTerminal = false;
    bool allowsColour = false;  // on whichever stream is a terminal
    int width = 100;            // columns of standard output
    int errWidth = 100;         // columns of standard error
};

// Asks the system and the environment. A stream that is not std::cout, std::cerr or std::clog is
// no terminal. Width of a terminal: COLUMNS where it is a whole number from 1 to 10,000, else what
// the terminal says, else 80; never below 20. Width of anything else: 100. Colour is allowed
// unless NO_COLOR is set and not empty, or TERM is dumb.
ConsoleTraits consoleTraits(const std::ostream& out, const std::ostream& err);

// Keeps references: the streams must outlive it. Not for use by several threads at once.
class Console {
public:
    enum class Stream { out, err };

    Console(std::ostream& out, std::ostream& err);
    Console(std::ostream& out, std::ostream& err, const ConsoleTraits& traits);

    std::ostream& out() { return m_out; }
    std::ostream& err() { return m_err; }
    bool outIsTerminal() const { return m_traits.outIsTerminal; }
    bool errIsTerminal() const { return m_traits.errIsTerminal; }
    int width() const { return m_traits.width; }
    int errWidth() const { return m_traits.errWidth; }
    bool allowsColour(Stream stream) const;

    // The text itself where colour is not allowed on the stream it is meant for. Pre: the text has
    // gone through printable(). Colour never carries a meaning that the words do not.
    std::string emphasis(const std::string& text, Stream stream = Stream::out) const;
    std::string warningColour(const std::string& text, Stream stream = Stream::err) const;

private:
    std::ostream& m_out;
    std::ostream& m_err;
    ConsoleTraits m_traits;
};

// One line on standard error that says how far long work has come: nothing where that is no
// terminal, nothing in the first second, and no trace at the end.
class Progress {
public:
    using TimePoint = std::chrono::steady_clock::time_point;
    using NowFunction = std::function<TimePoint()>;

    // `total` 0: not known, so only the count is shown. The console must outlive it.
    Progress(
        Console& console, std::string label, std::size_t total,
        NowFunction now = [] { return std::chrono::steady_clock::now(); });
    ~Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;

    void advance(std::size_t by = 1);

    // Clears the line; the destructor does so too.
    void finish();

private:
    std::string line() const;
    void show(const std::string& line);

    Console& m_console;
    std::string m_label;
    std::size_t m_total;
    NowFunction m_now;
    TimePoint m_nextShow;
    std::size_t m_done = 0;
    int m_shownWidth = 0;
};

}  // namespace rackbook
