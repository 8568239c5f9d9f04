// The moments that the times in a log mean. Private to exchange/.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "exchange/LogClock.h"
#include "exchange/LogFindings.h"
#include "exchange/WrittenTime.h"

namespace rackbook {

// A line of a log on its way to a sample.
struct LogLine {
    int line = 0;
    std::string timeText;
    WrittenTime time;
    std::optional<double> value;         // lx or W/m²; not there where it was refused
    std::optional<std::int64_t> utc_ms;  // not there before it is known
};

// The middle one of the steps forward, the lower of two. Nothing where there is none.
std::optional<std::int64_t> medianStep_ms(const std::vector<std::int64_t>& times_ms);

// Finds utc_ms of every line, in the order of the file. Refused, before anything is found, are
// times with a shift where the clock is told otherwise and times without one where it is not; then
// times that a wall clock never showed. The hour that a wall clock showed twice is told by the
// order: where exactly one reading of the lines in it has time going on in no step longer than
// three usual ones, from the line before them to the line behind. Where none or several do, they
// are refused. Throws InputError for a time zone that the system does not know.
void findMoments(std::vector<LogLine>& lines, const LogClock& clock, LogFindings& findings);

}  // namespace rackbook
