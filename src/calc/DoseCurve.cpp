#include "calc/DoseCurve.h"

#include <algorithm>

namespace rackbook {

std::vector<DosePoint> doseCurveOf(DoseLedger& ledger, const std::vector<Stay>& stays,
                                   const TimeSpan& pulled, CivilMinute asOf,
                                   std::size_t mostPoints) {
    std::vector<DosePoint> points;
    if (pulled.earliest <= beginningOfTime || pulled.earliest >= asOf)
        return points;
    const std::int64_t days = (asOf - pulled.earliest) / minutesPerDay + 1;
    const auto steps = static_cast<std::int64_t>(std::max<std::size_t>(2, mostPoints)) - 1;
    const std::int64_t step_days = std::max<std::int64_t>(1, (days + steps - 1) / steps);
    for (CivilMinute at = pulled.earliest; at < asOf; at += step_days * minutesPerDay)
        points.push_back({at, ledger.sumSince(stays, pulled, at)});
    points.push_back({asOf, ledger.sumSince(stays, pulled, asOf)});
    return points;
}

}  // namespace rackbook
