// The order in which the weighings and pulls of a book are worked through, and how its mixes hang
// together.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "records/History.h"

namespace rackbook {

struct LedgerEvent {
    std::uint32_t row = 0;  // of the pulls, or else of the weighings
    bool isPull = false;
};

// Events are ordered by time, then sequence, then additions before what only takes, then additions
// into shallower mixes first, then position. An event's time is its earliest; but where a badly
// known one takes from a mix, it comes after the additions to that mix that fall within its span,
// because nothing is taken before it is there. A pull comes after every weighing of its time.
struct MixOrder {
    std::vector<LedgerEvent> events;
    // Additions into mix i: rows additions[additionsBegin[i]] … before additionsBegin[i + 1].
    std::vector<std::size_t> additionsBegin;
    std::vector<std::size_t> additions;
    std::vector<int> parentsFirst;         // every mix, after all those that it takes from
    std::vector<int> group;                // by mix: mixes of one cycle share a number
    std::vector<int> depth;                // by mix: the longest way from lots through other mixes
    std::vector<std::vector<int>> cycles;  // mixes that take from one another in a ring, ascending
};

// Events later than upTo are left out. Pre: every position lies within its table.
MixOrder mixOrder(const std::vector<HistoryWeighing>& weighings,
                  const std::vector<HistoryPull>& pulls, std::size_t mixCount,
                  CivilMinute upTo = endOfTime);

}  // namespace rackbook
