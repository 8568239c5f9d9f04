// How large the stages of a layout must be to keep the limit. Part of WeighingPlan.
#pragma once

#include <optional>

#include "calc/PlanLayout.h"

namespace rackbook {

// The layout with its last stage made larger, and all others with it, until it keeps the limit.
// Nothing where no size that is allowed does.
std::optional<Layout> enlargedAsAWhole(const Layout& layout, const PlanCase& planCase);

// The layout with the stages before the last made larger than needed until it keeps the limit.
//
// Of one limited share, the relative variance is Σ a_s/M_s² over the stages, a_s being unchanged by
// the masses. The least Σ M_s that keeps it below a bound has M_s = λ·a_s^(1/3) for every stage
// that is larger than needed (Lagrange's multiplier). λ is found by bisection on exact masses,
// where it is monotonous, and from about there upwards step by step, until the rounded masses keep
// the limit too. Where several shares bind, that is no longer the least, so each stage is then made
// as small as it can be with the others as they are.
std::optional<Layout> enlargedBefore(const Layout& layout, const PlanCase& planCase);

}  // namespace rackbook
