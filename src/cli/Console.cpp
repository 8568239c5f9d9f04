#include "cli/Console.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <iostream>

#include "base/Numbers.h"
#include "base/Text.h"
#include "cli/HarmlessStream.h"

namespace rackbook {

namespace {

constexpr int widthOfTerminal = 80;
constexpr int widthElsewhere = 100;
constexpr int leastWidth = 20;
constexpr std::chrono::seconds quietTime{1};
constexpr std::chrono::milliseconds betweenShows{100};

int descriptorOf(const std::ostream& stream) {
    if (&stream == &std::cout)
        return STDOUT_FILENO;
    return &stream == &std::cerr || &stream == &std::clog ? STDERR_FILENO : -1;
}

std::string environment(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? std::string() : value;
}

int terminalWidth(int descriptor) {
    const auto columns = parseWhole(environment("COLUMNS"));
    if (columns && *columns >= 1 && *columns <= 10000)
        return std::max(leastWidth, static_cast<int>(*columns));
    winsize size{};
    if (ioctl(descriptor, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
        return std::max(leastWidth, static_cast<int>(size.ws_col));
    return widthOfTerminal;
}

// Select Graphic Rendition, ECMA-48 section 8.3.117.
std::string rendered(const char* parameters, const std::string& text) {
    return std::string("\x1b[") + parameters + "m" + text + "\x1b[0m";
}

}  // namespace

ConsoleTraits consoleTraits(const std::ostream& out, const std::ostream& err) {
    ConsoleTraits traits;
    const int outDescriptor = descriptorOf(out);
    const int errDescriptor = descriptorOf(err);
    traits.outIsTerminal = outDescriptor >= 0 && isatty(outDescriptor) == 1;
    traits.errIsTerminal = errDescriptor >= 0 && isatty(errDescriptor) == 1;
    traits.allowsColour = environment("NO_COLOR").empty() && environment("TERM") != "dumb";
    traits.width = traits.outIsTerminal ? terminalWidth(outDescriptor) : widthElsewhere;
    traits.errWidth = traits.errIsTerminal ? terminalWidth(errDescriptor) : widthElsewhere;
    return traits;
}

Console::Console(std::ostream& out, std::ostream& err)
    : Console(out, err, consoleTraits(out, err)) {}

Console::Console(std::ostream& out, std::ostream& err, const ConsoleTraits& traits)
    : m_out(out), m_err(err), m_traits(traits) {}

bool Console::allowsColour(Stream stream) const {
    return m_traits.allowsColour &&
           (stream == Stream::out ? m_traits.outIsTerminal : m_traits.errIsTerminal);
}

std::string Console::emphasis(const std::string& text, Stream stream) const {
    return allowsColour(stream) ? rendered("1", text) : text;
}

std::string Console::warningColour(const std::string& text, Stream stream) const {
    return allowsColour(stream) ? rendered("31", text) : text;
}

Progress::Progress(Console& console, std::string label, std::size_t total, NowFunction now)
    : m_console(console),
      m_label(printable(label)),
      m_total(total),
      m_now(std::move(now)),
      m_nextShow(m_now() + quietTime) {}

Progress::~Progress() {
    finish();
}

void Progress::advance(std::size_t by) {
    m_done += by;
    if (!m_console.errIsTerminal())
        return;
    const TimePoint now = m_now();
    if (now < m_nextShow)
        return;
    m_nextShow = now + betweenShows;
    show(line());
}

void Progress::finish() {
    if (m_shownWidth == 0)
        return;
    show("");
    streamBehind(m_console.err()) << "\r" << std::flush;
}

std::string Progress::line() const {
    std::string count = std::to_string(m_done);
    if (m_total > 0)
        count += " of " + std::to_string(m_total);
    // The last column stays free: some terminals move on to the next line after filling it.
    const int room = m_console.errWidth() - 1 - displayWidth(" " + count);
    std::string label = m_label;
    for (std::size_t kept = codePoints(label).size(); kept > 0 && displayWidth(label) > room;)
        label = m_label.substr(0, offsetOfCodePoint(m_label, --kept)) + "…";
    return label + " " + count;
}

// Spaces, not an escape sequence, wipe the longer line before, so that any terminal will do.
void Progress::show(const std::string& line) {
    const int width = displayWidth(line);
    const int wiped = std::max(0, m_shownWidth - width);
    streamBehind(m_console.err()) << "\r" << line
                                  << std::string(static_cast<std::size_t>(wiped), ' ')
                                  << std::flush;
    m_shownWidth = width;
}

}  // namespace rackbook
