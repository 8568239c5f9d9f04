// How fast a lot is used, what is left of it, how long that lasts and what a gram of it costs.
//
// Masses are g, times minutes on the studio's wall clock, prices in the book's currency. A month is
// 30.44 days, the mean of the Gregorian calendar (365.2425 / 12). Where nothing is known, estimates
// have no best value and single figures are notKnown.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "calc/Estimate.h"
#include "records/EnumText.h"
#include "records/History.h"

namespace rackbook {

constexpr double daysPerMonth = 30.44;

// What the tin held when it was put on the balance, net.
struct HistoryStockTake {
    int lot = -1;
    TimeSpan at;
    double mass_g = 0;
};

// What is recorded of a lot, by its position.
struct LotFacts {
    double netMass_g = notKnown;
    double price = notKnown;
    std::optional<TimeSpan> opened;
    std::optional<TimeSpan> finished;
    double openedLife_days = notKnown;  // how long it keeps once opened, above 0; no limit else
};

// What one weighing took out of a lot, with the bounds of a badly known mass.
struct LotTaking {
    std::size_t weighing = 0;
    TimeSpan at;
    Estimate mass_g;
};

struct StockDifference {
    std::size_t stockTake = 0;  // position
    Estimate expected_g;        // left by the records, may fall below 0
    Estimate difference_g;      // found − expected: below 0 where more went than was recorded
};

struct UseRate {
    Estimate perMonth_g;
    std::size_t weighings = 0;
    double days = notKnown;  // the span looked at, its best reading
};

enum class BeforeLifeEnds { yes, no, cannotTell };
template <>
struct EnumText<BeforeLifeEnds> {
    static constexpr const char* names[] = {"yes", "no", "cannotTell"};
};

struct LotUse {
    std::vector<LotTaking> takings;  // in the order of recording
    Estimate used_g;                 // all of it
    // Net mass less what was used; after a stock-take, its mass less what was taken since. Where it
    // is not known whether a weighing came before a stock-take, the best value holds that it did.
    Estimate left_g;
    std::vector<StockDifference> differences;  // in the order of time
    // Both from when the lot was opened at the earliest (else from its first weighing), to its end.
    UseRate lastYear;  // 12 months
    UseRate sinceOpened;
    // When the rest is used up: the earliest by the faster rate, the latest by the slower one.
    // Nothing where the lot is finished, or no rate or no upper bound of the rest is known.
    std::optional<TimeSpan> runsOut;
    std::optional<TimeSpan> lifeEnds;  // of the opened lot
    BeforeLifeEnds runsOutBeforeLifeEnds = BeforeLifeEnds::cannotTell;
    // Price over grams used of a finished lot. Of an open one, over the grams that will have been
    // used when its opened life ends, at the present rate: projected.
    Estimate costPerGram;
    bool costIsProjected = false;
};

struct LotUseQuestion {
    const History& history;
    const std::vector<LotFacts>& lots;  // one for each of the history's lots
    const std::vector<HistoryStockTake>& stockTakes;
    CivilMinute asOf = 0;  // later events are left out
};

// By position of the lot. Throws InputError where a stock-take names no lot or its mass is not a
// number of 0 or more, or an opened life is not above 0.
std::vector<LotUse> useOfLots(const LotUseQuestion& question);

// What was weighed out of each lot until then, by position of the lot.
std::vector<Estimate> takenOutOfLots(const History& history, CivilMinute asOf);

// One container as offered.
struct LotOffer {
    double price = notKnown;
    double netMass_g = notKnown;
    double openedLife_days = notKnown;
};

struct OfferCost {
    double used_g = notKnown;       // of one container, before it is past
    double costPerGram = notKnown;  // price over the grams used
    double wasted_g = notKnown;
};

// What a gram used costs when one container is used at this rate until it is empty or past. A life
// that is not known sets no limit. Throws InputError for a use that is not above 0, a price below
// 0, a net mass or a life that is not above 0; what is not known is left so.
OfferCost costOfOffer(const LotOffer& offer, double perMonth_g);

}  // namespace rackbook
