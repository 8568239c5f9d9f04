// Spans of time in narrow columns. Private to sheets/.
#pragma once

#include <string>

#include "records/History.h"

namespace rackbook {

// One day, whole years as years, else both ends, on two lines. Pre: neither end is open.
std::string spanText(const TimeSpan& span);

}  // namespace rackbook
