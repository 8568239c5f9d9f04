// What each pull laid down of each lot, what that cost, and which pulls and impressions hold a lot.
//
// The grams of a lot in a pull are the ink that the pull used times the lot's share of the portion
// when the pull began (calc/MixLedger.h). Ink that stays on the roller and slab counts as used.
#pragma once

#include <cstddef>
#include <vector>

#include "calc/Estimate.h"
#include "calc/MixLedger.h"
#include "records/History.h"

namespace rackbook {

struct LotInPull {
    int lot = -1;
    Estimate share;       // of the ink
    Estimate laid_g;      // ink used × share
    Estimate perSheet_g;  // over the number of sheets; nothing known where there are none
    double cost = notKnown;
};

struct InkCost {
    double known = 0;                 // cost of what has both a mass and a price
    Estimate unpriced_g;              // the mass that is not in it
    double unpricedShare = notKnown;  // of the ink, best value
};

struct UseOfPull {
    std::vector<LotInPull> lots;  // whose share can be above 0, by lot
    Estimate ink_g;
    Estimate unrecordedShare;  // from contents that were never recorded: any lots at all
    InkCost cost;
};

struct LotInLayer {
    int lot = -1;
    Estimate laid_g;
};

struct UseOfLayer {
    std::vector<LotInLayer> lots;  // by lot
    Estimate ink_g;
    std::size_t pulls = 0;
    InkCost cost;
};

struct UseQuestion {
    const History& history;
    const MixLedger& ledger;                  // ledgerByLot of that history
    const std::vector<int>& sheetsOfPull;     // every sheet printed, spoils among them
    const std::vector<double>& pricePerGram;  // by lot; notKnown where it is not
};

struct UseOfPulls {
    std::vector<UseOfPull> pulls;    // by position
    std::vector<UseOfLayer> layers;  // by position; pulls of no known layer are in none
};

// Linear in the constituents of all portions. Throws std::invalid_argument where a list has not an
// entry for each pull or lot.
UseOfPulls useOfPulls(const UseQuestion& question);

// How many of the history's impressions each pull is on. Complete only where the history holds
// every impression.
std::vector<int> sheetsOfPulls(const History& history);

enum class Holding {
    holds,         // whatever the unknown masses are
    mayHold,       // the lot was weighed in, but masses are missing
    cannotRuleOut  // part of the ink was never recorded
};

// Of a lot in the portion of a pull. Pre: its share there can be above 0; the ledger is by lot.
Holding holdingOf(const MixLedger& ledger, std::size_t pull, int lot);

struct TracedPull {
    std::size_t pull = 0;
    Holding holding = Holding::holds;
    Estimate share;
};

struct TracedImpression {
    std::size_t impression = 0;        // position among the history's impressions
    Holding holding = Holding::holds;  // the surest of its pulls
    Estimate share;                    // in that pull's ink, the greatest of them
};

struct LotTrace {
    std::vector<TracedPull> pulls;
    std::vector<TracedImpression> impressions;
};

// Every pull and impression whose ink can hold the lot. Same ledger as above.
LotTrace traceOfLot(const History& history, const MixLedger& ledger, int lot);

}  // namespace rackbook
