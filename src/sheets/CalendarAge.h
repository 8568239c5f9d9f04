// How long it is from one day to a later one, by the calendar. Days are counted from 1970-01-01.
#pragma once

#include <cstdint>

namespace rackbook {

// Rounded down; from the 31st of a month, the last day of a shorter one completes it.
std::int64_t wholeMonths(std::int64_t fromDay, std::int64_t toDay);

// Whole years, and tenths of the one that has begun; rounded down.
std::int64_t wholeTenthsOfYears(std::int64_t fromDay, std::int64_t toDay);

}  // namespace rackbook
