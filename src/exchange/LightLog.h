// Logs of a light logger: what they measured and when.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/Finding.h"
#include "exchange/LightUnits.h"
#include "exchange/LogClock.h"
#include "exchange/WrittenTime.h"

namespace rackbook {

// Headings as they stand in the file, without the blanks around them.
struct LightLogColumns {
    std::string time;                 // date and time of day, or the time of day alone
    std::optional<std::string> date;  // where it has a column of its own
    std::string value;
};

// The present minute, and in words for people: "2026-03-28T19:00 at the studio".
struct LogPresent {
    std::int64_t utc_min = 0;
    std::string words;
};

struct LightLogTerms {
    LightUnit unit = LightUnit::lux;
    LogClock clock = LogClock::asWritten();
    DateOrder dateOrder = DateOrder::yearMonthDay;
    std::optional<LightLogColumns> columns;
    std::optional<LogPresent> present;  // where given, lines of a later minute are refused
};

struct LightSample {
    double utc_min = 0;  // minutes since 1970-01-01T00:00Z
    double value = 0;    // 0 to 200,000 lx or 0 to 120 W/m²
};

// A step longer than this many usual ones is a gap.
constexpr int gapSteps = 3;

// Time between two neighbours with a gap between them.
struct LightGap {
    double from_utc_min = 0;
    double until_utc_min = 0;
};

struct LightLog {
    LightQuantity quantity = LightQuantity::illuminance_lx;
    LightLogColumns columns;           // those that were read
    std::vector<LightSample> samples;  // never empty, each later than the one before
    double usualStep_min = 0;          // the median; 0 where there is one sample
    std::vector<LightGap> gaps;
    std::size_t repeatedLines = 0;  // with time and value of the line before them, left out
    std::vector<Finding> notes;     // what is told: columns chosen, gaps, repeated lines, darkness
};

// A table as CSV (see csvRows) in UTF-8, with tabs, semicolons or commas between the fields. Lines
// may stand before the headings. With `columns`, the headings are the first line that holds them
// all. Without, they are the line before the first that holds a time, and columns are chosen where
// only one has times (or one dates and one times of day), and only one either names the unit or,
// where none does, holds numbers; the notes say which. The first 1,000 lines are searched.
//
// Decimals have a point, or throughout a comma where commas do not part the fields. Any line that
// cannot be read refuses the whole log: fields missing, times as writtenTimeIn does not know them
// or as findMoments refuses them, time going back or lying ahead, two values at one time, values
// that are no numbers, below 0 or above highestPossible, and a unit in the heading of the values
// that is not the one given. Throws RefusedInput with the first 20 of what is wrong and the number
// of others; InputError where columns are not found or cannot be chosen (it lists them all), where
// quotes do not close, for a time zone that the system does not know, and where the file cannot be
// read or is larger than 16 MB.
LightLog readLightLog(const std::string& path, const LightLogTerms& terms);

// The same of bytes that are at hand; `file` names them in messages.
LightLog lightLogIn(std::string_view bytes, const std::string& file, const LightLogTerms& terms);

}  // namespace rackbook
