// Audit rules: what must hold between the records of a book. Each rule is a function of its own
// and returns all that it finds. What is not recorded is no contradiction, and badly known dates
// contradict one another only where no reading of them agrees.
#pragma once

#include <string>
#include <vector>

#include "base/Finding.h"
#include "checks/AuditContext.h"

namespace rackbook {

struct AuditRule {
    const char* name;     // lower-case words with hyphens; stands in Finding::rule
    const char* summary;  // one sentence without a full stop
    std::vector<Finding> (*run)(const AuditContext& context);
};

// Every rule there is, in the order in which reports print them.
const std::vector<AuditRule>& auditRules();

// The findings of the rules of those names, rule by rule; without names, of all of them.
std::vector<Finding> audit(const AuditContext& context, const std::vector<std::string>& names = {});

}  // namespace rackbook
