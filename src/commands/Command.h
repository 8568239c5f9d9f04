// One verb: its description and what runs it.
#pragma once

#include <string>

#include "base/Error.h"
#include "cli/Arguments.h"
#include "cli/CommandSpec.h"
#include "cli/Console.h"

namespace rackbook {

// Where the program's own files lie, in the build tree and installed.
struct DataFolders {
    std::string schema;
    std::string templates;
};

struct CommandContext {
    const Arguments& arguments;
    Console& console;
    const DataFolders& folders;
};

// A row of the command table.
struct Command {
    CommandSpec spec;
    ExitCode (*run)(CommandContext& context);
};

}  // namespace rackbook
