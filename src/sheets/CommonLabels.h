// The labels that every sheet has without asking for them.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

// The keys of templates/words/LANGUAGE/common.json.
const std::vector<std::string>& commonLabels();

}  // namespace rackbook
