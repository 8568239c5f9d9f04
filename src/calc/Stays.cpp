#include "calc/Stays.h"

#include <algorithm>

namespace rackbook {

namespace {

bool comesBefore(const Stay& a, const Stay& b) {
    return a.from.earliest != b.from.earliest ? a.from.earliest < b.from.earliest
                                              : a.from.latest < b.from.latest;
}

// Lists are short and mostly in order; this keeps the order of recording among equals.
void insertInOrder(std::vector<Stay>& stays, const Stay& stay) {
    stays.push_back(stay);
    for (std::size_t i = stays.size() - 1; i > 0 && comesBefore(stays[i], stays[i - 1]); --i)
        std::swap(stays[i], stays[i - 1]);
}

void endStay(Stay& stay, const Stay* next, const HistoryMove& move, CivilMinute asOf) {
    stay.to = next ? next->from : TimeSpan{endOfTime, endOfTime};
    stay.followed = next != nullptr;
    if (!move.hasUntil || move.until.earliest > asOf)
        return;
    if (next && move.until.earliest >= next->from.latest)
        return;
    stay.followed = false;
    stay.to.earliest = std::min(stay.to.earliest, move.until.earliest);
    stay.to.latest = std::min(stay.to.latest, move.until.latest);
}

// Marks every run of overlapping moves in which one is badly known.
void markUndecided(std::vector<Stay>& stays) {
    for (std::size_t first = 0; first < stays.size();) {
        CivilMinute latest = stays[first].from.latest;
        bool badly = isBadlyKnown(stays[first].from);
        std::size_t next = first + 1;
        for (; next < stays.size() && stays[next].from.earliest <= latest; ++next) {
            latest = std::max(latest, stays[next].from.latest);
            badly = badly || isBadlyKnown(stays[next].from);
        }
        for (std::size_t i = first; i < next; ++i)
            stays[i].undecided = badly && next - first > 1;
        first = next;
    }
}

}  // namespace

void staysOf(const History& history, std::size_t impression, CivilMinute asOf,
             std::vector<Stay>& stays) {
    stays.clear();
    const std::uint32_t* last = history.movesOf.end(impression);
    for (const std::uint32_t* row = history.movesOf.begin(impression); row != last; ++row) {
        const HistoryMove& move = history.moves[*row];
        if (move.at.earliest > asOf)
            continue;
        Stay stay;
        stay.place = move.to;
        stay.move = *row;
        stay.from = move.at;
        stay.interleaved = move.interleaved;
        insertInOrder(stays, stay);
    }
    for (std::size_t i = 0; i < stays.size(); ++i) {
        const Stay* next = i + 1 < stays.size() ? &stays[i + 1] : nullptr;
        endStay(stays[i], next, history.moves[stays[i].move], asOf);
    }
    markUndecided(stays);
}

}  // namespace rackbook
