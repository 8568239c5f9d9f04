#include "commands/PutRightPlan.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/Error.h"
#include "calc/EstimateMath.h"
#include "calc/PercentText.h"
#include "calc/RecipeOf.h"
#include "calc/ShareAnalysis.h"
#include "calc/WeighingPlan.h"
#include "commands/MassGiven.h"
#include "commands/Obstacles.h"
#include "commands/RecordNamed.h"
#include "commands/ShareGiven.h"

namespace rackbook {

namespace {

constexpr double shareTolerance = 1e-9;

void addTo(RecipeGiven& recipe, const InkSource& source, double share) {
    const auto same = std::find(recipe.sources.begin(), recipe.sources.end(), source);
    if (same != recipe.sources.end()) {
        recipe.shares[static_cast<std::size_t>(same - recipe.sources.begin())] += share;
        return;
    }
    recipe.sources.push_back(source);
    recipe.shares.push_back(share);
}

int mixNamed(const InkBook& ink, const std::string& id) {
    const int mix = ink.records.indexOf<Mix>(id);
    if (mix >= 0)
        return mix;
    std::vector<std::string> ids;
    for (const Mix& known : ink.records.of<Mix>())
        ids.push_back(known.id);
    refuseUnknownRecord(RecordKind::mix, id, ids);
}

std::vector<PutRightPart> partsOf(const RecipeGiven& recipe, const std::vector<InDish>& dish) {
    std::vector<PutRightPart> parts;
    for (std::size_t i = 0; i < recipe.sources.size(); ++i) {
        parts.emplace_back();
        parts.back().source = recipe.sources[i];
        parts.back().share = recipe.shares[i];
    }
    for (const InDish& in : dish) {
        auto part = std::find_if(parts.begin(), parts.end(), [&](const PutRightPart& known) {
            return known.source == in.source;
        });
        if (part == parts.end()) {
            parts.emplace_back();
            part = parts.end() - 1;
            part->source = in.source;
        }
        part->inDish_g += in.mass_g;
    }
    return parts;
}

CorrectionQuestion questionOf(const PutRight& plan) {
    CorrectionQuestion question;
    for (const PutRightPart& part : plan.parts) {
        question.shares.push_back(part.share);
        question.inDish_g.push_back(part.inDish_g);
        // The upper bound, which may be infinite, where nothing between the bounds is likelier.
        question.inStock_g.push_back(part.left_g.isKnown() ? part.left_g.best : part.left_g.high);
    }
    question.atLeast_g = plan.wanted_g;
    return question;
}

WeighedCorrection weighedAs(const std::optional<BalanceGiven>& balance,
                            const CorrectionQuestion& question, const Correction& correction) {
    if (balance)
        return weighedOn(balance->figures, question, correction);
    WeighedCorrection exact;
    exact.add_g = correction.add_g;
    exact.shares = question.shares;
    exact.total_g = correction.total_g;
    return exact;
}

// What was put in and what is added are weighings of their own.
void addUncertainty(PutRight& plan, const std::vector<InDish>& dish, const BalanceGiven& balance) {
    WeighedStage stage;
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        const PutRightPart& part = plan.parts[i];
        for (const InDish& in : dish)
            if (in.source == part.source)
                stage.parts.push_back({static_cast<int>(i), -1, in.mass_g});
        if (part.add_g > 0)
            stage.parts.push_back({static_cast<int>(i), -1, part.add_g});
    }
    for (const WeighedPart& part : stage.parts)
        stage.total_g += part.mass_g;
    stage.taken_g = stage.total_g;
    const std::vector<WeighedStage> stages = {stage};
    const ShareAnalysis analysis(stages, std::vector<bool>(plan.parts.size(), false));
    for (std::size_t i = 0; i < plan.parts.size(); ++i)
        plan.parts[i].giveOrTake = coverageFactor *
                                   analysis.uncertainty(i, massUncertainty_g(balance.figures)) /
                                   plan.parts[i].share;
}

void setAdditions(PutRight& plan, const WeighedCorrection& weighed) {
    plan.total_g = weighed.total_g;
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        PutRightPart& part = plan.parts[i];
        part.add_g = weighed.add_g[i];
        part.then_g = part.inDish_g + part.add_g;
        part.thenShare = weighed.shares[i];
        plan.added_g += part.add_g;
    }
}

// Parts with something to weigh, in weighing order.
std::vector<std::size_t> weighingOrder(const std::vector<PutRightPart>& parts,
                                       double PutRightPart::*mass_g, const InkBook& ink,
                                       const MixLedger& byKind) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < parts.size(); ++i)
        if (parts[i].*mass_g > 0)
            order.push_back(i);
    const auto turn = [&](std::size_t i) {
        return TurnAndMass{turnOf(ink, byKind, parts[i].source), parts[i].*mass_g};
    };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return isWeighedBefore(turn(a), turn(b));
    });
    return order;
}

