// Recipes and requests for the tests of weighing plans.
#pragma once

#include <optional>
#include <string>

#include "base/Error.h"
#include "calc/WeighingPlan.h"

namespace rackbook::test {

constexpr int blue = 0;
constexpr int base = 1;
constexpr int red = 2;
constexpr int drier = 3;
constexpr int yellow = 4;
const std::vector<LotKind> planLots = {LotKind::ink, LotKind::base, LotKind::ink, LotKind::drier,
                                       LotKind::ink};

inline RecipeStage stageOf(MixPurpose purpose, std::vector<RecipePart> parts) {
    return {"", purpose, std::move(parts)};
}

inline PlanRequest requestFor(std::vector<RecipeStage> stages) {
    PlanRequest request;
    request.recipe.stages = std::move(stages);
    request.lotKinds = planLots;
    request.wanted_g = 60;
    request.balance = {0.1, 0.1};
    request.limit = 0.05;
    return request;
}

// Base with one colour in it.
inline PlanRequest paleBlue(double share = 0.03) {
    return requestFor({stageOf(MixPurpose::stock, {{blue, -1, share}, {base, -1, 1 - share}})});
}

// A stock mix of two colours, let down, with drier in the portion.
inline PlanRequest threeStages() {
    return requestFor({stageOf(MixPurpose::stock, {{blue, -1, 0.9}, {red, -1, 0.1}}),
                       stageOf(MixPurpose::letDown, {{base, -1, 0.97}, {-1, 0, 0.03}}),
                       stageOf(MixPurpose::portion, {{drier, -1, 0.02}, {-1, 1, 0.98}})});
}

inline const WeighingPlan* planOf(const WeighingPlans& plans, PlanKind kind) {
    for (const WeighingPlan& plan : plans.plans)
        if (plan.kind == kind)
            return &plan;
    return nullptr;
}

template <class Call>
std::string refusalOf(const Call& call) {
    try {
        call();
    } catch (const InputError& error) {
        return error.what();
    }
    return {};
}

}  // namespace rackbook::test
