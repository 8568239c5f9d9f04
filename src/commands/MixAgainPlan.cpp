#include "commands/MixAgainPlan.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Text.h"
#include "calc/MixLedger.h"
#include "calc/RecipeShares.h"
#include "commands/BookAccess.h"
#include "commands/LayerNamed.h"
#include "commands/Obstacles.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// Shares that differ by less came from the same weighings.
constexpr double sameShare = 1e-9;

void requireComputable(const InkBook& ink, const WantedInk& wanted, const RecipeFound& found) {
    if (found.isComputable())
        return;
    throw InputError(wanted.words,
                     "what it is made of cannot be computed: " + obstacleWords(ink, found.problems),
                     "Record what is missing, or match the colour by eye.");
}

std::size_t goodSheets(const Pull& pull) {
    return pull.impressions.size() - pull.spoiled.size();
}

std::vector<double> sharesByLot(const Recipe& recipe, std::size_t lots) {
    std::vector<double> shares(lots, 0);
    for (const LotShare& share : flattened(recipe))
        shares[static_cast<std::size_t>(share.lot)] = share.share;
    return shares;
}

double mostDifference(const std::vector<double>& a, const std::vector<double>& b) {
    double most = 0;
    for (std::size_t i = 0; i < a.size(); ++i)
        most = std::max(most, std::abs(a[i] - b[i]));
    return most;
}

void findRecipe(const InkBook& ink, MixAgain& again) {
    const RecipeOf recipes(ink.history, recipeMixesOf(ink));
    if (again.wanted.pulls.empty()) {
        again.found = recipes.atEnd(static_cast<std::size_t>(again.wanted.mix));
        return;
    }
    std::vector<double> shares;
    for (const int pull : byGoodSheets(ink, again.wanted.pulls)) {
        RecipeFound found = recipes.atPull(static_cast<std::size_t>(pull));
        const std::string& id = ink.records.of<Pull>()[static_cast<std::size_t>(pull)].id;
        if (again.fromPull >= 0) {
            OtherPull other{id, found.isComputable(), 0};
            if (other.isComputable)
                other.mostDifference =
                    mostDifference(shares, sharesByLot(found.recipe, shares.size()));
            again.others.push_back(other);
        } else if (found.isComputable()) {
            again.fromPull = pull;
            shares = sharesByLot(found.recipe, ink.history.lots.size());
            again.found = std::move(found);
        } else {
            again.others.push_back({id, false, 0});
            again.found = std::move(found);
        }
    }
}

// The recipe with the lots that serve in place of those that do not.
Recipe withServingLots(Recipe recipe, const std::vector<LotService>& services) {
    for (RecipeStage& stage : recipe.stages) {
        std::vector<RecipePart> parts;
        double sum = 0;
        for (RecipePart part : stage.parts) {
            for (const LotService& service : services) {
                if (service.answer != LotAnswer::replaced || service.need.lot != part.lot)
                    continue;
                part.lot = service.by;
                part.share *= service.factor;
                break;
            }
            sum += part.share;
            const auto same = std::find_if(
                parts.begin(), parts.end(),
                [&](const RecipePart& other) { return part.lot >= 0 && other.lot == part.lot; });
            if (same == parts.end())
                parts.push_back(part);
            else
                same->share += part.share;
        }
        for (RecipePart& part : parts)
            part.share /= sum;
        stage.parts = std::move(parts);
    }
    return recipe;
}

bool holdsDrier(const RecipeStage& stage, const std::vector<LotKind>& kinds) {
    return std::any_of(stage.parts.begin(), stage.parts.end(), [&](const RecipePart& part) {
        return part.lot >= 0 && kinds[static_cast<std::size_t>(part.lot)] == LotKind::drier;
    });
}

// Earlier stages whose mix is still there with the same shares in it.
std::vector<StageInJar> stagesInJars(const InkBook& ink, const RecipeFound& found,
                                     CivilMinute asOf) {
    const RecipeOf recipes(ink.history, recipeMixesOf(ink), asOf);
    const MixLedger ledger(ledgerByLot(ink.history, asOf));
    std::vector<StageInJar> inJars;
    for (std::size_t i = 0; i + 1 < found.recipe.stages.size(); ++i) {
        const int mix = found.mixOfStage[i];
        if (mix < 0 || ink.records.of<Mix>()[static_cast<std::size_t>(mix)].finishedOn)
            continue;
        const RecipeFound now = recipes.atEnd(static_cast<std::size_t>(mix));
        if (!now.isComputable())
            continue;
        Recipe then;
        then.stages.assign(found.recipe.stages.begin(),
                           found.recipe.stages.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        const std::size_t lots = ink.history.lots.size();
        if (mostDifference(sharesByLot(then, lots), sharesByLot(now.recipe, lots)) < sameShare)
            inJars.push_back({i, ledger.atEnd(static_cast<std::size_t>(mix)).total_g});
    }
    return inJars;
}

// Of lots that serve, also those that the plan makes more of than the recipe needs.
std::vector<LotShortage> shortagesOf(const WeighingPlan& plan,
                                     const std::vector<LotService>& services,
                                     const std::vector<LotOnShelf>& shelf) {
    std::vector<double> needed_g(shelf.size(), 0);
    for (const PlanStage& stage : plan.stages)
        for (const PlanPart& part : stage.parts)
            if (part.lot >= 0)
                needed_g[static_cast<std::size_t>(part.lot)] += part.mass_g;
    for (const LotService& service : services)
        if (service.answer != LotAnswer::serves && service.answer != LotAnswer::replaced)
            needed_g[static_cast<std::size_t>(service.need.lot)] = 0;
    std::vector<LotShortage> shortages;
    for (std::size_t lot = 0; lot < shelf.size(); ++lot)
        if (needed_g[lot] > shelf[lot].left_g.best)
            shortages.push_back({static_cast<int>(lot), needed_g[lot], shelf[lot].left_g});
    return shortages;
}

// What a plan takes of the stages that are still there, where it has a step for them.
void noteNeeds(std::vector<StageInJar>& inJars, const WeighingPlan& plan) {
    for (StageInJar& jar : inJars)
        for (const PlanStage& stage : plan.stages)
            if (stage.role == StageRole::recipe && stage.recipeStage == static_cast<int>(jar.stage))
                jar.needed_g = stage.taken_g;
}

}  // namespace

