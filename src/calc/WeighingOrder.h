// In which order the parts of a stage are weighed into the dish.
//
// The smallest first, which is mostly the strongest colour: what is in cannot be taken out again,
// so when too much of it drops in, the parts still to come are raised in proportion, and little is
// lost. Base comes after everything else for the same reason; it is the part that is raised most
// easily. Drier comes last of all and goes into a portion only, because it starts the clock.
#pragma once

#include "records/Lot.h"

namespace rackbook {

enum class WeighingTurn { colour, base, drier };  // modifiers take their turn among the colours

struct TurnAndMass {
    WeighingTurn turn = WeighingTurn::colour;
    double mass_g = 0;
};

// Whether a is weighed before b; by turn, then by mass.
bool isWeighedBefore(const TurnAndMass& a, const TurnAndMass& b);

WeighingTurn turnOf(LotKind kind);

}  // namespace rackbook
