// Pieces of text about a verb that the help, the manual page and the messages share.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "cli/CommandSpec.h"

namespace rackbook {

// "EDITION"
std::string positionalName(const PositionalSpec& spec);
// "EDITION", "[NOTE]", "IMPRESSION..." or "[IMPRESSION...]"
std::string positionalLabel(const PositionalSpec& spec);
// "--book FILE" or "--json"
std::string optionLabel(const OptionSpec& spec);

// What the option does, then its choices, whether it is required or may be repeated, its default.
std::string optionSentences(const OptionSpec& spec);

// Adds a full stop where the text has no end mark.
std::string sentence(const std::string& text);

// What follows "rackbook VERB": {"EDITION", "--mix MIX", "[options]"}
std::vector<std::string> usageParts(const CommandSpec& spec);

// Groups in the order of their first verb, each with its verbs in the order given.
using CommandGroup = std::pair<std::string, std::vector<const CommandSpec*>>;
std::vector<CommandGroup> groupsOf(const std::vector<CommandSpec>& specs);

// The exit codes and what they mean.
const std::vector<std::pair<std::string, std::string>>& exitCodeMeanings();

// Below the details: that it asks for what is missing. Empty where it does not.
std::string questionsNote(const CommandSpec& spec);

}  // namespace rackbook
