// What there is to do in a studio on a day.
#pragma once

#include <string>
#include <vector>

#include "commands/InkBook.h"

namespace rackbook {

// One thing to do.
struct TodayLine {
    std::string what;   // "EEL:1-12", "Dusk, portion b", "consignment 2026-01-10-skovlomme"
    std::string where;  // a place or a person; empty where that says nothing
    std::string why;
};

struct TodaySection {
    std::string name;     // in reports as JSON: "bringOut"
    std::string heading;  // "Bring out of the dark"
    std::vector<TodayLine> lines;
};

// Every section there is, in the order in which a morning goes, empty ones among them: prints first
// (what lies too early in the dark, what wants a look, what may be put away, what goes on hanging),
// then heaps of ink, tins, what is due back, promises. Throws StoreError.
std::vector<TodaySection> todayIn(const BookFile& book, CivilMinute asOf);

}  // namespace rackbook
