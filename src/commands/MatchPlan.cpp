#include "commands/MatchPlan.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/Error.h"
#include "base/Text.h"

namespace rackbook {

namespace {

constexpr std::size_t recipesShown = 4;

bool isAmong(const std::vector<int>& lots, int lot) {
    return std::find(lots.begin(), lots.end(), lot) != lots.end();
}

void findColours(const ColourModel& model, Match& match) {
    const std::vector<LotOnShelf>& shelf = match.wanted.shelf;
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

void requireColours(const InkBook& ink, const Match& match) {
    if (!match.colours.empty())
        return;
    std::vector<std::string> reasons;
    for (const LotNotTaken& lot : match.notTaken)
        reasons.push_back(lotAt(ink, lot.lot).id + " (" + lot.why + ")");
    throw InputError("match",
                     "no ink may be taken" + (reasons.empty() ? "" : ": not " + joined(reasons)),
                     "Make and measure drawdowns of the inks that are there, or leave fewer out.");
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
    std::vector<Addition> asked;
    for (const PlanStage& stage : match.weighing->plan().stages)
        for (const PlanPart& part : stage.parts)
            if (part.lot >= 0)
                asked.push_back({part.lot, part.mass_g});
    match.shortages = shortagesOf(match.wanted.shelf, asked);
}

bool canBeShown(const WeighingPlan& plan) {
    return std::none_of(plan.complaints.begin(), plan.complaints.end(),
                        [](const PlanComplaint& complaint) {
                            return complaint.fault == PlanFault::massShowsAsZero;
                        });
}

bool isWeighed(const Match& match) {
    return match.weighing && canBeShown(match.weighing->plan());
}

// Standard uncertainties of the shares as they are weighed.
std::vector<double> weighedUncertainties(const Match& match, const MatchFound& found) {
    std::vector<double> uncertainties;
    for (const LotShare& part : found.shares) {
        double its = 0;
        for (const PlannedShare& planned : match.weighing->plan().lots)
            if (planned.lot == part.lot)
                its = planned.uncertainty;
        uncertainties.push_back(its);
    }
    return uncertainties;
}

void layOut(const ColourModel& model, Match& match) {
    match.laidOut = match.found[match.wanted.recipe];
    if (!isWeighed(match))
        return;
    for (LotShare& part : match.laidOut.shares)
        for (const PlannedShare& planned : match.weighing->plan().lots)
            if (planned.lot == part.lot)
                part.share = planned.planned;
    match.laidOut.predicted = predictedOver(match.wanted.paper.bands, match.laidOut.shares,
                                            match.laidOut.filmWeight_gm2, model.inks);
    match.laidOut.miss = missOf(match.laidOut.predicted, match.target);
}

PredictionSpread spreadFor(const InkBook& ink, const ColourModel& model, const Match& match,
                           const MatchFound& found, bool withWeighing) {
    SpreadQuestion question{model.inks,
                            found.shares,
                            {},
                            found.filmWeight_gm2,
                            found.filmWeight_gm2 * match.wanted.film.uncertainty_share,
                            match.wanted.paper.bands};
    if (withWeighing)
        question.shareUncertainties = weighedUncertainties(match, found);
    return spreadOf(question, lotKindsOf(ink));
}

// What one should know before trusting it.
void warn(const InkBook& ink, const ColourModel& model, Match& match) {
    const ColourAim& aim = match.wanted.aim;
    match.warnings = aim.warnings;
    if (aim.paper.paper && *aim.paper.paper != match.wanted.paper.words)
        match.warnings.push_back("The colour was read over another paper (" + *aim.paper.paper +
                                 "); it is matched as it looks, paper and all.");
    const bool isFirstLayer =
        aim.layer >= 0 && ink.records.of<Layer>()[static_cast<std::size_t>(aim.layer)].ordinal == 1;
    if (aim.ofPrint && !isFirstLayer)
        match.warnings.push_back(
            "It was read on a print. If other layers lie below it there, give --paper a reading of "
            "those; else all of it is matched as one film on bare paper.");
    for (std::string& words : std::vector<std::string>{
             match.wanted.paper.warning, learntEarlyWords(ink, model, match.laidOut.shares)})
        if (!words.empty())
            match.warnings.push_back(std::move(words));
}

}  // namespace

std::vector<Addition> shortagesOf(const std::vector<LotOnShelf>& shelf,
                                  const std::vector<Addition>& asked) {
    std::map<int, double> needed_g;
    for (const Addition& one : asked)
        needed_g[one.lot] += one.mass_g;
    std::vector<Addition> shortages;
    for (const auto& [lot, its_g] : needed_g)
        if (its_g > shelf[static_cast<std::size_t>(lot)].left_g.best)
            shortages.push_back({lot, its_g});
    return shortages;
}

std::string whyNotOnShelf(const LotOnShelf& lot, CivilMinute asOf) {
    if (lot.bought && lot.bought->latest > asOf)
        return "not there yet";
    if (lot.finished && lot.finished->earliest <= asOf)
        return "finished";
    if (lot.left_g.high <= 0)
        return "used up by the book";
    return {};
}

int usualBase(const InkBook& ink, const ColourModel& model, const std::vector<LotOnShelf>& shelf,
              const std::vector<int>& without, CivilMinute asOf) {
    const auto rank = [&](int lot) {
        const double left_g = shelf[static_cast<std::size_t>(lot)].left_g.best;
        return std::make_pair(model.inks.of(lot)->source == OpticsSource::fitted,
                              std::isnan(left_g) ? 0 : left_g);
    };
    int best = -1;
    for (const LotOptics& known : model.inks.lots) {
        const bool mayBe = lotAt(ink, known.lot).lotKind == LotKind::base &&
                           known.source != OpticsSource::takenAsClear &&
                           !isAmong(without, known.lot);
        if (mayBe && whyNotOnShelf(shelf[static_cast<std::size_t>(known.lot)], asOf).empty() &&
            (best < 0 || rank(known.lot) > rank(best)))
            best = known.lot;
    }
    return best;
}

Match matchFor(const InkBook& ink, const ColourModel& model, MatchWanted wanted) {
    Match match;
    match.wanted = std::move(wanted);
    const MatchWanted& asked = match.wanted;
    match.target = targetOver(model, asked.aim, asked.paper,
                              (asked.film.least_gm2 + asked.film.greatest_gm2) / 2);
    findColours(model, match);
    requireColours(ink, match);
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
        match.spreads.push_back(spreadFor(ink, model, match, match.found[i], false));
        match.cost.push_back(costOf100g(ink, match.found[i].shares));
    }
    layOut(model, match);
    match.laidOutSpread = spreadFor(ink, model, match, match.laidOut, isWeighed(match));
    warn(ink, model, match);
    return match;
}

}  // namespace rackbook
