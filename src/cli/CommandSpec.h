// What a verb takes and does, as plain data. The parser, the help, the completion scripts and the
// manual page are all made from it, so that none of them can say something else.
#pragma once

#include <string>
#include <vector>

#include "base/Translated.h"

namespace rackbook {

struct OptionSpec {
    std::string name;       // without hyphens, for instance "dry-run"
    std::string valueName;  // "FILE"; empty: a flag. FILE and FOLDER complete to paths.
    std::string help;       // one or more sentences
    bool required = false;
    bool repeatable = false;
    std::string defaultText;  // for the help only; the parser fills in nothing
    std::vector<std::string> choices;
};

// Shown in capitals. The names "file" and "folder" complete to paths.
struct PositionalSpec {
    std::string name;
    std::string help;
    bool required = true;
    bool repeatable = false;  // only the last may be
};

struct Example {
    std::string command;
    std::string what;
};

// Groups and summaries are marked with toTranslate(), under the contexts "group" and "summary".
// `name` is one word, or several with one space between them. In `details` an empty line starts a
// paragraph, and lines that begin with a space are kept as they are.
struct CommandSpec {
    std::string name;
    std::string group;
    std::string summary;
    std::string details;
    std::vector<PositionalSpec> positionals;
    std::vector<OptionSpec> options;
    bool writesBook = false;
    bool reportsJson = false;
    bool needsBook = true;
    std::string caution;  // hazard words, shown in the help and the manual page
    std::vector<Example> examples;
};

// How long a verb that writes waits for another program to let go of the book, unless --wait says
// otherwise.
constexpr int defaultWait_s = 5;

// The names that optionsOf() may add.
const std::vector<std::string>& commonOptionNames();

// Whether it writes and there is something that it cannot do without: on a terminal it then asks.
bool asksForWhatIsMissing(const CommandSpec& spec);

// The verb's own options, then the common ones: --book where it needs a book, --json where it
// reports, --dry-run, --by and --wait where it writes, and always --help.
std::vector<OptionSpec> optionsOf(const CommandSpec& spec);

// What is wrong with the description itself, one sentence each: repeated names, a repeatable
// argument before the last, a required one after an optional one, missing help. For tests of the
// command table.
std::vector<std::string> faultsOf(const CommandSpec& spec);

}  // namespace rackbook
