// Dates and clock times as loggers write them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/DateOrder.h"

namespace rackbook {

// "2026-03-04", "04.03.2026", "03/04/2026": an example of the order.
const char* exampleOf(DateOrder order);

struct WrittenTime {
    std::int64_t clock_ms = 0;     // milliseconds since 1970-01-01T00:00 on the clock that wrote it
    std::optional<int> shift_min;  // minutes east of UTC, where it was written
};

// A date and a time of day, parted by a T or spaces. Years have four digits (0001 … 9999); the
// parts of a date are parted by hyphens, and where its order is not year-month-day also by points
// or slashes, but all by the same. A time is hh:mm or hh:mm:ss, 00:00 to 23:59:59, with decimals
// of the second after a point or comma (kept to the millisecond), or in twelve hours with AM or PM
// behind. Then may follow Z or a shift, +01:00, +0100 or +01, up to 18 hours. Nothing where it is
// written otherwise or the calendar has no such day.
std::optional<WrittenTime> writtenTimeIn(std::string_view text, DateOrder order);

// The same, with the date and the time of day each in its own text.
std::optional<WrittenTime> writtenTimeIn(std::string_view date, std::string_view timeOfDay,
                                         DateOrder order);

// A date alone as days since 1970-01-01.
std::optional<std::int64_t> writtenDayIn(std::string_view text, DateOrder order);

}  // namespace rackbook
