// Why it cannot be computed what a mix is made of.
#pragma once

#include <string>
#include <vector>

#include "calc/MixStages.h"
#include "commands/InkBook.h"

namespace rackbook {

// "weighing veil/3 has no mass and what went into mix old was never weighed"; each reason once.
std::string obstacleWords(const InkBook& ink, const std::vector<MixProblem>& problems);

}  // namespace rackbook
