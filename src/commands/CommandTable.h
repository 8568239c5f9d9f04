// The one table of verbs: parser, help, completion and manual page are made from it.
#pragma once

#include <string>
#include <vector>

#include "commands/Command.h"

namespace rackbook {

extern const char* const programVersion;

const std::vector<Command>& commandTable();

// The verb of that name. Throws UsageError with the nearest name where there is none.
const Command& commandNamed(const std::string& name);

std::vector<CommandSpec> commandSpecs();

}  // namespace rackbook
