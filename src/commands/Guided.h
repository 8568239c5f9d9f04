// A verb whose missing words are asked for.
#pragma once

#include <string>
#include <vector>

#include "commands/Command.h"

namespace rackbook {

// Asks for what `words` leave open, shows the answers, and runs the verb once they are said to be
// right. Nothing is recorded before that. Throws GaveUp, and what the verb throws.
ExitCode runGuided(const Command& command, const std::vector<std::string>& words,
                   const DataFolders& folders, Conversation& conversation);

}  // namespace rackbook
