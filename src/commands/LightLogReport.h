// What a logger's file holds, as text and as JSON.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"
#include "base/ZoneShifts.h"
#include "cli/Console.h"
#include "commands/LightLogDays.h"

namespace rackbook {

// Refers to its parts, which must outlive it.
struct LightLogFacts {
    const std::string& path;
    const std::string& sha256;  // of the file's bytes
    const LightLogTerms& terms;
    const LightLog& log;
    const Place& place;
    const ZoneShifts& shifts;  // of the studio's time zone
    const std::vector<LoggedDay>& days;
};

// Columns, first readings, span and gaps, sums by day, and what was noted.
void printLightLog(Console& console, const LightLogFacts& facts);

// {"file", "sha256", "place", "quantity": illuminance_lx or ultravioletA_Wm2, "columns" with
// "time", "date" (or null) and "value", "readings", "usualStep_min", "from" and "to" (minutes on
// the studio's clock), "first" (the first readings, "at" and "value"), "gaps" ("from" and "until"),
// "days", "notes"}. A day has "day", "from", "to", "covered_h", "seenThrough", "exposure_lxh" or
// "nearUltraviolet_Whm2", "record" (the id that its metering would have, null where it
// cannot be recorded), "meteredAs" (the metering that the book holds of that day, or null).
Tree lightLogTree(const LightLogFacts& facts);

}  // namespace rackbook
