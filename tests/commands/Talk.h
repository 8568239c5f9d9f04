// Commands whose questions are answered by a script of answers.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

struct Talk {
    std::string text;  // what stood on the terminal, answers included
    int exitCode = 0;
};

// Runs a command in this process as if on a terminal of 100 columns; each answer is one line, and
// the input ends after the last.
Talk talk(const std::vector<std::string>& words, const std::vector<std::string>& answers);

}  // namespace rackbook
