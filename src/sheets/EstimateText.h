// Quantities with their bounds, as sheets write them.
#pragma once

#include <string>

#include "calc/Estimate.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// "8.70", "8.70 (8.20–9.10)", "8.20–9.10", "8.20 or more", "up to 9.10", "not known". What lies
// below 0 is written as 0: nothing holds less than nothing.
std::string estimateText(const Estimate& value, int decimals, const SheetWords& words);

}  // namespace rackbook
