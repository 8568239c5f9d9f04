// Short ways of writing the options of a verb.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "cli/CommandSpec.h"

namespace rackbook {

inline OptionSpec valueOption(std::string name, std::string valueName, std::string help,
                              std::string defaultText = {}) {
    OptionSpec option;
    option.name = std::move(name);
    option.valueName = std::move(valueName);
    option.help = std::move(help);
    option.defaultText = std::move(defaultText);
    return option;
}

inline OptionSpec flagOption(std::string name, std::string help) {
    return valueOption(std::move(name), {}, std::move(help));
}

inline OptionSpec choiceOption(std::string name, std::string valueName, std::string help,
                               std::vector<std::string> choices) {
    OptionSpec option = valueOption(std::move(name), std::move(valueName), std::move(help));
    option.choices = std::move(choices);
    return option;
}

inline OptionSpec required(OptionSpec option) {
    option.required = true;
    return option;
}

inline OptionSpec repeatable(OptionSpec option) {
    option.repeatable = true;
    return option;
}

}  // namespace rackbook
