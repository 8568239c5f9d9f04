// From the words of the command line to an exit code.
#pragma once

#include <ostream>
#include <string>
#include <vector>

#include "cli/Conversation.h"

namespace rackbook {

// Runs one command. Every failure becomes a message on `err` and an exit code; nothing is thrown.
int runProgram(const std::vector<std::string>& words, std::ostream& out, std::ostream& err);

// The same with a person who may be asked for what the words leave open.
int runProgram(const std::vector<std::string>& words, Conversation& conversation);

}  // namespace rackbook
