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

struct SlabQuestion {
    CivilMinute asOf = 0;
    // Of the room, where it is given; else that of the last run of the day before, else an
    // assumption.
    std::optional<double> temperature_C;
    bool withLeftOut = false;  // those too that were past long ago (house rule heapLeftOut_days)
};

struct Slab {
    InkBook ink;
    CivilMinute asOf = 0;
    bool withLeftOut = false;
    Warmth warmth;
    std::vector<HeapLife> lives;       // by position of the mix
    std::vector<std::size_t> heaps;    // those still there, what ends first in front
    std::vector<std::string> unknown;  // ids of mixes of which nothing is recorded
};

// Reads what it needs of the book: without those that are left out it costs what is in use.
Slab slabOf(const BookFile& book, const SlabQuestion& question);

}  // namespace rackbook
