#include "calc/PullInk.h"

#include "calc/MixLedger.h"

namespace rackbook {

namespace {

// Above the rounding of the ledger, far below any balance.
constexpr double hair = 1e-9;

Richness richnessOf(const Estimate& extenderShare, double least) {
    if (extenderShare.low + hair >= least)
        return Richness::rich;
    return extenderShare.high + hair < least ? Richness::notRich : Richness::maybe;
}

}  // namespace

LightRule lightRuleOf(const Estimate& drierShare, double drierLeastShare) {
    if (drierShare.low + hair >= drierLeastShare)
        return LightRule::withDrier;
    return drierShare.high + hair < drierLeastShare ? LightRule::withoutDrier
                                                    : LightRule::drierNotKnown;
}

std::vector<PullInk> inkOfPulls(const History& history, const HouseRules& rules) {
    const double least = rules.value("extenderRichShare");
    const MixLedger ledger(ledgerByKind(history));
    std::vector<PullInk> inks(history.pulls.size());
    for (std::size_t pull = 0; pull < inks.size(); ++pull) {
        PullInk& ink = inks[pull];
        ink.extenderShare = ledger.shareAtPull(pull, static_cast<int>(LotKind::base));
        ink.drierShare = ledger.shareAtPull(pull, static_cast<int>(LotKind::drier));
        ink.richness = richnessOf(ink.extenderShare, least);
        const int layer = history.pulls[pull].layer;
        if (ink.richness != Richness::maybe || layer < 0)
            continue;
        const double share = history.layers[static_cast<std::size_t>(layer)].extenderShare;
        if (std::isnan(share))
            continue;
        ink.extenderShare = Estimate::exactly(share);
        ink.remembered = true;
        ink.richness = richnessOf(ink.extenderShare, least);
    }
    return inks;
}

LastRichPull lastRichPullOf(const History& history, const std::vector<PullInk>& inks,
                            std::size_t impression, CivilMinute asOf) {
    LastRichPull last;
    CivilMinute lastStart = beginningOfTime;
    const std::uint32_t* end = history.pullsOf.end(impression);
    for (const std::uint32_t* row = history.pullsOf.begin(impression); row != end; ++row) {
        const TimeSpan& start = history.pulls[*row].start;
        const Richness richness = inks[*row].richness;
        if (start.earliest > asOf || richness == Richness::notRich)
            continue;
        last.isDoubtful = last.isDoubtful || richness == Richness::maybe || isBadlyKnown(start);
        if (richness == Richness::rich && (!last.pull || start.earliest >= lastStart)) {
            last.pull = *row;
            lastStart = start.earliest;
        }
    }
    return last;
}

}  // namespace rackbook
