#include "commands/Paragraph.h"

#include <algorithm>

#include "base/Text.h"
#include "cli/Wrap.h"

namespace rackbook {

void printParagraph(Console& console, const std::string& text) {
    console.out() << "\n";
    printWrapped(console, text);
}

void printWrapped(Console& console, const std::string& text) {
    constexpr int widest = 100;
    for (const std::string& line : wrapped(text, std::min(console.width(), widest)))
        console.out() << printable(line) << "\n";
}

}  // namespace rackbook
