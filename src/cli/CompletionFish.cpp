#include "cli/Completion.h"

namespace rackbook {

namespace {

// fish reads a backslash inside single quotes.
std::string fishQuoted(const std::string& text) {
    std::string quoted = "'";
    for (const char c : text) {
        if (c == '\'' || c == '\\')
            quoted += '\\';
        quoted += c;
    }
    return quoted + "'";
}

std::string line(const std::string& condition, const std::string& rest) {
    return "complete -c rackbook -n " + fishQuoted(condition) + rest + "\n";
}

std::string optionLine(const std::string& condition, const OptionSpec& option) {
    std::string rest = " -l " + option.name;
    if (!option.valueName.empty()) {
        rest += " -r";
        if (!option.choices.empty()) {
            std::string choices;
            for (const std::string& choice : option.choices)
                choices += (choices.empty() ? "" : " ") + choice;
            rest += " -f -a " + fishQuoted(choices);
        } else if (completesTo(option) == Completes::files) {
            rest += " -F";
        } else if (completesTo(option) == Completes::folders) {
            rest += " -f -a '(__fish_complete_directories)'";
        } else {
            rest += " -f";
        }
    }
    return line(condition, rest + " -d " + fishQuoted(firstSentence(option.help)));
}

std::string verbLines(const CommandSpec& spec) {
    const std::string condition = "test (__rackbook_verb) = " + fishQuoted(spec.name);
    std::string text;
    for (const OptionSpec& option : optionsOf(spec))
        text += optionLine(condition, option);
    if (completesTo(spec) == Completes::files)
        text += line(condition, " -F");
    else if (completesTo(spec) == Completes::folders)
        text += line(condition, " -f -a '(__fish_complete_directories)'");
    return text;
}

std::string stepLines(const VerbStep& step) {
    std::string text;
    const std::string condition = "__rackbook_after " + fishQuoted(step.typed);
    for (const auto& [word, help] : step.next) {
        const bool option = word.rfind("--", 0) == 0;
        text += line(condition, (option ? " -l " + word.substr(2) : " -a " + fishQuoted(word)) +
                                    " -d " + fishQuoted(help));
    }
    return text;
}

}  // namespace

std::string fishCompletion(const std::vector<CommandSpec>& specs) {
    std::string names;
    for (const CommandSpec* spec : longestNamesFirst(specs))
        names += " " + fishQuoted(spec->name);
    std::string text =
        "# Completion of rackbook for fish.\n"
        "function __rackbook_after\n"
        "    set -l words (commandline -opc)\n"
        "    set -e words[1]\n"
        "    test \"$words\" = \"$argv[1]\"\n"
        "end\n\n"
        "function __rackbook_verb\n"
        "    set -l words (commandline -opc)\n"
        "    set -e words[1]\n"
        "    for verb in" +
        names +
        "\n        if string match -q -- \"$verb *\" \"$words \"\n"
        "            echo $verb\n"
        "            return\n"
        "        end\n"
        "    end\n"
        "    echo none\n"
        "end\n\n"
        "complete -c rackbook -f\n";
    for (const VerbStep& step : verbSteps(specs))
        text += stepLines(step);
    for (const CommandSpec& spec : specs)
        text += verbLines(spec);
    return text;
}

}  // namespace rackbook
