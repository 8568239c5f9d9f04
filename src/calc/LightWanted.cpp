#include "calc/LightWanted.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "calc/MixLedger.h"

namespace rackbook {

namespace {

constexpr double hair = 1e-9;
// More would hardly narrow a threshold, and the latest are of the inks that are in use.
constexpr std::size_t mostLooks = 100;

using LikenessKey = std::tuple<int, bool, LightRule, bool, int>;

LikenessKey keyOf(const InkLikeness& alike) {
    return {alike.baseLot, alike.byDrier, alike.drier, alike.byShare, alike.shareBand};
}

int bandOf(const Estimate& extenderShare) {
    const double share = extenderShare.isKnown() ? extenderShare.best : extenderShare.low;
    return share < 0.90 - hair ? 0 : share < 0.95 - hair ? 1 : 2;
}

// The base that makes up most of the ink; -1 where none is known of.
int baseOf(const MixContents& contents, const History& history) {
    int base = -1;
    double most = 0;
    for (const MixPart& part : contents.parts)
        if (history.lots[static_cast<std::size_t>(part.constituent)] == LotKind::base &&
            part.share.isKnown() && part.share.best > most) {
            base = part.constituent;
            most = part.share.best;
        }
    return base;
}

std::vector<InkLikeness> likenessesOf(const History& history, const std::vector<PullInk>& inks,
                                      double drierLeastShare, bool withBases) {
    std::vector<InkLikeness> all(inks.size());
    std::vector<int> bases(inks.size(), -1);
    if (withBases) {
        const MixLedger ledger(ledgerByLot(history));
        for (std::size_t pull = 0; pull < inks.size(); ++pull)
            bases[pull] = baseOf(ledger.atPull(pull), history);
    }
    for (std::size_t pull = 0; pull < inks.size(); ++pull)
        all[pull] = {bases[pull], true, lightRuleOf(inks[pull].drierShare, drierLeastShare), true,
                     bandOf(inks[pull].extenderShare)};
    return all;
}

// From the widest that is not all inks to the narrowest.
std::vector<InkLikeness> widening(const InkLikeness& full) {
    InkLikeness base;
    base.baseLot = full.baseLot;
    InkLikeness withDrier = base;
    withDrier.byDrier = true;
    withDrier.drier = full.drier;
    std::vector<InkLikeness> all;
    if (full.baseLot >= 0)
        all.push_back(base);
    if (full.drier != LightRule::drierNotKnown)
        all.push_back(withDrier);
    all.push_back(full);
    return all;
}

bool covers(const InkLikeness& group, const InkLikeness& full) {
    return (group.baseLot < 0 || group.baseLot == full.baseLot) &&
           (!group.byDrier || group.drier == full.drier) &&
           (!group.byShare || group.shareBand == full.shareBand);
}

}  // namespace

ThresholdPrior priorOf(const HouseRules& rules) {
    // Bounds that hold nine cases of ten lie 1.645 standard deviations away. Between prints the
    // default of ThresholdPrior stands: half of them within a factor of 1.4 of the median.
    constexpr double bounds_z = 1.6449;
    ThresholdPrior prior;
    prior.median_sunnyDays = rules.value("lightDose_sunnyDays");
    prior.medianSpread_log = std::log(rules.value("lightDoseFactor")) / bounds_z;
    return prior;
}

LightWanted::LightWanted(const History& history, const std::vector<PullInk>& inks,
                         const HouseRules& rules, std::vector<ReturnLook> looks)
    : m_looks(std::move(looks)) {
    const ReturnChance byRules(LightThreshold({}, ThresholdModel::logNormal, priorOf(rules)));
    const double lookChance = rules.value("lookChance");
    m_looks.erase(std::remove_if(m_looks.begin(), m_looks.end(),
                                 [&](const ReturnLook& look) {
                                     return look.observed.low_sunnyDays <= 0 &&
                                            byRules.by(look.observed.high_sunnyDays) < lookChance;
                                 }),
                  m_looks.end());
    std::stable_sort(m_looks.begin(), m_looks.end(), [&](const ReturnLook& a, const ReturnLook& b) {
        return history.pulls[a.pull].start.earliest < history.pulls[b.pull].start.earliest;
    });
    const auto enough = static_cast<std::size_t>(rules.value("looksToLearn"));
    // Groups need more looks than there must be at least.
    const bool mayPart = m_looks.size() > enough;
    m_likeness = likenessesOf(history, inks, rules.value("drierLeastShare"), mayPart);
    addGroup({}, rules);
    if (!mayPart)
        return;
    std::set<LikenessKey> seen;
    for (const ReturnLook& look : m_looks)
        for (const InkLikeness& alike : widening(m_likeness[look.pull])) {
            if (!seen.insert(keyOf(alike)).second)
                continue;
            std::size_t count = 0;
            for (const ReturnLook& other : m_looks)
                count += covers(alike, m_likeness[other.pull]) ? 1 : 0;
            if (count >= enough && count < m_looks.size())
                addGroup(alike, rules);
        }
}

void LightWanted::addGroup(const InkLikeness& alike, const HouseRules& rules) {
    std::vector<std::size_t> its;
    for (std::size_t i = 0; i < m_looks.size(); ++i)
        if (covers(alike, m_likeness[m_looks[i].pull]))
            its.push_back(i);
    const std::size_t count = its.size();
    if (count > mostLooks)
        its.erase(its.begin(), its.end() - static_cast<std::ptrdiff_t>(mostLooks));
    std::vector<ThresholdObservation> observations;
    for (const std::size_t look : its)
        observations.push_back(m_looks[look].observed);
    LightThreshold threshold(observations, ThresholdModel::logNormal, priorOf(rules));
    ReturnChance chance(threshold);
    const bool isLearnt = static_cast<double>(count) >= rules.value("looksToLearn");
    const double half_sunnyDays = threshold.quantile_sunnyDays(0.5).best;
    m_groups.push_back({alike, std::move(its), count, std::move(threshold), std::move(chance),
                        isLearnt, half_sunnyDays});
}

const LightWantedGroup& LightWanted::groupFor(const InkLikeness& full) const {
    std::size_t best = 0;
    for (std::size_t i = 1; i < m_groups.size(); ++i)
        if (covers(m_groups[i].alike, full) && m_groups[i].count < m_groups[best].count)
            best = i;
    return m_groups[best];
}

double LightWanted::chanceBy(const LightWantedGroup& group, const Estimate& dose_sunnyDays,
                             const Estimate& notYet_sunnyDays) {
    const auto by = [&](const Estimate& dose) {
        return group.isLearnt && dose.isKnown() ? group.chance.by(dose.best)
                                                : group.chance.by(dose);
    };
    const double whole = by(dose_sunnyDays);
    const double before = by(notYet_sunnyDays);
    if (std::isnan(whole) || !(before > 0))
        return whole;
    return before < 1 ? std::max(0.0, (whole - before) / (1 - before)) : 0;
}

double LightWanted::doseFor_sunnyDays(const LightWantedGroup& group, double chance,
                                      const Estimate& notYet_sunnyDays) {
    const double before = notYet_sunnyDays.isKnown() ? group.chance.by(notYet_sunnyDays.best) : 0;
    return group.chance.doseFor_sunnyDays(before + chance * (1 - before));
}

}  // namespace rackbook
