#include "calc/DensitySlice.h"

#include <algorithm>
#include <cmath>

namespace rackbook {

namespace {

struct Place {
    double at = 0;
    double log = 0;
};

// Far more than any density that a number can hold needs.
constexpr int mostRounds = 200;

double endOf(const LogDensity& logDensity, const DensitySlice& slice, double step, double fall) {
    const auto depth = [&](double at) {
        return std::sqrt(std::max(0.0, slice.top - logDensity(at)));
    };
    // Depths go about evenly with the distance.
    const double wanted = std::sqrt(fall);
    Place inside{slice.peak, 0};
    Place outside{slice.peak + step, depth(slice.peak + step)};
    for (int round = 0; outside.log < wanted && round < mostRounds; ++round) {
        inside = outside;
        step *= 2;
        outside = {slice.peak + step, depth(slice.peak + step)};
    }
    constexpr int mostTries = 40;
    constexpr double close = 1e-3;
    for (int i = 0; i < mostTries; ++i) {
        const bool isStraight = std::isfinite(outside.log) && i % 3 != 2;
        const double part = isStraight ? (wanted - inside.log) / (outside.log - inside.log) : 0.5;
        const double at = inside.at + part * (outside.at - inside.at);
        const Place found{at, depth(at)};
        if (std::fabs(found.log - wanted) < close * wanted)
            return at;
        (found.log < wanted ? inside : outside) = found;
    }
    return outside.at;
}

// Two places with a peak between them.
struct Bracket {
    Place low;
    Place high;
};

template <class PlaceAt>
Bracket climbed(const PlaceAt& placeAt, double start, double length) {
    Place middle = placeAt(start);
    Place next = placeAt(start + length);
    Place last = next;
    double step = length;
    if (next.log <= middle.log) {
        step = -length;
        next = placeAt(start - length);
    }
    for (int round = 0; next.log > middle.log && round < mostRounds; ++round) {
        last = middle;
        middle = next;
        step *= 2;
        next = placeAt(middle.at + step);
    }
    return step > 0 ? Bracket{last, next} : Bracket{next, last};
}

}  // namespace

DensitySlice sliceFrom(const LogDensity& logDensity, double start, double length) {
    const auto placeAt = [&](double at) { return Place{at, logDensity(at)}; };
    auto [low, high] = climbed(placeAt, start, length);
    // By the golden section, until the top is as good as even.
    constexpr double golden = 0.6180339887498949;
    constexpr double even = 0.02;
    Place a = placeAt(high.at - golden * (high.at - low.at));
    Place b = placeAt(low.at + golden * (high.at - low.at));
    for (int round = 0; round < mostRounds; ++round) {
        if (std::max(a.log, b.log) - std::min(low.log, high.log) < even)
            break;
        if (a.log < b.log) {
            low = a;
            a = b;
            b = placeAt(low.at + golden * (high.at - low.at));
        } else {
            high = b;
            b = a;
            a = placeAt(high.at - golden * (high.at - low.at));
        }
    }
    const Place& best = a.log < b.log ? b : a;
    // Half of the even part is some 0.2 standard deviations of a normal density.
    return {best.at, best.log, 3 * (high.at - low.at)};
}

SliceEnds endsOf(const LogDensity& logDensity, const DensitySlice& slice, double fall) {
    const double step = 4 * slice.length;
    return {endOf(logDensity, slice, -step, fall), endOf(logDensity, slice, step, fall)};
}

}  // namespace rackbook
