#include "cli/Completion.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Finding.h"
#include "base/Text.h"
#include "cli/Help.h"

namespace rackbook {

namespace {

void addNext(std::vector<VerbStep>& steps, const std::string& typed, const std::string& word,
             const std::string& help) {
    auto step = std::find_if(steps.begin(), steps.end(),
                             [&](const VerbStep& known) { return known.typed == typed; });
    if (step == steps.end())
        step = steps.insert(steps.end(), {typed, {}});
    const bool known = std::any_of(step->next.begin(), step->next.end(),
                                   [&](const auto& one) { return one.first == word; });
    if (!known)
        step->next.emplace_back(word, help);
}

Completes ofPathName(const std::string& name, const char* file, const char* folder) {
    if (name == file)
        return Completes::files;
    return name == folder ? Completes::folders : Completes::nothing;
}

}  // namespace

std::vector<VerbStep> verbSteps(const std::vector<CommandSpec>& specs) {
    std::vector<VerbStep> steps;
    for (const CommandSpec& spec : specs) {
        for (std::size_t start = 0; start <= spec.name.size();) {
            const std::size_t end = std::min(spec.name.find(' ', start), spec.name.size());
            const std::string typed = start == 0 ? "" : spec.name.substr(0, start - 1);
            const bool whole = end == spec.name.size();
            addNext(steps, typed, spec.name.substr(start, end - start),
                    whole ? firstSentence(spec.summary) : spec.group);
            start = end + 1;
        }
    }
    addNext(steps, "", "--help", "Show the verbs");
    addNext(steps, "", "--version", "Show the version");
    std::stable_sort(steps.begin(), steps.end(), [](const VerbStep& a, const VerbStep& b) {
        return a.typed.size() > b.typed.size();
    });
    return steps;
}

std::vector<const CommandSpec*> longestNamesFirst(const std::vector<CommandSpec>& specs) {
    std::vector<const CommandSpec*> sorted;
    for (const CommandSpec& spec : specs)
        sorted.push_back(&spec);
    std::stable_sort(sorted.begin(), sorted.end(), [](const CommandSpec* a, const CommandSpec* b) {
        return a->name.size() > b->name.size();
    });
    return sorted;
}

std::string firstSentence(const std::string& help) {
    std::string text = help.substr(0, help.find(". "));
    std::replace(text.begin(), text.end(), '\n', ' ');
    if (!text.empty() && text.back() == '.')
        text.pop_back();
    return text;
}

Completes completesTo(const OptionSpec& option) {
    return ofPathName(option.valueName, "FILE", "FOLDER");
}

Completes completesTo(const CommandSpec& spec) {
    Completes result = Completes::nothing;
    for (const PositionalSpec& positional : spec.positionals) {
        const Completes one = ofPathName(positional.name, "file", "folder");
        if (result != Completes::files && one != Completes::nothing)
            result = one;
    }
    return result;
}

std::string singleQuoted(const std::string& text) {
    std::string quoted = "'";
    for (const char c : text)
        quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return quoted + "'";
}

const std::vector<std::string>& completionShells() {
    static const std::vector<std::string> shells = {"bash", "zsh", "fish"};
    return shells;
}

std::string completionScript(const std::string& shell, const std::vector<CommandSpec>& specs) {
    if (shell == "bash")
        return bashCompletion(specs);
    if (shell == "zsh")
        return zshCompletion(specs);
    if (shell == "fish")
        return fishCompletion(specs);
    throw UsageError("there is no completion for the shell \"" + excerpt(shell) + "\"",
                     "Choose " + joined(completionShells(), " or ") + ".");
}

}  // namespace rackbook
