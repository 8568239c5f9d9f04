#include "calc/RecipeCheck.h"

#include <cmath>
#include <vector>

#include "base/Error.h"
#include "calc/PercentText.h"

namespace rackbook {

namespace {

constexpr double sumTolerance = 1e-9;

void requireSoundPart(const Recipe& recipe, std::size_t stage, std::size_t number,
                      std::size_t lotCount) {
    const RecipePart& part = recipe.stages[stage].parts[number];
    const std::string where = stageLabel(recipe, stage) + ", part " + std::to_string(number + 1);
    if ((part.lot >= 0) == (part.stage >= 0))
        throw InputError(
            where,
            part.lot >= 0 ? "it is both a lot and a stage" : "it is neither a lot nor a stage",
            "Name one of them.");
    if (part.lot >= 0 && static_cast<std::size_t>(part.lot) >= lotCount)
        throw InputError(where, "there is no such lot", "Name a lot of the book.");
    if (part.stage >= 0 && static_cast<std::size_t>(part.stage) >= stage)
        throw InputError(where, "it takes from a stage that is not made before it",
                         "Put the stage that it takes from first.");
    if (!(part.share > 0 && part.share <= 1))
        throw InputError(where, "its share is " + percentText(part.share),
                         "Give a share above 0 % and at most 100 %.");
}

void requireWholeStage(const Recipe& recipe, std::size_t stage, std::size_t lotCount) {
    double sum = 0;
    for (std::size_t i = 0; i < recipe.stages[stage].parts.size(); ++i) {
        requireSoundPart(recipe, stage, i, lotCount);
        sum += recipe.stages[stage].parts[i].share;
    }
    if (std::fabs(sum - 1) > sumTolerance)
        throw InputError(stageLabel(recipe, stage), "its shares add up to " + percentText(sum),
                         "Make them add up to 100 %.");
}

}  // namespace

std::string stageLabel(const Recipe& recipe, std::size_t stage) {
    const std::string& name = recipe.stages[stage].name;
    return "recipe, stage " + std::to_string(stage + 1) + (name.empty() ? "" : " (" + name + ")");
}

void requireSound(const Recipe& recipe, std::size_t lotCount) {
    if (recipe.stages.empty())
        throw InputError("recipe", "it has no stages", "Give at least one.");
    std::vector<bool> isUsed(recipe.stages.size());
    for (std::size_t stage = 0; stage < recipe.stages.size(); ++stage) {
        requireWholeStage(recipe, stage, lotCount);
        for (const RecipePart& part : recipe.stages[stage].parts)
            if (part.stage >= 0)
                isUsed[static_cast<std::size_t>(part.stage)] = true;
    }
    for (std::size_t stage = 0; stage + 1 < recipe.stages.size(); ++stage)
        if (!isUsed[stage])
            throw InputError(stageLabel(recipe, stage), "nothing takes from it",
                             "Leave it out, or let a later stage take from it.");
}

}  // namespace rackbook
