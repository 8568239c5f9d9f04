// Reckoning with estimates of quantities that are 0 or more.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

#include "calc/Estimate.h"

namespace rackbook {

inline Estimate sumOf(const Estimate& a, const Estimate& b) {
    return {a.low + b.low, a.best + b.best, a.high + b.high};
}

// The bounds are corner values. Pre: not both high bounds infinite; may fall below 0.
inline Estimate differenceOf(const Estimate& a, const Estimate& b) {
    return {a.low - b.high, a.best - b.best, a.high - b.low};
}

// Nothing times infinity is nothing.
inline Estimate productOf(const Estimate& a, const Estimate& b) {
    const bool nothing = a.high == 0 || b.high == 0;
    if (nothing)
        return Estimate::exactly(0);
    return {a.low * b.low, a.best * b.best, a.high * b.high};
}

// Of two that have nothing to do with one another: the bounds lie as far from the best value as the
// root of the sum of squares of the logarithms says. Corner values where a best value is not known.
inline Estimate independentProductOf(const Estimate& a, const Estimate& b) {
    const Estimate corners = productOf(a, b);
    if (!(corners.best > 0))
        return corners;
    const double down = std::hypot(std::log(a.best / a.low), std::log(b.best / b.low));
    const double up = std::hypot(std::log(a.high / a.best), std::log(b.high / b.best));
    return {corners.low > 0 ? corners.best * std::exp(-down) : 0, corners.best,
            corners.best * std::exp(up)};
}

inline Estimate scaled(const Estimate& a, double factor) {
    return productOf(a, Estimate::exactly(factor));
}

// No best value where b may be 0.
inline Estimate quotientOf(const Estimate& a, const Estimate& b) {
    Estimate quotient;
    quotient.low = std::isinf(b.high) || b.high <= 0 ? 0 : a.low / b.high;
    quotient.best = b.best > 0 ? a.best / b.best : notKnown;
    if (b.low > 0)
        quotient.high = a.high / b.low;
    return quotient;
}

inline Estimate atLeastNothing(const Estimate& a) {
    return {std::max(0.0, a.low), std::isnan(a.best) ? notKnown : std::max(0.0, a.best),
            std::max(0.0, a.high)};
}

}  // namespace rackbook
