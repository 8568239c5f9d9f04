// The reckoning of one lot for calc/LotUse.h.
#pragma once

#include <vector>

#include "calc/LotUse.h"

namespace rackbook {

class OneLotUse {
public:
    // facts must outlive it.
    OneLotUse(const LotFacts& facts, CivilMinute asOf) : m_facts(facts), m_asOf(asOf) {}

    void addTaking(const LotTaking& taking) { m_use.takings.push_back(taking); }
    void addStockTake(std::size_t position, const HistoryStockTake& take) {
        m_stockTakes.push_back({position, take});
    }
    // Leaves it empty.
    LotUse result();

private:
    struct Placed {
        std::size_t position = 0;
        HistoryStockTake take;
    };

    void sumUp();
    void reckonLeft();
    Estimate takenBetween(const HistoryStockTake* after, const HistoryStockTake* before) const;
    std::optional<TimeSpan> openedSpan() const;
    CivilMinute until() const;
    UseRate rateOver(double mostDays) const;
    Estimate presentRate() const;
    void reckonRunningOut();
    void reckonCost();

    const LotFacts& m_facts;
    CivilMinute m_asOf;
    std::vector<Placed> m_stockTakes;
    LotUse m_use;
};

}  // namespace rackbook
