// What in a logger's file is unlikely for its place and time.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/Finding.h"
#include "commands/LightLogDays.h"

namespace rackbook {

// Warnings, each told once for the whole log: light at a place that is declared dark; readings
// beyond what the sun over the studio and lamps can give at their time (MostDaylight.h), the worst
// with its moment; days with more near ultraviolet than goes with the light that the book has of
// the same time and place. `days` are those that are told or recorded; `file` names the log.
std::vector<Finding> lightLogDoubts(const BookFile& book, const LightLog& log, const Place& place,
                                    const ZoneShifts& shifts, const std::vector<LoggedDay>& days,
                                    const std::string& file);

}  // namespace rackbook
