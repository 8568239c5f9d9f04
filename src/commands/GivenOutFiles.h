// Files of sheets against the register of what was given out.
#pragma once

#include <string>
#include <vector>

#include "base/Finding.h"
#include "records/Issue.h"

namespace rackbook {

// A finding for each file that has the name of one given out and none of the bytes given out under
// it. Files of other names are passed over where their bytes are not in the register. Throws
// InputError for a file that cannot be read.
std::vector<Finding> givenOutFileFindings(const std::vector<Issue>& issues,
                                          const std::vector<std::string>& paths);

}  // namespace rackbook
