// Blending a mass into a mix, with bounds that hold whatever the true masses were.
#pragma once

#include "calc/CompensatedSum.h"
#include "calc/Estimate.h"

namespace rackbook {

// The mass in a mix, in g, added to and taken from.
class MixTotal {
public:
    explicit MixTotal(const Estimate& start)
        : m_low(start.low), m_best(start.best), m_high(start.high) {}

    Estimate value() const { return {m_low.value(), m_best.value(), m_high.value()}; }
    void add(const Estimate& mass);
    // No bound and no best value falls below 0.
    void take(const Estimate& mass);

private:
    CompensatedSum m_low;
    CompensatedSum m_best;
    CompensatedSum m_high;
};

// The share of an added mass m in the whole, m / (T + m). 1 where nothing was there before.
Estimate weightOf(const Estimate& mass, const Estimate& total);

// The share of a constituent after blending: old + weight · (added − old).
Estimate blend(const Estimate& old, const Estimate& added, const Estimate& weight);

}  // namespace rackbook
