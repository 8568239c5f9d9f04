// Where a density of one quantity lies that has one peak and falls away from it ever faster.
#pragma once

#include <functional>

namespace rackbook {

// The logarithm of a density, concave.
using LogDensity = std::function<double(double)>;

struct DensitySlice {
    double peak = 0;    // to a fifth of the length
    double top = 0;     // the logarithm there
    double length = 1;  // about that of a standard deviation
};

// Climbs from a place where the logarithm is finite; `length`, above 0, is a first step.
DensitySlice sliceFrom(const LogDensity& logDensity, double start, double length);

// How far the density lies within e^−fall of its top; fall above 0.
struct SliceEnds {
    double low = 0;
    double high = 0;
};
SliceEnds endsOf(const LogDensity& logDensity, const DensitySlice& slice, double fall);

}  // namespace rackbook
