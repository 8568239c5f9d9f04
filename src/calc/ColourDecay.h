// How fast a colour nears its final one in light, from readings over time.
#pragma once

#include <cstddef>
#include <vector>

#include "calc/Estimate.h"

namespace rackbook {

struct DecayPoint {
    double dose_sunnyDays = 0;  // of near ultraviolet, 0 or more; any other unit serves
    double fromFinal_dE00 = 0;  // CIEDE2000 from the final colour, 0 or more
};

struct DecayQuestion {
    std::vector<DecayPoint> points;  // in any order
    double wanted_dE00 = 1;          // above 0: what may be left
    // What two readings of one and the same colour differ by, 0 or more; our guess, no source, for
    // a small spectrophotometer laid on a print by hand.
    double noiseFloor_dE00 = 0.3;
};

enum class DecayAnswer {
    told,
    tooFewDoses,    // fewer than three different doses
    wantedIsNoise,  // readings cannot tell so small a difference
    alreadyBelow,   // all readings, or the curve without any dose, are no more than what is wanted
    noFall          // readings that stay the same would do as well
};

struct ColourDecay {
    DecayAnswer answer = DecayAnswer::told;
    std::size_t points = 0;
    // Of the curve start·exp(−dose/scale); not known with too few doses, or where all readings are
    // below what is wanted. The start may be infinite where the first reading came late.
    double start_dE00 = notKnown;
    double scale_sunnyDays = notKnown;
    // Root of the sum of squares by points − 2.
    double residualSpread_dE00 = notKnown;
    // Where told: the dose that leaves what is wanted, with its interval of 90 %; the high bound
    // is infinite where it lies beyond 1e5 times the last reading's dose.
    Estimate enough_sunnyDays;
};

// Least squares of the readings about √((start·exp(−dose/scale))² + noise²): differences of colour
// are lengths, and noise lengthens a short one, so that readings down at the floor say no more than
// that little is left. All readings weigh the same, as their noise is taken not to depend on the
// difference. The exponential is our model (what turns is in proportion to what is left).
//
// The interval holds the doses whose best curve misses by no more than t²·s² more squares than the
// best of all (profile of the sum of squares, Bates, Watts 1988, Nonlinear Regression Analysis,
// chapter 6, from memory), where s is the residual spread and t Student's; never less than noise at
// its floor makes likely. The same rule judges whether there is a fall.
//
// Throws InputError where a number is out of the ranges above or not finite, or above 1e9, naming
// the reading, counted from 1.
ColourDecay colourDecay(const DecayQuestion& question);

}  // namespace rackbook
