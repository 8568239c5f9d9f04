// What to add to a dish so that its shares are those of a recipe again.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "calc/Correction.h"
#include "commands/BalanceGiven.h"
#include "commands/InkBook.h"
#include "commands/InkSource.h"

namespace rackbook {

struct RecipeGiven {
    std::string words;               // "the recipe of mix eel-l4-a (Portion a)"
    std::vector<InkSource> sources;  // each once
    std::vector<double> shares;      // by source, adding up to 1
};

// What a mix was itself made of, lots and mixes, by its weighings. Throws UsageError where the book
// has no such mix, InputError where it cannot be computed.
RecipeGiven recipeOfMix(const InkBook& ink, const std::string& id);

// From "SOURCE=SHARE" words. Throws UsageError where a source stands twice or the shares do not add
// up to 100 %.
RecipeGiven recipeTyped(const InkBook& ink, const std::vector<std::string>& words);

struct InDish {
    InkSource source;
    double mass_g = 0;
};

// From "SOURCE=MASS" words.
std::vector<InDish> dishTyped(const InkBook& ink, const std::vector<std::string>& words);

// One source, in the recipe or only in the dish.
struct PutRightPart {
    InkSource source;
    double share = 0;  // of the recipe
    double inDish_g = 0;
    Estimate left_g;  // by the book
    bool mayHoldDrier = false;
    double add_g = 0;  // as the display shows it
    double then_g = 0;
    double thenShare = 0;
    double giveOrTake = notKnown;  // twice the standard uncertainty over the share
    double fresh_g = notKnown;     // of a fresh batch, as the display shows it
};

struct PutRight {
    RecipeGiven recipe;
    std::vector<PutRightPart> parts;  // of the recipe, then what the recipe does not have
    std::vector<std::size_t> order;   // parts to be added to, in weighing order
    std::optional<double> wanted_g;
    Correction correction;
    Correction fresh;  // from an empty dish; only where wanted_g is given
    std::vector<std::size_t> freshOrder;
    double total_g = 0;  // what it comes to, as the display shows it
    double added_g = 0;
};

// Throws InputError where the masses cannot be.
PutRight putRight(const InkBook& ink, const RecipeGiven& recipe, const std::vector<InDish>& dish,
                  std::optional<double> wanted_g, const std::optional<BalanceGiven>& balance,
                  CivilMinute asOf);

}  // namespace rackbook
