// What looks at prints tell of the dose at which their colour returns. Part of LightThreshold.
#pragma once

#include <cstddef>
#include <vector>

#include "calc/ThresholdCurve.h"

namespace rackbook {

// The colour of one print returned at a dose in (low, high], in sunny days: it had not returned by
// `low`, 0 where nobody looked before, and had by `high`, infinite where it has not returned yet.
// Equal doses, above 0: it returned there.
struct ThresholdObservation {
    double low_sunnyDays = 0;
    double high_sunnyDays = 0;
};

// Equal observations are reckoned once.
class ThresholdLooks {
public:
    // Throws InputError that names the observation, counted from 1, where a dose is NaN or below 0,
    // the low one is infinite or above the high one, or the high one is 0.
    explicit ThresholdLooks(std::vector<ThresholdObservation> observations);

    // All of them, also those that only say that a print returned at some dose or other.
    std::size_t count() const { return m_count; }

    // Natural logarithm of the chance of all that was seen; of exact ones the density per sunny
    // day.
    double logLikelihood(const ThresholdCurve& curve) const;

    enum class Kind { returnedBy, notReturnedBy, between, exact };
    struct Group {
        Kind kind = Kind::between;
        double low_log = 0;   // of between, notReturnedBy, exact
        double high_log = 0;  // of between, returnedBy
        double gap_log = 0;   // of between: high less low, without loss where they are close
        double times = 1;
    };
    const std::vector<Group>& groups() const { return m_groups; }

private:
    std::vector<Group> m_groups;
    std::size_t m_count = 0;
};

}  // namespace rackbook
