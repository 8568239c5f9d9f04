#include "commands/BlendPlan.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Text.h"
#include "calc/PercentText.h"
#include "calc/Wording.h"
#include "commands/RecordNamed.h"
#include "records/EnumText.h"

namespace rackbook {

namespace {

constexpr LotKind allKinds[] = {LotKind::base, LotKind::ink, LotKind::drier, LotKind::modifier};

const std::string& idOfMix(const InkBook& ink, int mix) {
    return ink.records.of<Mix>()[static_cast<std::size_t>(mix)].id;
}

Estimate shareIn(const InkBook& ink, const MixLedger& ledger, int mix, const SharedThing& thing) {
    const int constituent = thing.lotKind ? static_cast<int>(*thing.lotKind) : thing.lot;
    const Estimate share = ledger.shareAtEnd(static_cast<std::size_t>(mix), constituent);
    if (!share.isKnown())
        throw InputError(
            "mix " + idOfMix(ink, mix),
            "its share of " + thing.words + " is not known (" + percentWords(share) + ")",
            "Record the masses that are missing; rackbook show mix " + idOfMix(ink, mix) +
                " lists them.");
    return share;
}

// Two decimals, or all there are where two would not tell the share from the wanted one.
std::string shareText(double share, double target) {
    const auto rounded = [](double value) { return percentText(std::round(value * 1e4) / 1e4); };
    return rounded(share) == rounded(target) ? percentText(share) : rounded(share);
}

[[noreturn]] void refuseOutOfReach(const InkBook& ink, const BlendWanted& wanted,
                                   const Estimate& first, const Estimate& second) {
    throw UsageError(idOfMix(ink, wanted.first) + " holds " + shareText(first.best, wanted.target) +
                         " " + wanted.thing.words + " and " + idOfMix(ink, wanted.second) + " " +
                         shareText(second.best, wanted.target) + ", so no blend of the two holds " +
                         percentText(wanted.target),
                     first.best == second.best
                         ? "Take another mix."
                         : "Ask for a share between the two, or take another mix.");
}

void requireReachable(const InkBook& ink, const BlendWanted& wanted, const Estimate& first,
                      const Estimate& second) {
    const auto [low, high] = std::minmax(first.best, second.best);
    if (wanted.target < low || wanted.target > high)
        refuseOutOfReach(ink, wanted, first, second);
    if (wanted.into_g && wanted.target == second.best && first.best != second.best)
        throw UsageError(percentText(wanted.target) + " is the share of " +
                             idOfMix(ink, wanted.second) + " itself, which no mass of it brings " +
                             idOfMix(ink, wanted.first) + " to",
                         "Use " + idOfMix(ink, wanted.second) + " alone.");
}

Estimate blended(const Estimate& first, const Estimate& second, double secondWeight) {
    const auto between = [secondWeight](double a, double b) { return a + secondWeight * (b - a); };
    return {between(first.low, second.low), between(first.best, second.best),
            between(first.high, second.high)};
}

double shown(double mass_g, const std::optional<BalanceGiven>& balance) {
    return balance ? roundedToReadability_g(mass_g, balance->figures) : mass_g;
}

MixToBlend mixToBlend(const MixLedger& ledger, int mix, double mass_g, const Estimate& share) {
    MixToBlend made{mix, mass_g, share, ledger.atEnd(static_cast<std::size_t>(mix)).total_g, true};
    constexpr double hair = 1e-9;
    const double most_g = made.there_g.isKnown() ? made.there_g.best : made.there_g.high;
    made.holdsEnough = mass_g <= most_g * (1 + hair);
    return made;
}

void addKinds(Blend& blend, const MixLedger& byKind) {
    for (const LotKind kind : allKinds) {
        const auto share = [&](int mix) {
            return byKind.shareAtEnd(static_cast<std::size_t>(mix), static_cast<int>(kind));
        };
        const KindShares shares{kind, share(blend.first.mix), share(blend.second.mix), {}};
        if (shares.first.high <= 0 && shares.second.high <= 0)
            continue;
        blend.kinds.push_back(shares);
        blend.kinds.back().blend =
            blended(shares.first, shares.second, blend.second.mass_g / blend.total_g);
        blend.mayHoldDrier = blend.mayHoldDrier || kind == LotKind::drier;
    }
}

void requireVisible(const InkBook& ink, const MixToBlend& mix, double exact_g) {
    if (mix.mass_g > 0 || exact_g <= 0)
        return;
    throw UsageError("of " + idOfMix(ink, mix.mix) + " less is needed than the balance can show",
                     "Make more of it, or weigh on a finer balance.");
}

}  // namespace

SharedThing sharedThingNamed(const InkBook& ink, const std::string& words) {
    for (const LotKind kind : allKinds)
        if (words == textOf(kind))
            return {kind, -1, words};
    const std::string id = words.compare(0, 4, "lot:") == 0 ? words.substr(4) : words;
    const int lot = ink.records.indexOf<Lot>(id);
    if (lot >= 0)
        return {std::nullopt, lot, id};
    std::vector<std::string> ids = {"base", "ink", "drier", "modifier"};
    for (const Lot& known : ink.records.of<Lot>())
        ids.push_back(known.id);
    const std::optional<std::string> nearest = nearestName(id, ids);
    throw UsageError("--of is \"" + excerpt(words) + "\", which is no kind of tin and no lot",
                     nearest ? "Did you mean " + *nearest + "?"
                             : "Give base, ink, drier, modifier or the id of a lot; rackbook list "
                               "lot shows them.");
}

Blend blendOf(const InkBook& ink, const BlendWanted& wanted,
              const std::optional<BalanceGiven>& balance, CivilMinute asOf) {
    const MixLedger byKind(ledgerByKind(ink.history, asOf));
    const MixLedger byLot(ledgerByLot(ink.history, asOf));
    const MixLedger& ledger = wanted.thing.lotKind ? byKind : byLot;
    const Estimate first = shareIn(ink, ledger, wanted.first, wanted.thing);
    const Estimate second = shareIn(ink, ledger, wanted.second, wanted.thing);
    requireReachable(ink, wanted, first, second);
    const BlendMasses masses = wanted.make_g
                                   ? blendOfMass(*wanted.make_g, wanted.target, first, second)
                                   : blendByAdding(*wanted.into_g, wanted.target, first, second);
    Blend blend;
    blend.thing = wanted.thing;
    blend.target = wanted.target;
    // What is in the dish already is not weighed again.
    const double first_g = wanted.into_g ? masses.first_g : shown(masses.first_g, balance);
    blend.first = mixToBlend(byLot, wanted.first, first_g, first);
    blend.second = mixToBlend(byLot, wanted.second, shown(masses.second_g, balance), second);
    requireVisible(ink, blend.first, masses.first_g);
    requireVisible(ink, blend.second, masses.second_g);
    blend.total_g = blend.first.mass_g + blend.second.mass_g;
    blend.share = blended(first, second, blend.second.mass_g / blend.total_g);
    addKinds(blend, byKind);
    return blend;
}

}  // namespace rackbook
