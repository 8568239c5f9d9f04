// Breaking text into lines by the columns it takes on a terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

// Lines of at most `width` columns, broken at spaces, tabs and line feeds, of which runs count as
// one space, and between wide East Asian characters, though not before their closing marks or
// after their opening ones (Unicode Standard Annex 14, classes CL and OP, from memory). A piece
// that is wider than the line stays whole on a line of its own: nothing is cut. Never empty; text
// without words gives one empty line. Pre: valid UTF-8.
std::vector<std::string> wrapped(std::string_view text, int width);

// Columns of the widest piece that wrapped() will not break.
int widestPiece(std::string_view text);

// Paragraphs, which empty lines divide, each wrapped and indented by `indent` spaces; lines that
// begin with a space are kept as they are. `width` includes the indent. Ends with a line feed
// unless there are no words.
std::string wrappedParagraphs(std::string_view text, int width, int indent = 0);

// Each line wrapped by itself and indented, without gaps: several messages under each other.
std::string wrappedLines(std::string_view text, int width, int indent = 0);

}  // namespace rackbook
