// The least value of a function of a few variables within bounds, found without derivatives.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

namespace rackbook {

struct MinimumQuestion {
    std::function<double(const std::vector<double>&)> value;
    std::vector<double> start;  // within the bounds
    std::vector<double> least;  // one bound a variable, finite, below the greatest
    std::vector<double> greatest;
    // Above 0: how far the variables are tried at first; half the way between the bounds at most
    // counts.
    std::vector<double> firstStep;
    double closeEnough = 1e-4;     // in every variable
    std::size_t mostTrials = 400;  // the start is the first of them; at least 1
};

struct Minimum {
    std::vector<double> at;
    double value = 0;
};

// A local minimum near the start: quadratic models on a shrinking region (BOBYQA, Powell 2009, as
// NLopt has it; the simplex of Nelder and Mead where there is one variable only). Never worse than
// the start; the same for the same question. Throws what `value` throws, and std::invalid_argument
// where the question is wrong.
Minimum minimumNear(const MinimumQuestion& question);

}  // namespace rackbook
