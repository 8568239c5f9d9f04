// What lies in the current folder before a command of the matrix runs.
#pragma once

#include "WritingVerbs.h"

namespace rackbook::faults {

// The book of the script "studio", the folders that scripts find, and what the command asks for.
// Throws std::runtime_error where that fails.
void prepareStudio(const WritingCommand& command);

}  // namespace rackbook::faults
