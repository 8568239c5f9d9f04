// Which questions make up an entry, verb by verb.
#pragma once

#include <string>
#include <vector>

#include "cli/CommandSpec.h"
#include "commands/Answers.h"
#include "commands/Suggestions.h"

namespace rackbook {

// A question for one argument or option of the verb.
struct GuideStep {
    std::string name;  // as in the verb's description
    std::string question;
    // Absent: always asked, unless the words said it already.
    bool (*isWanted)(const Answers& answers) = nullptr;
    // Why nothing in the book could be the answer, and what helps, in whole sentences: shown in
    // place of the question. Empty where it can be asked. Absent: always so.
    std::string (*obstacle)(const AnswersSoFar& soFar) = nullptr;
};

// In the order in which a person would tell it. A verb without questions of its own has one for
// each thing that it cannot do without.
std::vector<GuideStep> guideSteps(const CommandSpec& spec);

// The names of verbs that have questions of their own. For tests.
std::vector<std::string> guidedVerbs();

}  // namespace rackbook
