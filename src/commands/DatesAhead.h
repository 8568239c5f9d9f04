// What is told as done, and dated to a day that is to come.
#pragma once

#include <vector>

#include "commands/Recording.h"

namespace rackbook {

// A line on standard error for each new record of that kind. No rule forbids it: clocks and time
// zones go wrong, and a day may be told ahead.
void warnOfDatesAhead(CommandContext& context, const BookFile& book,
                      const std::vector<MadeRecord>& made);

}  // namespace rackbook
