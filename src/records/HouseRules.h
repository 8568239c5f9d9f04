// The numbers a studio may set for itself, with their defaults and where those come from.
#pragma once

#include <string>
#include <vector>

#include "records/Book.h"

namespace rackbook {

struct HouseRuleDefault {
    const char* rule;
    double value;
    double least;
    double most;
    const char* unit;
    const char* words;  // what it decides
    Origin origin;
    const char* source;
};

// Every rule there is, in the order in which reports print them.
const std::vector<HouseRuleDefault>& houseRuleDefaults();

// A rule as it stands in a book: the studio's value where it set one, else the default.
struct RuleInForce {
    std::string rule;
    double value = 0;
    std::string unit;
    std::string words;
    Origin origin = Origin::commonPractice;
    std::string source;
};

class HouseRules {
public:
    HouseRules() : HouseRules(std::vector<HouseRule>{}) {}
    // Pre: the names are known and the values in range (complaintsAbout(Book) sees to it).
    explicit HouseRules(const std::vector<HouseRule>& ofTheStudio);

    // Throws std::out_of_range for a name that is no rule.
    const RuleInForce& rule(const std::string& name) const;
    double value(const std::string& name) const { return rule(name).value; }
    const std::vector<RuleInForce>& all() const { return m_rules; }

private:
    std::vector<RuleInForce> m_rules;
};

}  // namespace rackbook
