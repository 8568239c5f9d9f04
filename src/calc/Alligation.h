// Two mixes that hold different shares of something, blended to hold a share between the two
// (alligation alternate). With shares a, b and t wanted, (t − b) parts of the first go with (a − t)
// parts of the second. Masses in g, shares 0 … 1.
#pragma once

#include "calc/Estimate.h"

namespace rackbook {

// Of the blend; they add up to 1.
struct BlendParts {
    double first = 0;
    double second = 0;
};

// Throws InputError where a share is wrong or where t does not lie between a and b, both included;
// the message says what can be reached. Where all three are equal, all of it is the first.
BlendParts partsToReach(double target, double first, double second);

struct BlendMasses {
    double first_g = 0;
    double second_g = 0;
    Estimate share;  // that results, from low with low to high with high

    double total_g() const { return first_g + second_g; }
};

// The masses are computed from the best values; shares without one are refused with InputError, as
// are masses that are not finite or not above 0.
BlendMasses blendOfMass(double total_g, double target, const Estimate& first,
                        const Estimate& second);

// How much of the second brings first_g of the first to the target. Where the target is the
// second's own share and not the first's, no mass does; that is refused too.
BlendMasses blendByAdding(double first_g, double target, const Estimate& first,
                          const Estimate& second);

}  // namespace rackbook
