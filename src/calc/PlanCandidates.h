// The layouts that come into question for a recipe, sized to keep the limit. Part of WeighingPlan.
#pragma once

#include <vector>

#include "calc/PlanLayout.h"

namespace rackbook {

struct PlanCandidate {
    PlanKind kind = PlanKind::asItStands;
    Layout layout;
};

// Those that keep the limit, without the recipe as it stands.
//
// For tints the parts that carry ink and go into base enough are taken in the order of what their
// own weighing does to the worst limited share; the weakest, the two weakest … are let down, first
// all with the same parts of base, then each with other parts where that wastes less. Of all these
// the one with the least waste is kept.
std::vector<PlanCandidate> candidatesFor(const Layout& asItStands, const PlanCase& planCase);

}  // namespace rackbook
