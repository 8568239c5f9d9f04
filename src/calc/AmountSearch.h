// The few amounts, each of another thing, that make a value least: which things and how much of
// each. Used where colours are matched.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

namespace rackbook {

// What is tried: things by position, ascending, and an amount above 0 of each.
struct AmountsTried {
    std::vector<std::size_t> things;
    std::vector<double> amounts;
    double other = 0;  // the further quantity, where one is searched for
};

struct AmountQuestion {
    std::size_t things = 0;
    std::size_t mostAtOnce = 4;  // things together, at least 1
    double least = 1e-5;         // bounds of every amount, above 0
    double greatest = 10;
    double otherLeast = 0;  // where both are equal, it is held there
    double otherGreatest = 0;
    std::function<double(const AmountsTried&)> value;  // of what is tried, smaller is better
};

struct AmountsFound {
    AmountsTried tried;
    double value = 0;
};

// For each set of things that was looked at, the best that was found with it; the best set first.
// One thing alone, then sets made from the best smaller ones by one more: every set where there are
// no more than `everySet` of a size, else those that come from the 60 best. The same for the same
// question. Throws what `value` throws, and std::invalid_argument where the question is wrong.
std::vector<AmountsFound> amountsFor(const AmountQuestion& question);

constexpr std::size_t everySet = 600;

}  // namespace rackbook
