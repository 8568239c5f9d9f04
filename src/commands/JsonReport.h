// The JSON that reading commands report.
#pragma once

#include <string>
#include <vector>

#include "base/Finding.h"
#include "base/Tree.h"

namespace rackbook {

// {"rackbookReport": 1, "verb": …} to which the caller adds its own members. The number is the
// version of the report's form; see DEVELOPERS.md.
Tree newReport(const std::string& verb);

Tree textsTree(const std::vector<std::string>& texts);

Tree treeOf(const Finding& finding);
Tree treeOf(const std::vector<Finding>& findings);

}  // namespace rackbook
