// Whether one lot can take the place of another, and with how much mass.
#pragma once

#include "calc/Substitutes.h"

namespace rackbook {

struct LotLikeness {
    bool alike = false;
    double factor = 1;
    bool baseDiffers = false;
    bool contentNotStated = false;
    bool metalsDiffer = false;
};

// Inks are alike by exactly the same pigments, of which at least one is recorded; modifiers also by
// the same words where neither has a pigment; driers by the same metals, at least one; bases
// always. The factor of driers is content of the old / content of the new, where both state it.
LotLikeness likenessOf(const LotOnShelf& needed, const LotOnShelf& other);

}  // namespace rackbook
