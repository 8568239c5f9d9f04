// What is known of a command line while its missing words are asked for.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cli/Arguments.h"
#include "cli/CommandSpec.h"

namespace rackbook {

// By the names of arguments and options. A flag that was given has the answer "yes".
class Answers {
public:
    Answers() = default;
    // What the words said already.
    Answers(const CommandSpec& spec, const Arguments& given);

    bool has(const std::string& name) const { return m_values.count(name) > 0; }
    // The first; nothing where there is none.
    std::optional<std::string> of(const std::string& name) const;
    std::string text(const std::string& name) const { return of(name).value_or(std::string()); }
    const std::vector<std::string>& all(const std::string& name) const;

    // Nothing in `values`: it was left out.
    void set(const std::string& name, std::vector<std::string> values);

private:
    std::map<std::string, std::vector<std::string>> m_values;
};

}  // namespace rackbook
