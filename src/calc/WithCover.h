// Properties of skylight that change evenly from a clear to an overcast sky.
#pragma once

#include <algorithm>

#include "calc/CloudCover.h"

namespace rackbook {

// Throws InputError as requireOktas.
inline Estimate withCover(const Oktas& oktas, const Estimate& clear, const Estimate& overcast) {
    requireOktas(oktas);
    const auto between = [](double ofClear, double ofOvercast, double cover) {
        return ofClear + (ofOvercast - ofClear) * cover / 8;
    };
    return {std::min(between(clear.low, overcast.low, oktas.low),
                     between(clear.low, overcast.low, oktas.high)),
            between(clear.best, overcast.best, oktas.best),
            std::max(between(clear.high, overcast.high, oktas.low),
                     between(clear.high, overcast.high, oktas.high))};
}

}  // namespace rackbook
