// How far a time zone's clocks stood from UTC over time, as a table that needs no time zone
// library.
#pragma once

#include <utility>
#include <vector>

#include "base/CivilTime.h"

namespace rackbook {

struct ZoneShift {
    CivilMinute fromUtc = beginningOfTime;  // the UTC minute from which it holds
    int east_min = 0;                       // wall clock less UTC
};

class ZoneShifts {
public:
    // UTC itself.
    ZoneShifts() : ZoneShifts(std::vector<ZoneShift>{{}}) {}
    // Pre: in the order of time, the first from the beginning of time.
    explicit ZoneShifts(std::vector<ZoneShift> shifts) : m_shifts(std::move(shifts)) {}

    CivilMinute civilOf(CivilMinute utc) const;
    // Of an hour that comes twice, the first; of an hour that is left out, as if the clocks had
    // not yet been put forward.
    CivilMinute utcOf(CivilMinute civil) const;

private:
    std::vector<ZoneShift> m_shifts;
};

}  // namespace rackbook
