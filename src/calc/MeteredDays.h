// Light that a logger measured, summed over the days of the studio's wall clock.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "base/CivilTime.h"

namespace rackbook {

struct MeteredMoment {
    double utc_min = 0;  // minutes since 1970-01-01T00:00Z
    double value = 0;    // lx or W/m², 0 or more
};

struct MeteredDay {
    std::int64_t day = 0;   // days since 1970-01-01 on the wall clock
    double exposure_h = 0;  // value times hours: lx·h or Wh/m², of the time that was seen
    double covered_h = 0;   // the time that was seen: 0 to 24, or to 23 or 25 where clocks change
    double firstSeen_utc_min = 0;
    double lastSeen_utc_min = 0;  // the next midnight where it was seen through
};

// The minute that the wall clock shows at a whole minute of UTC.
using WallClockAt = std::function<CivilMinute(std::int64_t utc_min)>;

// Days in their order, those of which nothing was seen left out. Between neighbours no more than
// `largestStep_min` apart the light is taken as a straight line (the trapezoid rule), which is
// parted where a wall-clock day ends; what lies between neighbours farther apart was not seen and
// adds nothing. A moment that has no such neighbour is a day's with no time covered. A clock that
// is put back over midnight, to show the end of a day again, is not followed within one step.
//
// Throws InputError where a time or value is not finite, a time lies more than 10,000 years from
// 1970, times do not grow, a value is below 0, or the largest step is not above 0 and finite.
std::vector<MeteredDay> meteredDaysOf(const std::vector<MeteredMoment>& moments,
                                      double largestStep_min, const WallClockAt& wallClockAt);

}  // namespace rackbook
