// Long reports on a terminal, a screenful at a time.
#pragma once

#include <ostream>
#include <string>

namespace rackbook {

// Shows the text through the program that the environment variable PAGER names (less where it is
// not set; a PAGER that is empty or cat means none) where the terminal that standard output is has
// fewer rows than the text has lines; else writes it to `out`. A pager that cannot be run shows
// nothing, so the text is then written too.
void showPaged(const std::string& text, std::ostream& out);

// Of standard output; 0 where it is no terminal or does not say.
int terminalRows();

}  // namespace rackbook
