// Works through the events of a ledger once, in their order.
#pragma once

#include <vector>

#include "calc/Blend.h"
#include "calc/MixLedger.h"

namespace rackbook {

class LedgerRun {
public:
    // Fills the ledger, whose order is already known. Both must outlive the run.
    LedgerRun(const LedgerQuestion& question, MixLedger& ledger)
        : m_question(question), m_ledger(ledger) {}

    void run();

private:
    void layOutColumns();
    std::size_t collectConstituents(std::size_t firstOfGroup, std::vector<int>& constituents,
                                    std::vector<int>& seenFor) const;
    void collectFrom(std::size_t mix, std::vector<int>& constituents,
                     std::vector<int>& seenFor) const;
    void startMixes();
    void work(LedgerEvent event);
    void add(LedgerEvent event, const HistoryWeighing& weighing);
    void addFromMix(std::size_t mix, std::size_t from, const Estimate& weight);
    void addFromLot(std::size_t mix, int lot, const Estimate& weight);
    void take(LedgerEvent event, std::size_t mix, const Estimate& mass);
    void keepForPull(std::size_t pull, std::size_t mix);

    const LedgerQuestion& m_question;
    MixLedger& m_ledger;
    std::vector<MixTotal> m_totals;  // by mix
};

}  // namespace rackbook
