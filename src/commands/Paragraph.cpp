#include "commands/Paragraph.h"

#include <algorithm>

#include "base/Text.h"
#include "cli/Wrap.h"

namespace rackbook {

namespace {

constexpr int widest = 100;

}  // namespace

void printParagraph(Console& console, const std::string& text) {
    console.out() << "\n";
    printWrapped(console, text);
}

void printHeading(Console& console, const std::string& text) {
    for (const std::string& line : wrapped(text, std::min(console.width(), widest)))
        console.out() << console.emphasis(printable(line)) << "\n";
}

void printWrapped(Console& console, const std::string& text) {
    for (const std::string& line : wrapped(text, std::min(console.width(), widest)))
        console.out() << printable(line) << "\n";
}

}  // namespace rackbook
