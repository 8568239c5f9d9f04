// Heaps of ink that are still there, and how long they live.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/HeapLife.h"
#include "commands/InkBook.h"

namespace rackbook {

struct Warmth {
    double temperature_C = 20;
    std::string origin;  // behind "20 °C, "
};

struct Slab {
    const InkBook& ink;
    CivilMinute asOf = 0;
    Warmth warmth;
    std::vector<HeapLife> lives;       // by position of the mix
    std::vector<std::size_t> heaps;    // those still there, what ends first in front
    std::vector<std::string> unknown;  // ids of mixes of which nothing is recorded
};

// As of that minute. `temperature_C`: of the room, where it is given; else that of the last
// run of the day before, else an assumption.
Slab slabOf(const InkBook& ink, CivilMinute asOf, const std::optional<double>& temperature_C = {});

}  // namespace rackbook
