#include "cli/Completion.h"

#include <algorithm>

namespace rackbook {

namespace {

// Characters that _arguments and _describe read as marks of their own.
std::string marked(const std::string& text) {
    std::string result;
    for (const char c : text) {
        if (c == '\\' || c == ':' || c == '[' || c == ']')
            result += '\\';
        result += c;
    }
    return result;
}

std::string pathAction(Completes kind) {
    switch (kind) {
        case Completes::files:
            return "_files";
        case Completes::folders:
            return "_files -/";
        case Completes::nothing:
            break;
    }
    return " ";
}

std::string optionSpec(const OptionSpec& option) {
    const bool takesValue = !option.valueName.empty();
    std::string spec = option.repeatable ? "*" : "";
    spec += "--" + option.name + (takesValue ? "=" : "") + "[" +
            marked(firstSentence(option.help)) + "]";
    if (!takesValue)
        return singleQuoted(spec);
    std::string action = pathAction(completesTo(option));
    if (!option.choices.empty()) {
        action.clear();
        for (const std::string& choice : option.choices)
            action += (action.empty() ? "(" : " ") + marked(choice);
        action += ")";
    }
    return singleQuoted(spec + ":" + marked(option.valueName) + ":" + action);
}

std::string verbCase(const CommandSpec& spec) {
    const auto words = 1 + std::count(spec.name.begin(), spec.name.end(), ' ');
    std::string text = "        (" + singleQuoted(spec.name) + "|" + singleQuoted(spec.name + " ") +
                       "*)\n            shift " + std::to_string(words) + " words\n" +
                       "            (( CURRENT -= " + std::to_string(words) + " ))\n" +
                       "            _arguments -S";
    for (const OptionSpec& option : optionsOf(spec))
        text += " \\\n                " + optionSpec(option);
    if (!spec.positionals.empty())
        text +=
            " \\\n                " + singleQuoted("*:" + marked(spec.positionals.front().name) +
                                                   ":" + pathAction(completesTo(spec)));
    return text + "\n            ;;\n";
}

std::string stepCase(const VerbStep& step, const std::vector<CommandSpec>& specs) {
    std::string text = "        (" + singleQuoted(step.typed) + ")\n            next=(";
    for (const auto& [word, help] : step.next)
        text += "\n                " + singleQuoted(marked(word) + ":" + help);
    for (const CommandSpec& spec : specs)
        if (spec.name == step.typed)
            for (const OptionSpec& option : optionsOf(spec))
                text += "\n                " +
                        singleQuoted("--" + option.name + ":" + firstSentence(option.help));
    return text + "\n            )\n            _describe 'verb' next\n            ;;\n";
}

constexpr const char* head = R"(#compdef rackbook
# Completion of rackbook for zsh.
_rackbook() {
    local typed="${(j: :)words[2,CURRENT-1]}"
    local -a next
    case "$typed" in
)";

constexpr const char* foot = R"(    esac
}

# The file may be found through fpath or read with source.
if [[ ${funcstack[1]} == _rackbook ]]; then
    _rackbook "$@"
else
    compdef _rackbook rackbook
fi
)";

}  // namespace

std::string zshCompletion(const std::vector<CommandSpec>& specs) {
    std::string text = head;
    for (const VerbStep& step : verbSteps(specs))
        text += stepCase(step, specs);
    for (const CommandSpec* spec : longestNamesFirst(specs))
        text += verbCase(*spec);
    return text + foot;
}

}  // namespace rackbook
