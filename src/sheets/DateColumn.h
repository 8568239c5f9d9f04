// How wide a column of dates must be.
#pragma once

#include <cstddef>

#include "sheets/SheetTable.h"

namespace rackbook {

// For dates as SheetWords::tableDate writes them: room for a day, and where one of the column is
// badly known, for the words that come with it, so that none is cut.
double dateWidth_mm(const SheetTable& table, std::size_t column);

}  // namespace rackbook
