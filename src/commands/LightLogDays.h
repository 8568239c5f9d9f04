// The days of a light log at a place, and the meterings they make.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/Finding.h"
#include "base/ZoneShifts.h"
#include "exchange/LightLog.h"
#include "records/Metering.h"
#include "store/BookFile.h"

namespace rackbook {

struct LoggedDay {
    std::int64_t day = 0;        // days since 1970-01-01 on the studio's clock
    CivilMinute from = 0;        // on the studio's clock, the first minute that was seen
    CivilMinute to = 0;          // and the last, the next midnight where it was seen through
    double covered_h = 0;        // the time that was seen
    bool isSeenThrough = false;  // nothing between from and to was missed
    double exposure_h = 0;       // lx·h, or Wh/m² of UV-A
    std::string id;              // of its metering
    std::string meteredAs;       // the metering of that place and day that the book holds, or empty

    // Nothing was seen between two readings, or the clocks were put back meanwhile, so that it has
    // no beginning with a later end.
    bool hasNoSpan() const { return to <= from || covered_h <= 0; }
};

// Steps longer than three usual ones were not seen. Days before `since` are left out.
std::vector<LoggedDay> loggedDaysOf(const BookFile& book, const LightLog& log, const Place& place,
                                    const ZoneShifts& shifts, std::optional<std::int64_t> since);

// One for each day that has a span, without instrument and note.
std::vector<Metering> meteringsOfDays(const std::vector<LoggedDay>& days, const LightLog& log,
                                      const Place& place);

// The same, as they are recorded. Throws RefusedInput naming all days that are metered at
// the place already, InputError where none is left.
std::vector<Metering> meteringsOf(const std::vector<LoggedDay>& days, const LightLog& log,
                                  const Place& place, const std::string& file,
                                  const std::optional<std::string>& instrument,
                                  const std::string& note);

}  // namespace rackbook
