#include "cli/CommandSpec.h"

#include <algorithm>
#include <set>

namespace rackbook {

namespace {

OptionSpec option(std::string name, std::string valueName, std::string help,
                  std::string defaultText = {}) {
    OptionSpec made;
    made.name = std::move(name);
    made.valueName = std::move(valueName);
    made.help = std::move(help);
    made.defaultText = std::move(defaultText);
    return made;
}

void findArgumentFaults(const CommandSpec& spec, std::vector<std::string>& faults) {
    bool optionalSeen = false;
    for (std::size_t i = 0; i < spec.positionals.size(); ++i) {
        const PositionalSpec& positional = spec.positionals[i];
        if (positional.repeatable && i + 1 < spec.positionals.size())
            faults.push_back(spec.name + ": the argument " + positional.name +
                             " is repeatable, but not the last.");
        if (positional.required && optionalSeen)
            faults.push_back(spec.name + ": the argument " + positional.name +
                             " is required, but follows an optional one.");
        optionalSeen = optionalSeen || !positional.required;
    }
}

}  // namespace

const std::vector<std::string>& commonOptionNames() {
    static const std::vector<std::string> names = {"book", "json", "said-on", "dry-run",
                                                   "by",   "wait", "help"};
    return names;
}

bool asksForWhatIsMissing(const CommandSpec& spec) {
    const auto isRequired = [](const auto& one) { return one.required; };
    return spec.writesBook && spec.needsBook &&
           (std::any_of(spec.positionals.begin(), spec.positionals.end(), isRequired) ||
            std::any_of(spec.options.begin(), spec.options.end(), isRequired));
}

std::vector<OptionSpec> optionsOf(const CommandSpec& spec) {
    std::vector<OptionSpec> options = spec.options;
    if (spec.needsBook)
        options.push_back(option("book", "FILE", "The book to work on.",
                                 "the environment variable RACKBOOK_BOOK, else studio.rackbook in "
                                 "the current folder"));
    if (spec.needsBook && !spec.writesBook)
        options.push_back(
            option("said-on", "DATE",
                   "Go by what the book said at the end of that day, without what was "
                   "recorded or corrected later."));
    if (spec.reportsJson)
        options.push_back(option("json", "", "Report as JSON."));
    if (spec.writesBook) {
        options.push_back(option("dry-run", "", "Check everything and write nothing."));
        options.push_back(option("by", "NAME", "Who records this."));
        options.push_back(option("wait", "SECONDS",
                                 "How long to wait while another program is writing the book.",
                                 std::to_string(defaultWait_s)));
    }
    options.push_back(option("help", "", "Show this help."));
    return options;
}

std::vector<std::string> faultsOf(const CommandSpec& spec) {
    std::vector<std::string> faults;
    std::set<std::string> names;
    const auto check = [&](const std::string& name, const std::string& help) {
        if (!names.insert(name).second)
            faults.push_back(spec.name + ": the name " + name + " stands twice.");
        if (help.empty())
            faults.push_back(spec.name + ": " + name + " has no help.");
    };
    for (const PositionalSpec& positional : spec.positionals)
        check(positional.name, positional.help);
    for (const OptionSpec& one : optionsOf(spec))
        check(one.name, one.help);
    findArgumentFaults(spec, faults);
    if (spec.summary.empty())
        faults.push_back(spec.name + ": there is no summary.");
    if (spec.group.empty())
        faults.push_back(spec.name + ": there is no group.");
    return faults;
}

}  // namespace rackbook
