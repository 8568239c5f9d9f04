// Where an impression was over time, from its moves.
#pragma once

#include <cstdint>
#include <vector>

#include "records/History.h"

namespace rackbook {

// From one move until the next, or until it is said to have left.
struct Stay {
    int place = -1;  // -1: the place is not in the book
    std::uint32_t move = 0;
    TimeSpan from;
    TimeSpan to;               // endOfTime where it has not ended
    bool interleaved = false;  // no light reaches the face
    bool followed = false;     // the next stay begins where this one ends, with no gap
    // Badly known dates leave open whether it came before or after a neighbour: it may have been
    // there or at the neighbour's place.
    bool undecided = false;
};

// Replaces what is in `stays`. Moves after asOf are left out. Stays are in the order of their
// moves: by earliest time, then latest, then recording; where moves of overlapping times are all
// known to the day, that order is taken as it is. Where `until` and the next move both end a stay,
// the earlier one does.
void staysOf(const History& history, std::size_t impression, CivilMinute asOf,
             std::vector<Stay>& stays);

}  // namespace rackbook
