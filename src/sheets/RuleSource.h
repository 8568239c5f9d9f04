// Where a house rule comes from, as sheets say it.
#pragma once

#include <string>
#include <vector>

#include "records/HouseRules.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// The program's own sources in the words of the sheet, what the studio wrote as it wrote it; where
// nothing is written, the origin.
std::string sourceText(const std::string& rule, Origin origin, const std::string& source,
                       const SheetWords& words);

std::string sourceText(const RuleInForce& rule, const SheetWords& words);

// The rules that sheets name, whose sources have a label "source.rule".
const std::vector<std::string>& rulesWithSources();

}  // namespace rackbook
