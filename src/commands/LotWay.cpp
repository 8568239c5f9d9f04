#include "commands/LotWay.h"

#include <algorithm>
#include <set>

#include "calc/Stays.h"

namespace rackbook {

namespace {

bool isAddition(const HistoryWeighing& weighing) {
    return weighing.mix >= 0 && weighing.act == WeighingAct::add;
}

// Mixes that the lot was weighed into, and those that took from them at any time.
std::vector<bool> mixesReached(const History& history, int lot) {
    std::vector<bool> reached(history.mixCount, false);
    for (bool grows = true; grows;) {
        grows = false;
        for (const HistoryWeighing& weighing : history.weighings) {
            if (!isAddition(weighing) || reached[static_cast<std::size_t>(weighing.mix)])
                continue;
            const bool fromReached =
                weighing.fromMix >= 0 && reached[static_cast<std::size_t>(weighing.fromMix)];
            if (weighing.lot == lot || fromReached) {
                reached[static_cast<std::size_t>(weighing.mix)] = true;
                grows = true;
            }
        }
    }
    return reached;
}

// A probe is a pull that uses nothing: the ledger keeps what a mix holds at a pull, so one behind
// each addition tells what was in the mix right after it.
class MixProbe {
public:
    MixProbe(const InkBook& ink, int lot) : m_ink(ink), m_lot(lot), m_history(ink.history) {
        const std::vector<bool> reached = mixesReached(m_history, lot);
        m_firstProbe = m_history.pulls.size();
        for (const HistoryWeighing& weighing : m_history.weighings) {
            if (!isAddition(weighing) || !reached[static_cast<std::size_t>(weighing.mix)])
                continue;
            m_history.pulls.push_back({-1, weighing.mix, weighing.at, 0});
            m_cause.push_back(&weighing);
        }
    }

    std::vector<MixOnWay> result() const {
        const MixLedger ledger(ledgerByLot(m_history));
        std::vector<MixOnWay> found;
        std::vector<int> place(m_history.mixCount, -1);
        for (std::size_t i = 0; i < m_cause.size(); ++i) {
            const std::size_t probe = m_firstProbe + i;
            const auto mix = static_cast<std::size_t>(m_cause[i]->mix);
            const Estimate share = ledger.shareAtPull(probe, m_lot);
            if (share.high <= 0)
                continue;
            if (place[mix] < 0) {
                place[mix] = static_cast<int>(found.size());
                found.push_back(
                    {mix, holdingOf(ledger, probe, m_lot), share, {}, ledger.atEnd(mix).total_g});
            }
            MixOnWay& one = found[static_cast<std::size_t>(place[mix])];
            keepGreatest(one, holdingOf(ledger, probe, m_lot), share);
        }
        for (MixOnWay& one : found) {
            one.from = sourcesOf(one.mix, place);
            const Estimate now = ledger.shareAtEnd(one.mix, m_lot);
            if (now.high > 0)
                one.share = now;
        }
        return found;
    }

private:
    static void keepGreatest(MixOnWay& one, Holding holding, const Estimate& share) {
        const bool surer = holding < one.holding;
        if (surer || (holding == one.holding && share.high > one.share.high)) {
            one.holding = holding;
            one.share = share;
        }
    }

    std::vector<std::string> sourcesOf(std::size_t mix, const std::vector<int>& place) const {
        std::set<std::string> mixes;
        bool direct = false;
        for (const HistoryWeighing* weighing : m_cause) {
            if (static_cast<std::size_t>(weighing->mix) != mix)
                continue;
            direct = direct || weighing->lot == m_lot;
            if (weighing->fromMix >= 0 && place[static_cast<std::size_t>(weighing->fromMix)] >= 0)
                mixes.insert(
                    m_ink.records.of<Mix>()[static_cast<std::size_t>(weighing->fromMix)].id);
        }
        std::vector<std::string> sources(mixes.begin(), mixes.end());
        if (direct)
            sources.insert(sources.begin(), "the lot");
        return sources;
    }

