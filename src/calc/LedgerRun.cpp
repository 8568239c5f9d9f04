#include "calc/LedgerRun.h"

#include <algorithm>

#include "calc/EventMass.h"

namespace rackbook {

namespace {

// A shortage below this is rounding; balances read to 0.01 g at best.
constexpr double noShortage_g = 1e-7;
constexpr int unrecorded = -1;

}  // namespace

void LedgerRun::run() {
    layOutColumns();
    startMixes();
    m_ledger.m_keptBegin.assign(m_question.pulls.size(), MixLedger::notKept);
    m_ledger.m_portionOfPull.reserve(m_question.pulls.size());
    for (const HistoryPull& pull : m_question.pulls)
        m_ledger.m_portionOfPull.push_back(pull.portion);
    for (const LedgerEvent event : m_ledger.m_order.events)
        work(event);
    m_ledger.m_total_g.reserve(m_totals.size());
    for (const MixTotal& total : m_totals)
        m_ledger.m_total_g.push_back(total.value());
}

// Mixes of one ring can hold what any of them holds; else a mix holds what its parents hold.
void LedgerRun::layOutColumns() {
    const MixOrder& order = m_ledger.m_order;
    int most = -1;
    for (const int constituent : m_question.constituentOfLot)
        most = std::max(most, constituent);
    std::vector<int> seenFor(static_cast<std::size_t>(most + 1), 0);
    std::vector<int> constituents;
    m_ledger.m_columnsOf.resize(m_question.mixCount);
    for (std::size_t first = 0; first < order.parentsFirst.size();) {
        constituents.assign(1, unrecorded);
        const std::size_t last = collectConstituents(first, constituents, seenFor);
        std::sort(constituents.begin(), constituents.end());
        for (; first < last; ++first) {
            const auto mix = static_cast<std::size_t>(order.parentsFirst[first]);
            m_ledger.m_columnsOf[mix] = {m_ledger.m_constituents.size(), constituents.size()};
            m_ledger.m_constituents.insert(m_ledger.m_constituents.end(), constituents.begin(),
                                           constituents.end());
        }
    }
}

std::size_t LedgerRun::collectConstituents(std::size_t firstOfGroup, std::vector<int>& constituents,
                                           std::vector<int>& seenFor) const {
    const MixOrder& order = m_ledger.m_order;
    const auto groupAt = [&](std::size_t i) {
        return order.group[static_cast<std::size_t>(order.parentsFirst[i])];
    };
    std::size_t i = firstOfGroup;
    for (; i < order.parentsFirst.size() && groupAt(i) == groupAt(firstOfGroup); ++i)
        collectFrom(static_cast<std::size_t>(order.parentsFirst[i]), constituents, seenFor);
    return i;
}

void LedgerRun::collectFrom(std::size_t mix, std::vector<int>& constituents,
                            std::vector<int>& seenFor) const {
    const MixOrder& order = m_ledger.m_order;
    const auto note = [&](int constituent) {
        if (constituent < 0 || seenFor[static_cast<std::size_t>(constituent)] == order.group[mix])
            return;
        seenFor[static_cast<std::size_t>(constituent)] = order.group[mix];
        constituents.push_back(constituent);
    };
    for (std::size_t i = order.additionsBegin[mix]; i < order.additionsBegin[mix + 1]; ++i) {
        const HistoryWeighing& weighing = m_question.weighings[order.additions[i]];
        if (weighing.fromMix >= 0) {
            const auto parent = m_ledger.m_columnsOf[static_cast<std::size_t>(weighing.fromMix)];
            for (std::size_t c = 0; c < parent.count; ++c)
                note(m_ledger.m_constituents[parent.begin + c]);
        } else if (weighing.lot >= 0) {
            note(m_question.constituentOfLot[static_cast<std::size_t>(weighing.lot)]);
        }
    }
}

void LedgerRun::startMixes() {
    const MixOrder& order = m_ledger.m_order;
    m_ledger.m_shares.assign(m_ledger.m_constituents.size(), Estimate::exactly(0));
    m_totals.reserve(m_question.mixCount);
    for (std::size_t mix = 0; mix < m_question.mixCount; ++mix) {
        const bool recorded = order.additionsBegin[mix] < order.additionsBegin[mix + 1];
        m_totals.emplace_back(recorded ? Estimate::exactly(0) : Estimate::anyMass());
        m_ledger.m_shares[m_ledger.m_columnsOf[mix].begin] = Estimate::exactly(1);
    }
}

void LedgerRun::work(LedgerEvent event) {
    if (event.isPull) {
        const HistoryPull& pull = m_question.pulls[event.row];
        const auto portion = static_cast<std::size_t>(pull.portion);
        keepForPull(event.row, portion);
        take(event, portion, massOf(pull));
        return;
    }
    const HistoryWeighing& weighing = m_question.weighings[event.row];
    if (weighing.act == WeighingAct::add)
        add(event, weighing);
    else
        take(event, static_cast<std::size_t>(weighing.mix), massOf(weighing));
}

void LedgerRun::add(LedgerEvent event, const HistoryWeighing& weighing) {
    const auto mix = static_cast<std::size_t>(weighing.mix);
    Estimate mass = massOf(weighing);
    if (weighing.fromMix >= 0) {
        const auto from = static_cast<std::size_t>(weighing.fromMix);
        if (std::isinf(mass.high))
            mass.high = std::max(mass.low, m_totals[from].value().high);
        take(event, from, mass);
        addFromMix(mix, from, weightOf(mass, m_totals[mix].value()));
    } else {
        addFromLot(mix, weighing.lot, weightOf(mass, m_totals[mix].value()));
    }
    m_totals[mix].add(mass);
}

// The parent's constituents are all among the mix's, in the same ascending order.
void LedgerRun::addFromMix(std::size_t mix, std::size_t from, const Estimate& weight) {
    const MixLedger::Columns own = m_ledger.m_columnsOf[mix];
    const MixLedger::Columns parents = m_ledger.m_columnsOf[from];
    std::size_t p = 0;
    for (std::size_t c = 0; c < own.count; ++c) {
        const bool shared = p < parents.count && m_ledger.m_constituents[parents.begin + p] ==
                                                     m_ledger.m_constituents[own.begin + c];
        const Estimate added = shared ? m_ledger.m_shares[parents.begin + p] : Estimate::exactly(0);
        p += shared ? 1 : 0;
        Estimate& share = m_ledger.m_shares[own.begin + c];
        share = blend(share, added, weight);
    }
}

void LedgerRun::addFromLot(std::size_t mix, int lot, const Estimate& weight) {
    const MixLedger::Columns own = m_ledger.m_columnsOf[mix];
    const Estimate none = Estimate::exactly(0);
    const Estimate whole = Estimate::exactly(1);
    for (std::size_t c = 0; c < own.count; ++c) {
        const int constituent = m_ledger.m_constituents[own.begin + c];
        const bool isIt =
            lot < 0 ? constituent == unrecorded
                    : constituent != unrecorded &&
                          constituent == m_question.constituentOfLot[static_cast<std::size_t>(lot)];
        Estimate& share = m_ledger.m_shares[own.begin + c];
        share = blend(share, isIt ? whole : none, weight);
    }
}

void LedgerRun::take(LedgerEvent event, std::size_t mix, const Estimate& mass) {
    const Estimate there = m_totals[mix].value();
    const double least_g = std::isinf(there.high) ? 0 : std::max(0.0, mass.low - there.high);
    const double best_g = mass.best - there.best;
    if (least_g > noShortage_g || best_g > noShortage_g)
        m_ledger.m_overdraws.push_back({event, static_cast<int>(mix), least_g,
                                        std::isnan(best_g) ? notKnown : std::max(0.0, best_g)});
    m_totals[mix].take(mass);
}

void LedgerRun::keepForPull(std::size_t pull, std::size_t mix) {
    const MixLedger::Columns columns = m_ledger.m_columnsOf[mix];
    m_ledger.m_keptBegin[pull] = m_ledger.m_kept.size();
    m_ledger.m_kept.push_back(m_totals[mix].value());
    for (std::size_t c = 0; c < columns.count; ++c)
        m_ledger.m_kept.push_back(m_ledger.m_shares[columns.begin + c]);
}

}  // namespace rackbook
