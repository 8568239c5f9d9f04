// How the readings of prints near their final colour in light.
#pragma once

#include <string>
#include <vector>

#include "calc/ColourDecay.h"
#include "calc/DoseLedger.h"
#include "calc/PullInk.h"
#include "records/HouseRules.h"
#include "records/Reading.h"
#include "store/HistoryQuery.h"

namespace rackbook {

struct ReadingDecay {
    std::size_t impression = 0;  // of the history
    std::string finalReading;    // id of the last one, which stands for the final colour
    std::vector<DecayPoint> points;
    ColourDecay decay;
};

// For every impression with at least two readings of known days after its last certainly
// extender-rich pull up to asOf, whose doses have best values. Readings under other conditions than
// the last are left aside. What is wanted is the house rule colourTolerance_dE00. Under D50 and the
// 2° observer. Impressions go by their ids in `labels`.
std::vector<ReadingDecay> readingDecaysOf(const History& history,
                                          const std::vector<ImpressionLabel>& labels,
                                          const std::vector<PullInk>& inks,
                                          const std::vector<Reading>& readings,
                                          const HouseRules& rules, DoseLedger& ledger,
                                          CivilMinute asOf);

}  // namespace rackbook
