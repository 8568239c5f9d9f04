#include "sheets/RuleSource.h"

#include <algorithm>

#include "calc/Readiness.h"

namespace rackbook {

namespace {

bool isOfTheProgram(const std::string& rule, const std::string& source) {
    const std::vector<HouseRuleDefault>& rules = houseRuleDefaults();
    return std::any_of(rules.begin(), rules.end(), [&](const HouseRuleDefault& one) {
        return rule == one.rule && source == one.source;
    });
}

}  // namespace

const std::vector<std::string>& rulesWithSources() {
    static const std::vector<std::string> rules = [] {
        std::vector<std::string> names = rulesOfReadiness();
        names.insert(names.end(), {"openedLifeTin_days", "openedLifeTube_days", "airing_days"});
        return names;
    }();
    return rules;
}

std::string sourceText(const std::string& rule, Origin origin, const std::string& source,
                       const SheetWords& words) {
    if (source.empty())
        return words.of("origin", origin);
    return isOfTheProgram(rule, source) ? words("source." + rule) : source;
}

std::string sourceText(const RuleInForce& rule, const SheetWords& words) {
    return sourceText(rule.rule, rule.origin, rule.source, words);
}

}  // namespace rackbook
