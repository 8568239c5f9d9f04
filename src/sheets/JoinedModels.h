// Several sheets as one file.
#pragma once

#include <vector>

#include "sheets/PageModel.h"

namespace rackbook {

// The pages one after the other, each with its own page numbers; pictures with the same bytes are
// held once. Paper and what the file says about itself are the first one's.
// Pre: at least one, all of one paper size; no two carry a file of the same name.
PageModel joinedModels(std::vector<PageModel> models);

}  // namespace rackbook
