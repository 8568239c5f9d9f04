#include "commands/MatchPlan.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"

namespace rackbook {

namespace {

constexpr std::size_t recipesShown = 4;

bool isAmong(const std::vector<int>& lots, int lot) {
    return std::find(lots.begin(), lots.end(), lot) != lots.end();
}

void findColours(const InkBook& ink, const ColourModel& model, Match& match) {
    const std::vector<LotOnShelf> shelf = shelfOf(ink, match.wanted.asOf);
    for (std::size_t i = 0; i < shelf.size(); ++i) {
        if (shelf[i].lotKind != LotKind::ink)
            continue;
        const int lot = static_cast<int>(i);
        std::string why = whyNotOnShelf(shelf[i], match.wanted.asOf);
        if (isAmong(match.wanted.without, lot))
            why = "as asked";
        else if (why.empty() && !model.inks.of(lot))
            why = "no drawdown of it was measured";
        if (why.empty())
            match.colours.push_back(lot);
        else
            match.notTaken.push_back({lot, why});
    }
}

// Price over net mass of each part: what the tins cost, whatever was left in them unused.
double costOf100g(const InkBook& ink, const std::vector<LotShare>& shares) {
    double cost = 0;
    for (const LotShare& part : shares) {
        const Lot& lot = lotAt(ink, part.lot);
        if (!lot.price || !lot.netMass_g || *lot.netMass_g <= 0)
            return notKnown;
        cost += 100 * part.share * *lot.price / *lot.netMass_g;
    }
    return cost;
}

bool isHeld(const MatchWanted& wanted, int lot) {
    return std::any_of(wanted.held.begin(), wanted.held.end(),
                       [&](const LotShare& part) { return part.lot == lot; });
}

// Colours and base first; what is held, drier, in a portion of its own, since it starts the clock.
Recipe recipeOf(const Match& match) {
    Recipe recipe;
    RecipeStage ink{"Match of " + match.wanted.aim.words, MixPurpose::letDown, {}};
    RecipeStage portion{"Portion of it", MixPurpose::portion, {}};
    double share = 0;
    for (const LotShare& part : match.found[match.wanted.recipe].shares)
        if (!isHeld(match.wanted, part.lot))
            share += part.share;
    for (const LotShare& part : match.found[match.wanted.recipe].shares) {
        if (part.share <= 0)
            continue;
        if (isHeld(match.wanted, part.lot))
            portion.parts.push_back({part.lot, -1, part.share});
        else
            ink.parts.push_back({part.lot, -1, part.share / share});
    }
    recipe.stages.push_back(std::move(ink));
    if (!portion.parts.empty()) {
        portion.parts.insert(portion.parts.begin(), {-1, 0, share});
        recipe.stages.push_back(std::move(portion));
    }
    return recipe;
}

void planWeighing(const InkBook& ink, Match& match) {
    PlanRequest request;
    request.recipe = recipeOf(match);
    request.lotKinds = lotKindsOf(ink);
    request.wanted_g = *match.wanted.mass_g;
    request.balance = match.wanted.balance->figures;
    request.limit = match.wanted.limit;
    match.weighing = plannedWeighing(std::move(request));
    const std::vector<LotOnShelf> shelf = shelfOf(ink, match.wanted.asOf);
    std::vector<double> needed_g(shelf.size(), 0);
    for (const PlanStage& stage : match.weighing->plan().stages)
        for (const PlanPart& part : stage.parts)
            if (part.lot >= 0)
                needed_g[static_cast<std::size_t>(part.lot)] += part.mass_g;
    for (std::size_t lot = 0; lot < shelf.size(); ++lot)
        if (needed_g[lot] > shelf[lot].left_g.best)
            match.shortages.push_back({static_cast<int>(lot), needed_g[lot]});
}

// Standard uncertainties of the shares as they are weighed, rounding included.
std::vector<double> weighedUncertainties(const Match& match, const MatchFound& found) {
    std::vector<double> uncertainties;
    for (const LotShare& part : found.shares) {
        double its = 0;
        for (const PlannedShare& planned : match.weighing->plan().lots)
            if (planned.lot == part.lot)
                its = std::hypot(planned.uncertainty, planned.planned - planned.recipe);
        uncertainties.push_back(its);
    }
    return uncertainties;
}

PredictionSpread spreadFor(const InkBook& ink, const ColourModel& model, const Match& match,
                           std::size_t position) {
    const MatchFound& found = match.found[position];
    SpreadQuestion question{model.inks,
                            found.shares,
                            {},
                            found.filmWeight_gm2,
                            found.filmWeight_gm2 * match.wanted.film.uncertainty_share,
                            match.wanted.paper.bands};
    if (match.weighing && position == match.wanted.recipe)
        question.shareUncertainties = weighedUncertainties(match, found);
    return spreadOf(question, lotKindsOf(ink));
}

}  // namespace

std::string whyNotOnShelf(const LotOnShelf& lot, CivilMinute asOf) {
    if (lot.bought && lot.bought->latest > asOf)
        return "not there yet";
    if (lot.finished && lot.finished->earliest <= asOf)
        return "finished";
    if (lot.left_g.high <= 0)
        return "used up by the book";
    return {};
}

int usualBase(const InkBook& ink, const ColourModel& model, CivilMinute asOf) {
    const std::vector<LotOnShelf> shelf = shelfOf(ink, asOf);
    int best = -1;
    const auto left = [&](int lot) {
        const double left_g = shelf[static_cast<std::size_t>(lot)].left_g.best;
        return std::isnan(left_g) ? 0 : left_g;
    };
    for (const LotOptics& known : model.inks.lots)
        if (lotAt(ink, known.lot).lotKind == LotKind::base &&
            known.source == OpticsSource::fitted &&
            whyNotOnShelf(shelf[static_cast<std::size_t>(known.lot)], asOf).empty() &&
            (best < 0 || left(known.lot) > left(best)))
            best = known.lot;
    return best;
}

Match matchFor(const InkBook& ink, const ColourModel& model, MatchWanted wanted) {
    Match match;
    match.wanted = std::move(wanted);
    const MatchWanted& asked = match.wanted;
    match.target = targetOver(model, asked.aim, asked.paper,
                              (asked.film.least_gm2 + asked.film.greatest_gm2) / 2);
    findColours(ink, model, match);
    const MatchQuestion question{
        model.inks,        match.target,     match.colours,        asked.base,
        asked.held,        asked.baseShare,  asked.film.least_gm2, asked.film.greatest_gm2,
        asked.paper.bands, asked.mostColours};
    match.found = matchesFor(question, recipesShown);
    if (asked.recipe >= match.found.size())
        throw UsageError("--recipe is " + std::to_string(asked.recipe + 1) + ", and there are " +
                             std::to_string(match.found.size()),
                         "Give the number of one that is shown.");
    if (asked.mass_g)
        planWeighing(ink, match);
    for (std::size_t i = 0; i < match.found.size(); ++i) {
        match.spreads.push_back(spreadFor(ink, model, match, i));
        match.cost.push_back(costOf100g(ink, match.found[i].shares));
    }
    return match;
}

}  // namespace rackbook
