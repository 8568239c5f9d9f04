// The commands whose writing is made to fail: at least one for every verb that writes.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "cli/CommandSpec.h"

namespace rackbook::faults {

struct WritingCommand {
    std::string verb;
    std::string line;                     // without "rackbook"
    std::vector<std::string> setUp = {};  // lines that run before, after the script "studio"
    std::map<std::string, std::string> files = {};  // that lie there, by name
    std::string book = "studio.rackbook";           // that it writes
    bool wantsFilledSheet = false;                  // a bench sheet of TIDE/L1, filled in by qpdf
    bool goesBack = false;                          // the book holds less afterwards
    // Names that may be left lying where the command had done its work already: the lock of a
    // process that is gone, which whoever writes there next takes over; a note half written, which
    // the next of its kind replaces; SQLite's own files beside a book that was only read, which
    // whoever opens it next takes up.
    std::set<std::string> mayLeave = {};
};

const std::vector<WritingCommand>& writingCommands();

// Whether a verb writes the book or a file.
bool writes(const CommandSpec& spec);

}  // namespace rackbook::faults
