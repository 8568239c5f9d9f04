// How well the shares of a recorded mix are known, by the balances that it was weighed on.
#pragma once

#include <vector>

#include "calc/RecipeOf.h"
#include "calc/RecipeShares.h"
#include "commands/InkBook.h"

namespace rackbook {

// Standard uncertainties of the shares, one for each, absolute: every mass of a stage has that of
// the coarsest balance its weighings name, or, where they name none, of the coarsest the studio
// uses (JCGM 100:2008; see BalanceReading.h). Empty where no balance is known for some stage. What
// was topped up counts as weighed in once.
// Pre: the recipe is computable, and the shares are those of it (flattened).
std::vector<double> recordedUncertainties(const InkBook& ink, const RecipeFound& found,
                                          const std::vector<LotShare>& shares);

}  // namespace rackbook
