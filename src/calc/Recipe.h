// A recipe: how an ink is made in stages, each a heap of its own.
#pragma once

#include <string>
#include <vector>

#include "records/Mix.h"

namespace rackbook {

// What goes into a stage: a lot, or what an earlier stage made. Exactly one of lot and stage is
// set.
struct RecipePart {
    int lot = -1;      // position among the book's lots
    int stage = -1;    // position in Recipe::stages, before the stage it goes into
    double share = 0;  // of the stage's mass, above 0, at most 1
};

struct RecipeStage {
    std::string name;  // of the mix it repeats, or of what it is
    MixPurpose purpose = MixPurpose::stock;
    std::vector<RecipePart> parts;  // their shares add up to 1
};

// The last stage is the ink that is wanted.
struct Recipe {
    std::vector<RecipeStage> stages;
};

}  // namespace rackbook