std::vector<int> pullsOfLayer(const InkBook& ink, const Layer& layer) {
    const std::vector<Pull>& pulls = ink.records.of<Pull>();
    std::vector<int> found;
    for (std::size_t i = 0; i < pulls.size(); ++i)
        if (pulls[i].layer.id == layer.id)
            found.push_back(static_cast<int>(i));
    return found;
}

std::vector<int> byGoodSheets(const InkBook& ink, std::vector<int> pulls) {
    std::stable_sort(pulls.begin(), pulls.end(), [&](int a, int b) {
        const std::vector<Pull>& all = ink.records.of<Pull>();
        return goodSheets(all[static_cast<std::size_t>(a)]) >
               goodSheets(all[static_cast<std::size_t>(b)]);
    });
    return pulls;
}

bool MixAgain::lacksLots() const {
    return !shortages.empty() ||
           std::any_of(services.begin(), services.end(), [](const LotService& service) {
               return service.answer != LotAnswer::serves && service.answer != LotAnswer::replaced;
           });
}

WantedInk wantedLayer(const InkBook& ink, const Layer& layer) {
    WantedInk wanted;
    wanted.words = layerWords(ink, layer);
    wanted.pulls = pullsOfLayer(ink, layer);
    // A layer that was never pulled still has the mix it is to be printed from.
    if (wanted.pulls.empty() && layer.mix)
        wanted.mix = ink.records.indexOf<Mix>(layer.mix->id);
    if (wanted.pulls.empty() && wanted.mix < 0)
        throw UsageError(wanted.words + " has no pull and names no mix",
                         "Name the mix that is to be made again.");
    return wanted;
}

WantedInk wantedMix(const InkBook& ink, int mix) {
    WantedInk wanted;
    wanted.words = "mix " + mixAt(ink, mix).id + " (" + mixAt(ink, mix).name + ")";
    wanted.mix = mix;
    return wanted;
}

WantedInk wantedPull(const InkBook& ink, int pull) {
    WantedInk wanted;
    wanted.words = "the ink of pull " + ink.records.of<Pull>()[static_cast<std::size_t>(pull)].id;
    wanted.pulls = {pull};
    return wanted;
}

std::string obstaclesTo(const InkBook& ink, const WantedInk& wanted) {
    MixAgain again;
    again.wanted = wanted;
    findRecipe(ink, again);
    return again.found.isComputable() ? std::string() : obstacleWords(ink, again.found.problems);
}

WantedInk wantedInkNamed(const BookFile& book, const InkBook& ink, const std::string& words,
                         const std::optional<std::string>& layer) {
    if (layer)
        return wantedLayer(ink, layerOf(book, editionNamed(book, words), *layer));
    if (const int mix = ink.records.indexOf<Mix>(words); mix >= 0)
        return wantedMix(ink, mix);
    if (const Layer* named = ink.records.find<Layer>(words))
        return wantedLayer(ink, *named);
    if (const int pull = ink.records.indexOf<Pull>(words); pull >= 0)
        return wantedPull(ink, pull);
    std::vector<std::string> ids;
    addIdsOf<Mix>(ink, ids);
    addIdsOf<Layer>(ink, ids);
    addIdsOf<Pull>(ink, ids);
    const std::optional<std::string> nearest = nearestName(words, ids);
    throw UsageError("the book has no mix, layer or pull \"" + excerpt(words) + "\"",
                     nearest ? "Did you mean " + *nearest + "?"
                             : "rackbook list mix shows the mixes; a layer is named as EEL 4.");
}

MixAgain mixAgain(const InkBook& ink, const WantedInk& wanted, PlanRequest request,
                  const TimeSpan& on) {
    MixAgain again;
    again.wanted = wanted;
    findRecipe(ink, again);
    requireComputable(ink, wanted, again.found);
    const std::vector<LotOnShelf> shelf = shelfOf(ink, on.latest);
    again.services = servicesOf(shelf, needsOf(again.found.recipe, request.wanted_g), on);
    again.inJars = stagesInJars(ink, again.found, on.latest);
    request.recipe = withServingLots(again.found.recipe, again.services);
    request.lotKinds = lotKindsOf(ink);
    if (holdsDrier(request.recipe.stages.back(), request.lotKinds))
        request.recipe.stages.back().purpose = MixPurpose::portion;
    again.weighing = plannedWeighing(std::move(request));
    noteNeeds(again.inJars, again.weighing.plan());
    again.shortages = shortagesOf(again.weighing.plan(), again.services, shelf);
    return again;
}

}  // namespace rackbook
