#include "commands/RecordedWeighing.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "calc/BalanceReading.h"
#include "calc/ShareAnalysis.h"

namespace rackbook {

namespace {

double uncertaintyOf_g(const Balance& balance) {
    return massUncertainty_g(
        {balance.readability_g, balance.repeatability_g.value_or(balance.readability_g)});
}

std::optional<double> coarsestInUse_g(const InkBook& ink) {
    std::optional<double> most;
    for (const Balance& balance : ink.records.of<Balance>())
        if (!balance.retiredOn)
            most = std::max(most.value_or(0), uncertaintyOf_g(balance));
    return most;
}

// What went into one stage by then, and the uncertainty of each mass of it.
struct StageWeighed {
    double total_g = 0;
    std::optional<double> u_g;
};

StageWeighed weighedInto(const InkBook& ink, int mix, const TimeSpan& asOf,
                         const std::optional<double>& otherwise_g) {
    StageWeighed weighed;
    const std::vector<Weighing>& all = ink.records.of<Weighing>();
    for (std::size_t i = 0; i < all.size(); ++i) {
        const HistoryWeighing& row = ink.history.weighings[i];
        if (row.mix != mix || row.act != WeighingAct::add || row.at.earliest > asOf.latest)
            continue;
        if (!std::isnan(row.mass_g))
            weighed.total_g += row.mass_g;
        if (const Balance* balance = ink.records.find(all[i].balance))
            weighed.u_g = std::max(weighed.u_g.value_or(0), uncertaintyOf_g(*balance));
    }
    if (!weighed.u_g)
        weighed.u_g = otherwise_g;
    return weighed;
}

}  // namespace

std::vector<double> recordedUncertainties(const InkBook& ink, const RecipeFound& found,
                                          const std::vector<LotShare>& shares) {
    const std::optional<double> otherwise_g = coarsestInUse_g(ink);
    std::vector<WeighedStage> stages;
    std::vector<double> u_g;
    for (std::size_t i = 0; i < found.recipe.stages.size(); ++i) {
        const StageWeighed weighed =
            weighedInto(ink, found.mixOfStage[i], found.stageAsOf[i], otherwise_g);
        if (!weighed.u_g || !(weighed.total_g > 0))
            return {};
        WeighedStage stage;
        for (const RecipePart& part : found.recipe.stages[i].parts)
            stage.parts.push_back({part.lot, part.stage, part.share * weighed.total_g});
        for (const WeighedPart& part : stage.parts)
            stage.total_g += part.mass_g;
        stage.taken_g = stage.total_g;
        stages.push_back(std::move(stage));
        u_g.push_back(*weighed.u_g);
    }
    const ShareAnalysis analysis(stages, std::vector<bool>(ink.history.lots.size(), false));
    std::vector<double> uncertainties;
    for (const LotShare& part : shares) {
        double sum = 0;
        for (std::size_t stage = 0; stage < stages.size(); ++stage)
            sum += analysis.squaredSensitivity(stage, static_cast<std::size_t>(part.lot)) *
                   u_g[stage] * u_g[stage];
        uncertainties.push_back(std::sqrt(sum));
    }
    return uncertainties;
}

}  // namespace rackbook
