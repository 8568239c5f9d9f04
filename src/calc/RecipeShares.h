// A recipe seen without its stages.
#pragma once

#include <vector>

#include "calc/Recipe.h"

namespace rackbook {

struct LotShare {
    int lot = -1;      // position among the book's lots
    double share = 0;  // of the finished ink
};

// Of one lot among these; 0 where it is not there.
double shareOf(const std::vector<LotShare>& shares, int lot);

// The share of every lot in the finished ink, by lot ascending, each lot once. Nothing for a recipe
// without stages. Pre: each part names a lot or an earlier stage.
std::vector<LotShare> flattened(const Recipe& recipe);

// The share of the finished ink that passed through each stage; 1 for the last. A gram of the ink
// needs this many grams of the stage. Same precondition.
std::vector<double> sharesOfStages(const Recipe& recipe);

}  // namespace rackbook
