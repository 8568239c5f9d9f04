// What is in every mix at every pull and at the end, from the weighings alone.
//
// A mix is a mass and the share of each constituent in it. Taking out changes the mass only; an
// addition of mass m with shares s to a mass T with shares x gives shares (T·x + m·s) / (T + m).
// An addition from another mix takes the same mass out of that mix, with its shares at that
// moment; what is added to it later changes nothing that was taken before.
//
// A mass that was not recorded lies between 0 and infinity; a mass with bounds lies between them.
// The bounds of shares are the corner values of the formula above, which is monotonous in each of
// its variables, so they hold whatever the true masses were. A mix without a single recorded
// addition holds something unrecorded.
//
// Rounding: masses are compensated sums (Neumaier 1974), wrong by no more than 2u + O(n·u²) of the
// sum of the absolute masses, u = 2⁻⁵³. A share takes on at most 4u with each blending and carries
// on no more than it had, so after n additions it is wrong by no more than 4·n·u: 5e-11 for 1e5.
#pragma once

#include <cstddef>
#include <vector>

#include "calc/Estimate.h"
#include "calc/MixOrder.h"
#include "records/History.h"

namespace rackbook {

// The rows are only referred to and must outlive the making of the ledger.
struct LedgerQuestion {
    const std::vector<HistoryWeighing>& weighings;
    const std::vector<HistoryPull>& pulls;
    std::size_t mixCount = 0;
    std::vector<int> constituentOfLot;  // by lot; -1: counts to the mass only
    CivilMinute upTo = endOfTime;       // later events are left out
};

// Every lot is a constituent of its own: its position.
LedgerQuestion ledgerByLot(const History& history, CivilMinute upTo = endOfTime);

// The constituents are the kinds of lot: the enumerators of LotKind.
LedgerQuestion ledgerByKind(const History& history, CivilMinute upTo = endOfTime);

struct MixPart {
    int constituent = -1;
    Estimate share;  // of the mass, 0 … 1
};

struct MixContents {
    Estimate total_g;
    std::vector<MixPart> parts;  // what can be in it, by constituent
    Estimate unrecorded;         // the share that came from contents that were never recorded

    bool isKnown() const;  // every share has a best value and nothing is unrecorded
};

// More was taken from a mix than was in it.
struct Overdraw {
    LedgerEvent event;
    int mix = -1;
    double least_g = 0;  // short by at least this much, however the unknown masses turn out
    double best_g = 0;   // short by this much on the best values; notKnown where there are none
};

class MixLedger {
public:
    explicit MixLedger(const LedgerQuestion& question);

    // The portion as it was when the pull began; anything at all where no portion is recorded.
    MixContents atPull(std::size_t pull) const;
    Estimate shareAtPull(std::size_t pull, int constituent) const;

    MixContents atEnd(std::size_t mix) const;
    Estimate shareAtEnd(std::size_t mix, int constituent) const;

    // In the order of events. After one, the mix counts as empty.
    const std::vector<Overdraw>& overdraws() const { return m_overdraws; }

    const MixOrder& order() const { return m_order; }

private:
    friend class LedgerRun;

    // Shares of one mix or of one kept portion, one for each column of the mix.
    struct Row {
        std::size_t mix = 0;
        const Estimate* shares = nullptr;
    };
    // Columns of a mix: the unrecorded share first, then its constituents in ascending order.
    struct Columns {
        std::size_t begin = 0;
        std::size_t count = 0;
    };
    static constexpr std::size_t notKept = static_cast<std::size_t>(-1);

    bool isKept(std::size_t pull) const { return m_keptBegin[pull] != notKept; }
    Row rowAtPull(std::size_t pull) const;
    Row rowAtEnd(std::size_t mix) const { return {mix, &m_shares[m_columnsOf[mix].begin]}; }
    Estimate shareIn(Row row, int constituent) const;
    MixContents contentsOf(Row row, const Estimate& total_g) const;

    MixOrder m_order;
    std::vector<Columns> m_columnsOf;  // by mix
    std::vector<int> m_constituents;   // by column
    std::vector<Estimate> m_shares;    // by column
    std::vector<Estimate> m_total_g;   // by mix
    std::vector<int> m_portionOfPull;
    std::vector<std::size_t> m_keptBegin;  // by pull: its rows of m_kept, the mass, then the shares
    std::vector<Estimate> m_kept;
    std::vector<Overdraw> m_overdraws;
};

}  // namespace rackbook
