#include "cli/Completion.h"

namespace rackbook {

namespace {

std::string spaced(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words)
        text += (text.empty() ? "" : " ") + word;
    return text;
}

std::string listed(const std::vector<std::string>& words) {
    return "_rackbook_words " + singleQuoted(spaced(words));
}

std::string paths(Completes kind) {
    return kind == Completes::files ? "_rackbook_paths -f" : "_rackbook_paths -d";
}

std::string valueCase(const OptionSpec& option) {
    std::string action = ":";
    if (!option.choices.empty())
        action = listed(option.choices);
    else if (completesTo(option) != Completes::nothing)
        action = paths(completesTo(option));
    return "                --" + option.name + ") " + action + "; return ;;\n";
}

std::string verbCase(const CommandSpec& spec) {
    std::string values;
    std::vector<std::string> names;
    for (const OptionSpec& option : optionsOf(spec)) {
        names.push_back("--" + option.name);
        if (!option.valueName.empty())
            values += valueCase(option);
    }
    std::string text =
        "        " + singleQuoted(spec.name) + "|" + singleQuoted(spec.name + " ") + "*)\n";
    if (!values.empty())
        text += "            case \"$prev\" in\n" + values + "            esac\n";
    const Completes arguments = completesTo(spec);
    if (arguments == Completes::nothing)
        return text + "            " + listed(names) + " ;;\n";
    return text + "            if [[ $cur == -* ]]; then " + listed(names) + "; else " +
           paths(arguments) + "; fi ;;\n";
}

// A verb may also be the first word of longer ones: then both lists are offered.
std::string stepCase(const VerbStep& step, const std::vector<CommandSpec>& specs) {
    std::vector<std::string> words;
    for (const auto& next : step.next)
        words.push_back(next.first);
    for (const CommandSpec& spec : specs)
        if (spec.name == step.typed)
            for (const OptionSpec& option : optionsOf(spec))
                words.push_back("--" + option.name);
    return "        " + singleQuoted(step.typed) + ") " + listed(words) + " ;;\n";
}

constexpr const char* head = R"(# Completion of rackbook for bash.
_rackbook_words() {
    COMPREPLY=($(compgen -W "$1" -- "$cur"))
}

_rackbook_paths() {
    local line
    COMPREPLY=()
    while IFS= read -r line; do
        COMPREPLY+=("$line")
    done < <(compgen "$1" -- "$cur")
    compopt -o filenames
}

_rackbook() {
    local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]}
    local IFS=$' \t\n'
    local typed="${COMP_WORDS[*]:1:COMP_CWORD-1}"
    COMPREPLY=()
    # bash takes --option=value apart at the sign.
    if [[ $cur == = ]]; then
        cur=
    elif [[ $prev == = ]]; then
        prev=${COMP_WORDS[COMP_CWORD-2]}
    fi
    case "$typed" in
)";

constexpr const char* foot = R"(    esac
}

complete -F _rackbook rackbook
)";

}  // namespace

std::string bashCompletion(const std::vector<CommandSpec>& specs) {
    std::string text = head;
    // A step matches only its exact words, so it must come before the verbs of that name.
    for (const VerbStep& step : verbSteps(specs))
        text += stepCase(step, specs);
    for (const CommandSpec* spec : longestNamesFirst(specs))
        text += verbCase(*spec);
    return text + foot;
}

}  // namespace rackbook
