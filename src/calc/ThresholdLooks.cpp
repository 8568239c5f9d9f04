#include "calc/ThresholdLooks.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>

#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

using Kind = ThresholdLooks::Kind;

void requireUsable(const ThresholdObservation& look, std::size_t number) {
    const double low = look.low_sunnyDays;
    const double high = look.high_sunnyDays;
    if (low >= 0 && std::isfinite(low) && high >= low && high > 0)
        return;
    throw InputError("observation " + std::to_string(number),
                     "the colour is said to have returned after " + formatShortest(low) +
                         " and by " + formatShortest(high) + " sunny days",
                     "Give the low dose, 0 or more, and a high one that is above 0 and not below "
                     "the low one.");
}

ThresholdLooks::Group groupOf(const ThresholdObservation& look) {
    ThresholdLooks::Group group;
    const double low = look.low_sunnyDays;
    const double high = look.high_sunnyDays;
    group.low_log = std::log(low);
    group.high_log = std::log(high);
    if (low == high)
        group.kind = Kind::exact;
    else if (low == 0)
        group.kind = Kind::returnedBy;
    else if (std::isinf(high))
        group.kind = Kind::notReturnedBy;
    else
        group.gap_log =
            high < 2 * low ? std::log1p((high - low) / low) : group.high_log - group.low_log;
    return group;
}

double logChanceOf(const ThresholdLooks::Group& group, const ThresholdCurve& curve) {
    const double low_z = (group.low_log - curve.location_log) / curve.scale_log;
    const double high_z = (group.high_log - curve.location_log) / curve.scale_log;
    switch (group.kind) {
        case Kind::returnedBy:
            return logChanceUpTo(curve.model, high_z);
        case Kind::notReturnedBy:
            return logChanceAbove(curve.model, low_z);
        case Kind::between:
            return logChanceWithin(curve.model, low_z, group.gap_log / curve.scale_log);
        case Kind::exact:
            break;
    }
    return logDensityAt(curve.model, low_z) - std::log(curve.scale_log) - group.low_log;
}

}  // namespace

ThresholdLooks::ThresholdLooks(std::vector<ThresholdObservation> observations)
    : m_count(observations.size()) {
    for (std::size_t i = 0; i < observations.size(); ++i)
        requireUsable(observations[i], i + 1);
    const auto doses = [](const ThresholdObservation& look) {
        return std::tie(look.low_sunnyDays, look.high_sunnyDays);
    };
    std::sort(observations.begin(), observations.end(),
              [&](const auto& a, const auto& b) { return doses(a) < doses(b); });
    for (std::size_t i = 0; i < observations.size(); ++i) {
        const ThresholdObservation& look = observations[i];
        if (look.low_sunnyDays == 0 && std::isinf(look.high_sunnyDays))
            continue;
        if (!m_groups.empty() && i > 0 && doses(look) == doses(observations[i - 1]))
            m_groups.back().times += 1;
        else
            m_groups.push_back(groupOf(look));
    }
}

double ThresholdLooks::logLikelihood(const ThresholdCurve& curve) const {
    double sum = 0;
    for (const Group& group : m_groups)
        sum += group.times * logChanceOf(group, curve);
    return sum;
}

}  // namespace rackbook
