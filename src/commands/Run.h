// From the words of the command line to an exit code.
#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace rackbook {

// Runs one command. Every failure becomes a message on `err` and an exit code; nothing is thrown.
int runProgram(const std::vector<std::string>& words, std::ostream& out, std::ostream& err);

}  // namespace rackbook
