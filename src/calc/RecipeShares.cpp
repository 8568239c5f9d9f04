#include "calc/RecipeShares.h"

#include <map>

namespace rackbook {

double shareOf(const std::vector<LotShare>& shares, int lot) {
    double share = 0;
    for (const LotShare& part : shares)
        if (part.lot == lot)
            share += part.share;
    return share;
}

// Later stages first: when a stage's turn comes, everything that draws on it has been counted.
std::vector<double> sharesOfStages(const Recipe& recipe) {
    std::vector<double> shares(recipe.stages.size(), 0);
    if (!shares.empty())
        shares.back() = 1;
    for (std::size_t stage = shares.size(); stage-- > 0;)
        for (const RecipePart& part : recipe.stages[stage].parts)
            if (part.stage >= 0)
                shares[static_cast<std::size_t>(part.stage)] += shares[stage] * part.share;
    return shares;
}

std::vector<LotShare> flattened(const Recipe& recipe) {
    const std::vector<double> ofStage = sharesOfStages(recipe);
    std::map<int, double> ofLot;
    for (std::size_t stage = 0; stage < ofStage.size(); ++stage)
        for (const RecipePart& part : recipe.stages[stage].parts)
            if (part.lot >= 0 && ofStage[stage] > 0)
                ofLot[part.lot] += ofStage[stage] * part.share;
    std::vector<LotShare> shares;
    shares.reserve(ofLot.size());
    for (const auto& [lot, share] : ofLot)
        shares.push_back({lot, share});
    return shares;
}

}  // namespace rackbook
