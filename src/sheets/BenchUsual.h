// What the boxes of a bench sheet can be expected to hold.
#pragma once

#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "records/RecordSet.h"

namespace rackbook {

// As with the last run of the edition; empty where nothing is known.
struct BenchUsual {
    std::string press;
    std::string packing;
    std::string printer;
    std::string baseLot;
    std::string drierLot;
    std::string hungAt;
};

// What a box offers to choose from, by the names of NamesInBoxes.h, sorted.
struct BenchChoices {
    std::vector<std::string> printers;
    std::vector<std::string> baseLots;   // not finished
    std::vector<std::string> drierLots;  // not finished
    std::vector<std::string> portions;   // of the edition, not finished
    std::vector<std::string> places;     // the studio's own, to hang something at
};

// Both leave out what happened after asOf.
BenchUsual benchUsualOf(const RecordSet& records, const std::string& edition, CivilMinute asOf);
BenchChoices benchChoicesOf(const RecordSet& records, const std::string& edition, CivilMinute asOf);

}  // namespace rackbook
