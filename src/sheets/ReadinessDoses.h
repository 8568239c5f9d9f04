// How much light the prints had that still want some, beside how much they want: plots, and the
// same in words. Private to sheets/.
#pragma once

#include <string>
#include <vector>

#include "sheets/Flow.h"
#include "sheets/ReadinessGroups.h"

namespace rackbook {

// The most urgent groups that want light or a look, and what the studio's looks taught. The heading
// is set already.
void addDoses(Flow& flow, const ReadinessFacts& facts, const std::vector<ReadinessGroup>& groups,
              const SheetWords& words);

// Adds the keys that it asks for.
void addDoseLabels(std::vector<std::string>& keys);

}  // namespace rackbook
