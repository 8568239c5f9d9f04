// The curve of the dose at which colour returns that makes a set of looks likeliest, with nothing
// assumed beforehand. For a few looks use LightThreshold, which says how little they tell.
#pragma once

#include <cstddef>
#include <vector>

#include "calc/ThresholdLooks.h"

namespace rackbook {

struct LikeliestThreshold {
    ThresholdCurve curve;
    std::size_t observations = 0;
    double logLikelihood = 0;  // ThresholdLooks::logLikelihood
};

// Maximum likelihood with censored observations. There is one exactly where no single dose agrees
// with all observations and, where each only says "by" or "not by" a dose, the prints that had
// returned had more light (mean of the logarithms) than those that had not: the logarithm of the
// likelihood is concave in location/scale and 1/scale (Burridge 1981, J. R. Stat. Soc. B 43:41,
// from memory), so that it is enough to look at the ends; our derivation. Throws InputError where
// there is none, saying why, and what ThresholdLooks throws.
LikeliestThreshold likeliestThreshold(const std::vector<ThresholdObservation>& observations,
                                      ThresholdModel model);

}  // namespace rackbook
