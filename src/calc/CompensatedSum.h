// A running sum that keeps what rounding drops (Neumaier 1974, Kahan's method improved).
#pragma once

#include <cmath>

namespace rackbook {

// Wrong by no more than 2u + O(n·u²) of the sum of the absolute terms, u = 2⁻⁵³. An infinite or
// unknown (NaN) term makes the sum infinite or unknown from then on.
class CompensatedSum {
public:
    CompensatedSum() = default;
    explicit CompensatedSum(double start) : m_sum(start) {}

    void add(double term) {
        const double next = m_sum + term;
        if (!std::isfinite(next))
            m_rest = 0;
        else if (std::fabs(m_sum) >= std::fabs(term))
            m_rest += (m_sum - next) + term;
        else
            m_rest += (term - next) + m_sum;
        m_sum = next;
    }

    double value() const { return m_sum + m_rest; }

private:
    double m_sum = 0;
    double m_rest = 0;
};

}  // namespace rackbook
