// Breaks text into lines.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sheets/TextMeasurer.h"

namespace rackbook {

// Lines no wider than width_mm, broken at spaces, after a hyphen, dash or slash between letters,
// and between East Asian characters, where neither the mark that would end the line nor the one
// that would begin the next forbids it, and a figure stays with the word behind it; a word wider
// than that is broken between code points, but never before a combining mark. Runs of spaces become
// one; no-break spaces hold; a line feed begins a new line. At least one line, which may be empty.
// A single code point wider than width_mm stands on a line of its own. Pre: text came from
// settable(); width_mm > 0.
std::vector<std::string> breakLines(const TextMeasurer& measurer, FontRole role, double size_pt,
                                    std::string_view text, double width_mm);

// The width below which breakLines would break a word of the text between its letters.
double leastWidth_mm(const TextMeasurer& measurer, FontRole role, double size_pt,
                     std::string_view text);

}  // namespace rackbook
