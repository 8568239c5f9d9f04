// One verb: its description and what runs it.
#pragma once

#include <string>

#include "base/Error.h"
#include "cli/Arguments.h"
#include "cli/CommandSpec.h"
#include "cli/Console.h"
#include "cli/Conversation.h"

namespace rackbook {

class BookFile;

// Where the program's own files lie, in the build tree and installed.
struct DataFolders {
    std::string schema;
    std::string templates;
};

struct CommandContext {
    const Arguments& arguments;
    Console& console;
    const DataFolders& folders;
    Conversation& conversation;
    // Where the verb is one of several that are kept together or not at all: the book they go to,
    // open to write. Whoever runs them says whether it was kept. Not owned.
    const BookFile* jointBook = nullptr;
};

// A row of the command table.
struct Command {
    CommandSpec spec;
    ExitCode (*run)(CommandContext& context);
};

}  // namespace rackbook
