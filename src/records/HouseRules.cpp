#include "records/HouseRules.h"

#include <stdexcept>

namespace rackbook {

const std::vector<HouseRuleDefault>& houseRuleDefaults() {
    static const std::vector<HouseRuleDefault> rules = {
        {"extenderRichShare", 0.80, 0.0, 1.0, "share",
         "a layer whose ink holds at least this share of base counts as extender-rich",
         Origin::commonPractice, "our reading of common practice, no source"},
        {"lightDays", 14, 0, 3650, "days",
         "days in light after the last extender-rich layer, printed with drier",
         Origin::commonPractice, "common practice, no source"},
        {"lightDaysCareful", 21, 0, 3650, "days",
         "days in light where that ink held no drier, or none is known", Origin::commonPractice,
         "common practice, no source"},
        {"drierLeastShare", 0.005, 0.0, 0.2, "share",
         "ink with less drier than this counts as printed without", Origin::commonPractice,
         "our reading: handbooks advise about 0.01 to 0.03, from memory"},
        {"drierMostShare", 0.035, 0.0, 0.5, "share",
         "more drier than this in a portion is worth a second look: excess skins over soft ink",
         Origin::commonPractice, "our reading: handbooks advise about 0.01 to 0.03, from memory"},
        {"overdrawTolerance_g", 0.5, 0.0, 1000.0, "g",
         "a mix may be short by this much before it counts as overdrawn: what sticks to the knife",
         Origin::commonPractice, "common practice, no source"},
        {"proofsMostShare", 0.10, 0.0, 1.0, "share",
         "artist's proofs beyond this share of the numbered size are pointed out",
         Origin::publishedSource,
         "workshop definitions limit artist's proofs to 5 or 10 per cent of the edition"},
    };
    return rules;
}

HouseRules::HouseRules(const std::vector<HouseRule>& ofTheStudio) {
    for (const HouseRuleDefault& rule : houseRuleDefaults())
        m_rules.push_back({rule.rule, rule.value, rule.unit, rule.words, rule.origin, rule.source});
    for (const HouseRule& own : ofTheStudio) {
        for (RuleInForce& rule : m_rules) {
            if (rule.rule != own.rule)
                continue;
            rule.value = own.value;
            rule.origin = own.origin;
            rule.source = own.source.value_or("");
        }
    }
}

double HouseRules::value(const std::string& rule) const {
    for (const RuleInForce& inForce : m_rules)
        if (inForce.rule == rule)
            return inForce.value;
    throw std::out_of_range("no house rule is named " + rule);
}

}  // namespace rackbook