void setFresh(PutRight& plan, CorrectionQuestion question,
              const std::optional<BalanceGiven>& balance) {
    if (!plan.wanted_g)
        return;
    std::fill(question.inDish_g.begin(), question.inDish_g.end(), 0);
    plan.fresh = correctionFor(question);
    const WeighedCorrection weighed = weighedAs(balance, question, plan.fresh);
    for (std::size_t i = 0; i < plan.parts.size(); ++i)
        plan.parts[i].fresh_g = weighed.add_g[i];
}

void lookUp(PutRight& plan, const InkBook& ink, const MixLedger& byKind, CivilMinute asOf) {
    const std::vector<LotUse> uses = lotUseOf(ink, asOf);
    for (PutRightPart& part : plan.parts) {
        part.mayHoldDrier = mayHoldDrier(ink, byKind, part.source);
        part.left_g = part.source.lot >= 0
                          ? atLeastNothing(uses[static_cast<std::size_t>(part.source.lot)].left_g)
                          : byKind.atEnd(static_cast<std::size_t>(part.source.mix)).total_g;
    }
}

}  // namespace

RecipeGiven recipeOfMix(const InkBook& ink, const std::string& id) {
    const int mix = mixNamed(ink, id);
    const Mix& record = ink.records.of<Mix>()[static_cast<std::size_t>(mix)];
    const MixStagesFound found = MixStages(ink.history).atEnd(static_cast<std::size_t>(mix));
    if (!found.problems.empty())
        throw InputError(
            "mix " + id,
            "what it is made of cannot be computed: " + obstacleWords(ink, found.problems),
            "Record what is missing, or give the recipe with --recipe.");
    RecipeGiven recipe;
    recipe.words = "the recipe of mix " + id + " (" + record.name + ")";
    for (const RecipePart& part : found.stages.back().parts)
        addTo(recipe,
              part.lot >= 0 ? InkSource{part.lot, -1}
                            : InkSource{-1, found.stages[static_cast<std::size_t>(part.stage)].mix},
              part.share);
    return recipe;
}

RecipeGiven recipeTyped(const InkBook& ink, const std::vector<std::string>& words) {
    RecipeGiven recipe;
    recipe.words = "the recipe given";
    double sum = 0;
    for (const std::string& word : words) {
        const auto [name, share] = assignmentIn(word, "recipe", "SOURCE=SHARE, such as rose=3%,");
        const InkSource source = inkSourceNamed(ink, name);
        const std::size_t before = recipe.sources.size();
        addTo(recipe, source, shareGiven(share, "--recipe " + name));
        if (recipe.sources.size() == before)
            throw UsageError("--recipe names " + name + " twice", "Give its whole share once.");
        if (recipe.shares.back() <= 0)
            throw UsageError("--recipe " + name + " is \"" + excerpt(share) + "\"",
                             "Leave out what the recipe does not have.");
        sum += recipe.shares.back();
    }
    if (std::abs(sum - 1) > shareTolerance)
        throw UsageError("the shares of the recipe add up to " + percentText(sum),
                         "Make them add up to 100 %.");
    return recipe;
}

std::vector<InDish> dishTyped(const InkBook& ink, const std::vector<std::string>& words) {
    std::vector<InDish> dish;
    for (const std::string& word : words) {
        const auto [name, mass] = assignmentIn(word, "in", "SOURCE=MASS, such as rose=3.2g,");
        const InkSource source = inkSourceNamed(ink, name);
        MassTerms terms;
        if (source.lot >= 0)
            terms.lot = &ink.records.of<Lot>()[static_cast<std::size_t>(source.lot)];
        dish.push_back({source, massGiven(mass, "--in " + name, terms)});
    }
    return dish;
}

PutRight putRight(const InkBook& ink, const RecipeGiven& recipe, const std::vector<InDish>& dish,
                  std::optional<double> wanted_g, const std::optional<BalanceGiven>& balance,
                  CivilMinute asOf) {
    const MixLedger byKind(ledgerByKind(ink.history, asOf));
    PutRight plan;
    plan.recipe = recipe;
    plan.parts = partsOf(recipe, dish);
    plan.wanted_g = wanted_g;
    lookUp(plan, ink, byKind, asOf);
    const CorrectionQuestion question = questionOf(plan);
    plan.correction = correctionFor(question);
    setFresh(plan, question, balance);
    plan.freshOrder = weighingOrder(plan.parts, &PutRightPart::fresh_g, ink, byKind);
    if (!plan.correction.notInRecipe.empty())
        return plan;
    setAdditions(plan, weighedAs(balance, question, plan.correction));
    if (balance)
        addUncertainty(plan, dish, *balance);
    plan.order = weighingOrder(plan.parts, &PutRightPart::add_g, ink, byKind);
    return plan;
}

}  // namespace rackbook
