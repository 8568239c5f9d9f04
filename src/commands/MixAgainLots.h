// What mix-again says about the lots: which serve, which are replaced, which are wanting.
#pragma once

#include <string>
#include <vector>

#include "commands/MixAgainPlan.h"

namespace rackbook {

// Whole sentences, a paragraph each; none where every lot is there and holds enough.
std::vector<std::string> lotSentences(const InkBook& ink, const MixAgain& again);

}  // namespace rackbook