    const InkBook& m_ink;
    int m_lot;
    History m_history;
    std::size_t m_firstProbe = 0;
    std::vector<const HistoryWeighing*> m_cause;  // by probe; into m_history
};

std::optional<CivilMinute> beginningOf(const Lot& lot) {
    const std::optional<EdtfDate>& date = lot.openedOn ? lot.openedOn : lot.boughtOn;
    if (!date || date->earliest() <= beginningOfTime)
        return std::nullopt;
    return date->earliest();
}

// Takes pulls that began before the lot was there, and that nothing but unrecorded ink speaks for,
// out of the history's impressions. How many there are.
std::size_t leaveOut(History& history, const MixLedger& ledger, int lot, CivilMinute notBefore) {
    std::vector<bool> isOut(history.pulls.size(), false);
    std::size_t count = 0;
    for (std::size_t pull = 0; pull < history.pulls.size(); ++pull) {
        isOut[pull] = history.pulls[pull].start.latest < notBefore &&
                      ledger.shareAtPull(pull, lot).high > 0 &&
                      holdingOf(ledger, pull, lot) == Holding::cannotRuleOut;
        count += isOut[pull] ? 1 : 0;
    }
    RowLists kept;
    kept.offsets.push_back(0);
    for (std::size_t i = 0; i < history.impressions.size(); ++i) {
        for (const std::uint32_t* row = history.pullsOf.begin(i); row != history.pullsOf.end(i);
             ++row)
            if (!isOut[*row])
                kept.items.push_back(*row);
        kept.offsets.push_back(static_cast<std::uint32_t>(kept.items.size()));
    }
    history.pullsOf = std::move(kept);
    return count;
}

const Impression& impressionAt(const InkBook& ink, std::size_t row) {
    return ink.records.of<Impression>()[static_cast<std::size_t>(ink.history.impressions[row].key)];
}

void findWhere(const InkBook& ink, CivilMinute asOf, ImpressionOnWay& one) {
    std::vector<Stay> stays;
    staysOf(ink.history, one.traced.impression, asOf, stays);
    const Place* place = nullptr;
    if (!stays.empty() && stays.back().place >= 0 && stays.back().to.latest > asOf)
        place = &ink.records.of<Place>()[static_cast<std::size_t>(stays.back().place)];
    const Impression& impression = impressionAt(ink, one.traced.impression);
    const Party* holder = ink.records.find<Party>(impression.holder);
    if (holder == nullptr && place != nullptr)
        holder = ink.records.find<Party>(place->holder);
    one.isAway = holder != nullptr;
    if (place != nullptr)
        one.where = place->name;
    // Many places are named for whoever holds them.
    if (holder != nullptr && one.where.find(holder->name) == std::string::npos)
        one.where = holder->name + (one.where.empty() ? "" : ": ") + one.where;
    if (one.where.empty())
        one.where = "not known";
}

}  // namespace

LotWay wayOfLot(const InkBook& ink, int lot, CivilMinute asOf) {
    LotWay way;
    way.mixes = MixProbe(ink, lot).result();
    const MixLedger ledger(ledgerByLot(ink.history));
    way.notBefore = beginningOf(ink.records.of<Lot>()[static_cast<std::size_t>(lot)]);
    History history = ink.history;
    if (way.notBefore)
        way.pullsLeftOut = leaveOut(history, ledger, lot, *way.notBefore);
    const LotTrace trace = traceOfLot(history, ledger, lot);
    for (const TracedPull& pull : trace.pulls) {
        const bool isEarlier =
            way.notBefore && history.pulls[pull.pull].start.latest < *way.notBefore;
        if (!isEarlier || pull.holding != Holding::cannotRuleOut)
            way.pulls.push_back(pull);
    }
    for (const TracedImpression& impression : trace.impressions) {
        ImpressionOnWay one{impression, {}, false};
        findWhere(ink, asOf, one);
        way.impressions.push_back(std::move(one));
    }
    return way;
}

}  // namespace rackbook
