// The words after a verb, checked against its description.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cli/CommandSpec.h"

namespace rackbook {

// Options and positional arguments by their names in the description. Asking for a name that the
// description does not hold, and that is not a common option, is a fault of the program and throws
// std::out_of_range.
class Arguments {
public:
    bool has(const std::string& name) const;

    // As it stands on the command line: "--by", "EDITION". Pre: the verb takes it.
    const std::string& label(const std::string& name) const;

    // The first value; nothing where none was given, and for flags.
    std::optional<std::string> value(const std::string& name) const;

    // The same, but throws UsageError where it is missing.
    std::string text(const std::string& name) const;

    // All values in the order given.
    const std::vector<std::string>& values(const std::string& name) const;

    // Throw UsageError where the value is not a finite number, or not a whole one.
    std::optional<double> number(const std::string& name) const;
    std::optional<long long> whole(const std::string& name) const;

private:
    friend class ArgumentsBuilder;

    struct Entry {
        std::string label;  // "--by", "EDITION"
        std::string usage;  // "--by NAME", "EDITION"
        bool given = false;
        std::vector<std::string> values;
    };

    std::string m_verb;
    std::map<std::string, Entry> m_entries;
};

// Options may stand before, between and after positional arguments; "--" ends them; a value may
// follow as the next word or after "=". "-" alone is a positional argument. Where --help stands
// among the options, only has("help") is set and nothing else is checked. Throws UsageError.
Arguments parseArguments(const CommandSpec& spec, const std::vector<std::string>& words);

// The same, but what is required and missing is left missing, and asking for it throws UsageError.
Arguments parseWhatIsThere(const CommandSpec& spec, const std::vector<std::string>& words);

// --book, else the environment variable RACKBOOK_BOOK where it is not empty, else studio.rackbook
// in the current folder. Throws UsageError where the variable is not UTF-8.
std::string bookPath(const Arguments& arguments);

}  // namespace rackbook
