// In which order the parts of a stage are weighed into the dish.
//
// The smallest first, which is mostly the strongest colour: what is in cannot be taken out again,
// so when too much of it drops in, the parts still to come are raised in proportion, and little is
// lost. Base comes after everything else for the same reason; it is the part that is raised most
// easily. Drier comes last of all and goes into a portion only, because it starts the clock.
#pragma once

#include <vector>

#include "calc/BalanceReading.h"
#include "calc/WeighingPlan.h"

namespace rackbook {

enum class WeighingTurn { colour, base, drier };  // modifiers take their turn among the colours

struct TurnAndMass {
    WeighingTurn turn = WeighingTurn::colour;
    double mass_g = 0;
};

// Whether a is weighed before b; by turn, then by mass.
bool isWeighedBefore(const TurnAndMass& a, const TurnAndMass& b);

WeighingTurn turnOf(LotKind kind);

struct RescaledStage {
    double factor = 1;          // of the planned total; 1 where nothing overshot
    std::vector<double> add_g;  // by part: still to be weighed in, as the display shows it
    double total_g = 0;         // what the stage comes to
};

// weighed_g holds what was really weighed in of the first parts, in weighing order. Where one of
// them overshot, the stage grows in proportion to the one that overshot most; nothing is scaled
// down, so a part that fell short is topped up. Throws InputError for masses that are negative or
// not finite, for more masses than parts, and for a balance that cannot be.
RescaledStage rescaled(const PlanStage& stage, const std::vector<double>& weighed_g,
                       const BalanceFigures& balance);

}  // namespace rackbook
