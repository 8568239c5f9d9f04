#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/PercentText.h"
#include "calc/PlanLayout.h"
#include "calc/RecipeCheck.h"
#include "calc/RecipeShares.h"

namespace rackbook {

namespace {

void requireFigures(const PlanRequest& request) {
    requireUsable(request.balance);
    if (!std::isfinite(request.wanted_g) || request.wanted_g <= 0)
        throw InputError("plan", "the mass wanted is " + formatShortest(request.wanted_g) + " g",
                         "Give a mass above 0 g.");
    if (!(request.limit > 0 && request.limit < 1))
        throw InputError("plan", "the limit on the uncertainty is " + percentText(request.limit),
                         "Give one above 0 % and below 100 %.");
    if (!std::isfinite(request.mostTimes) || request.mostTimes < 1)
        throw InputError("plan",
                         "the largest stage allowed is " + formatShortest(request.mostTimes) +
                             " times the mass wanted",
                         "Give 1 or more.");
}

void requireDrierInPortions(const PlanRequest& request) {
    for (std::size_t i = 0; i < request.recipe.stages.size(); ++i) {
        const RecipeStage& stage = request.recipe.stages[i];
        if (stage.purpose == MixPurpose::portion)
            continue;
        for (const RecipePart& part : stage.parts)
            if (part.lot >= 0 &&
                request.lotKinds[static_cast<std::size_t>(part.lot)] == LotKind::drier)
                throw InputError(stageLabel(request.recipe, i),
                                 "drier goes in, and it is no portion",
                                 "Put the drier into a portion, where it starts the clock last.");
    }
}

}  // namespace

PlanCase::PlanCase(const PlanRequest& request)
    : balance(request.balance),
      limit(request.limit),
      wanted_g(request.wanted_g),
      most_g(request.mostTimes * request.wanted_g) {
    requireFigures(request);
    requireSound(request.recipe, request.lotKinds.size());
    requireDrierInPortions(request);
    u_g = massUncertainty_g(balance);
    double ink = 0;
    for (const LotShare& part : flattened(request.recipe)) {
        lots.push_back(part.lot);
        kinds.push_back(request.lotKinds[static_cast<std::size_t>(part.lot)]);
        isInk.push_back(kinds.back() == LotKind::ink);
        recipe.push_back(part.share);
        ink += isInk.back() ? part.share : 0;
    }
    isLimited = isInk;
    recipe.push_back(ink);
    isLimited.push_back(ink > 0);
}

}  // namespace rackbook
