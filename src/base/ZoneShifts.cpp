#include "base/ZoneShifts.h"

#include <algorithm>

namespace rackbook {

CivilMinute ZoneShifts::civilOf(CivilMinute utc) const {
    const auto after =
        std::upper_bound(m_shifts.begin(), m_shifts.end(), utc,
                         [](CivilMinute at, const ZoneShift& shift) { return at < shift.fromUtc; });
    return utc + (after == m_shifts.begin() ? m_shifts.front() : *(after - 1)).east_min;
}

CivilMinute ZoneShifts::utcOf(CivilMinute civil) const {
    // The first shift whose clocks showed the minute before the next one began.
    auto shift =
        std::partition_point(m_shifts.begin(), m_shifts.end() - 1, [&](const ZoneShift& candidate) {
            const ZoneShift& next = *(&candidate + 1);
            return civil >= next.fromUtc + std::max(candidate.east_min, next.east_min);
        });
    return civil - shift->east_min;
}

}  // namespace rackbook
