#include "cli/SpecText.h"

#include <algorithm>

#include "base/Text.h"
#include "base/Translated.h"

namespace rackbook {

namespace {

std::string capitals(std::string text) {
    // ASCII only, so that the result is the same in every locale.
    for (char& c : text)
        if (c >= 'a' && c <= 'z')
            c = static_cast<char>(c - 'a' + 'A');
    return text;
}

}  // namespace

std::string positionalName(const PositionalSpec& spec) {
    return capitals(spec.name);
}

std::string positionalLabel(const PositionalSpec& spec) {
    const std::string name = positionalName(spec) + (spec.repeatable ? "..." : "");
    return spec.required ? name : "[" + name + "]";
}

std::string optionLabel(const OptionSpec& spec) {
    return "--" + spec.name + (spec.valueName.empty() ? "" : " " + spec.valueName);
}

std::string sentence(const std::string& text) {
    if (text.empty() || text.find_last_of(".!?:") == text.size() - 1)
        return text;
    return text + ".";
}

std::string questionsNote(const CommandSpec& spec) {
    return asksForWhatIsMissing(spec)
               ? toTranslate("help", "Run on a terminal, it asks for what is missing.")
               : "";
}

std::string optionSentences(const OptionSpec& spec) {
    std::string text = sentence(spec.help);
    if (!spec.choices.empty())
        text += " One of " + joined(spec.choices, " or ") + ".";
    if (spec.required)
        text += " Required.";
    if (spec.repeatable)
        text += " May be given more than once.";
    if (!spec.defaultText.empty())
        text += " Default: " + spec.defaultText + ".";
    return text;
}

std::vector<std::string> usageParts(const CommandSpec& spec) {
    std::vector<std::string> parts;
    for (const PositionalSpec& positional : spec.positionals)
        parts.push_back(positionalLabel(positional));
    for (const OptionSpec& option : spec.options)
        if (option.required)
            parts.push_back(optionLabel(option));
    parts.push_back("[options]");
    return parts;
}

std::vector<CommandGroup> groupsOf(const std::vector<CommandSpec>& specs) {
    std::vector<CommandGroup> groups;
    for (const CommandSpec& spec : specs) {
        auto group = std::find_if(groups.begin(), groups.end(), [&](const CommandGroup& known) {
            return known.first == spec.group;
        });
        if (group == groups.end())
            group = groups.insert(groups.end(), {spec.group, {}});
        group->second.push_back(&spec);
    }
    return groups;
}

const std::vector<std::pair<std::string, std::string>>& exitCodeMeanings() {
    static const std::vector<std::pair<std::string, std::string>> meanings = {
        {"0", toTranslate("help", "Success.")},
        {"1", toTranslate("help", "The work was done and there are findings.")},
        {"2", toTranslate("help", "The command line asks for something that cannot be.")},
        {"3", toTranslate("help", "Input, storage or the making of a sheet failed.")},
    };
    return meanings;
}

}  // namespace rackbook
