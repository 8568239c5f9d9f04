#include "commands/Answers.h"

namespace rackbook {

Answers::Answers(const CommandSpec& spec, const Arguments& given) {
    for (const PositionalSpec& positional : spec.positionals)
        if (given.has(positional.name))
            set(positional.name, given.values(positional.name));
    for (const OptionSpec& option : optionsOf(spec))
        if (given.has(option.name))
            set(option.name, option.valueName.empty() ? std::vector<std::string>{"yes"}
                                                      : given.values(option.name));
}

std::optional<std::string> Answers::of(const std::string& name) const {
    const auto found = m_values.find(name);
    return found == m_values.end() ? std::nullopt : std::optional(found->second.front());
}

const std::vector<std::string>& Answers::all(const std::string& name) const {
    static const std::vector<std::string> none;
    const auto found = m_values.find(name);
    return found == m_values.end() ? none : found->second;
}

void Answers::set(const std::string& name, std::vector<std::string> values) {
    if (values.empty())
        m_values.erase(name);
    else
        m_values[name] = std::move(values);
}

}  // namespace rackbook
