// Too much of something is in the dish: what to add so that the shares are those of the recipe.
// Masses in g.
//
// What is in cannot be taken out. With a_i in the dish and p_i the recipe's share, the least mass
// that can have the recipe's shares is M = max a_i/p_i, or the mass that is wanted at least; then
// p_i M − a_i is added of each. Each addition is the least by itself, so their sum is too.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "calc/BalanceReading.h"

namespace rackbook {

struct CorrectionQuestion {
    std::vector<double> shares;       // of the recipe, by part; 0 … 1, adding up to 1 within 1e-9
    std::vector<double> inDish_g;     // by part, 0 or more
    std::vector<double> inStock_g;    // by part, infinite where it is no matter; empty: no matter
    std::optional<double> atLeast_g;  // the mass of ink that is wanted, above 0
};

struct StockShortfall {
    std::size_t part = 0;
    double missing_g = 0;
};

struct Correction {
    std::vector<std::size_t> notInRecipe;    // parts in the dish whose share is 0
    std::vector<StockShortfall> shortfalls;  // against what is in stock
    std::vector<double> add_g;               // by part; empty where notInRecipe is not
    double added_g = 0;
    double total_g = 0;             // what the ink comes to
    double beyondWanted_g = 0;      // of total_g; where nothing is wanted, 0
    std::optional<double> fresh_g;  // what a fresh batch takes: the wanted mass
    bool startAgain = false;        // added_g is no less than fresh_g

    bool isPossible() const { return notInRecipe.empty() && shortfalls.empty(); }
};

// Throws InputError where the question is wrong.
Correction correctionFor(const CorrectionQuestion& question);

struct WeighedCorrection {
    std::vector<double> add_g;   // as the display shows it
    std::vector<double> shares;  // that result, by part
    double total_g = 0;
};

// The additions as they can be weighed. Pre: the correction answers the question and has additions.
// Throws InputError for a balance that cannot be.
WeighedCorrection weighedOn(const BalanceFigures& balance, const CorrectionQuestion& question,
                            const Correction& correction);

}  // namespace rackbook
