// A word at once, when sheets go into the dark or out of the studio before they are ready.
#pragma once

#include <vector>

#include "cli/Console.h"
#include "records/Impression.h"
#include "store/BookFile.h"

namespace rackbook {

// Judges the sheets as of that minute, after the move was recorded, and prints which of them the
// check calls put away too early.
void warnOfStoredEarly(Console& console, const BookFile& book,
                       const std::vector<Impression>& sheets, CivilMinute asOf);

}  // namespace rackbook
