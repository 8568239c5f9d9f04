#include <set>
#include <string>
#include <vector>

#include "calc/Wording.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

constexpr double hair = 1e-9;

const Mix& mixAt(const AuditContext& context, int position) {
    return context.records().of<Mix>()[static_cast<std::size_t>(position)];
}

void addHighShare(const AuditContext& context, const Mix& mix, const Estimate& share,
                  const std::string& when, FindingList& found) {
    const RuleInForce& rule = context.rules().rule("drierMostShare");
    found.add(Severity::note, mix, "",
              percentWords(share) + " of it was drier" + when + ", more than " +
                  percentWords(Estimate::exactly(rule.value)),
              "", "Look over its weighings (" + originWords(rule) + ").");
}

}  // namespace

// In the ledger's order, so that drier which went into a parent later taints nothing before it.
Findings drierInDrierFree(const AuditContext& context) {
    FindingList found;
    const History& history = context.history();
    std::vector<char> holdsDrier(history.mixCount, 0);
    for (const LedgerEvent event : context.ledgerByKind().order().events) {
        if (event.isPull)
            continue;
        const HistoryWeighing& row = history.weighings[event.row];
        if (row.act != WeighingAct::add)
            continue;
        const bool fromLot =
            row.lot >= 0 && history.lots[static_cast<std::size_t>(row.lot)] == LotKind::drier;
        const bool fromMix = row.fromMix >= 0 && holdsDrier[static_cast<std::size_t>(row.fromMix)];
        if (!fromLot && !fromMix)
            continue;
        holdsDrier[static_cast<std::size_t>(row.mix)] = 1;
        const Mix& mix = mixAt(context, row.mix);
        if (!mix.drierFree)
            continue;
        const Weighing& weighing = context.records().of<Weighing>()[event.row];
        const std::string source = fromLot ? weighing.lot->id : weighing.fromMix->id;
        found.add(Severity::error, weighing, fromLot ? "/lot" : "/fromMix",
                  (fromLot ? "lot " + source + " is a drier, but mix " + mix.id
                           : "mix " + source + " holds drier, but mix " + mix.id) +
                      " is declared free of drier",
                  source, "Put drier into portions only, or take drierFree off the mix.");
    }
    return found.take();
}

// Once for each mix: at its first pull with too much, else as it is in the end.
Findings drierShare(const AuditContext& context) {
    FindingList found;
    const MixLedger& ledger = context.ledgerByKind();
    const double most = context.rules().value("drierMostShare");
    const int drier = static_cast<int>(LotKind::drier);
    std::set<int> pulled;
    std::set<int> noted;
    const std::vector<HistoryPull>& pulls = context.history().pulls;
    for (const LedgerEvent event : ledger.order().events) {
        if (!event.isPull)
            continue;
        const int portion = pulls[event.row].portion;
        pulled.insert(portion);
        const Estimate share = ledger.shareAtPull(event.row, drier);
        if (share.low > most + hair && noted.insert(portion).second)
            addHighShare(context, mixAt(context, portion), share,
                         " at pull " + context.records().of<Pull>()[event.row].id, found);
    }
    for (int mix = 0; mix < static_cast<int>(context.history().mixCount); ++mix) {
        const Estimate share = ledger.shareAtEnd(static_cast<std::size_t>(mix), drier);
        if (pulled.count(mix) == 0 && share.low > most + hair &&
            mixAt(context, mix).purpose == MixPurpose::portion)
            addHighShare(context, mixAt(context, mix), share, "", found);
    }
    return found.take();
}

}  // namespace rackbook::rules
