// What the completion scripts of all shells have in common.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "cli/CommandSpec.h"

namespace rackbook {

// Words that may follow the words typed so far where those do not yet make a verb: after "" the
// first words of all verbs, after "mix" the second words of "mix add" and "mix show".
struct VerbStep {
    std::string typed;
    std::vector<std::pair<std::string, std::string>> next;  // word, its help
};

// Longest first, so that "mix add" is tried before "mix". The first words are the last step, and
// hold --help and --version too.
std::vector<VerbStep> verbSteps(const std::vector<CommandSpec>& specs);
std::vector<const CommandSpec*> longestNamesFirst(const std::vector<CommandSpec>& specs);

// The help up to its first full stop that ends a sentence, on one line.
std::string firstSentence(const std::string& help);

enum class Completes { nothing, files, folders };
Completes completesTo(const OptionSpec& option);
// Any argument of the verb that is a path: shells do not tell them apart by position.
Completes completesTo(const CommandSpec& spec);

// In single quotes, as bash and zsh read them.
std::string singleQuoted(const std::string& text);

std::string bashCompletion(const std::vector<CommandSpec>& specs);
std::string zshCompletion(const std::vector<CommandSpec>& specs);
std::string fishCompletion(const std::vector<CommandSpec>& specs);

}  // namespace rackbook
