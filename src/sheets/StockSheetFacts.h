// What the sheet of the ink stock says of each lot.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "calc/Estimate.h"
#include "records/HouseRules.h"
#include "records/Lot.h"

namespace rackbook {

struct StockCount {
    EdtfDate at = EdtfDate::ofMinute(0);
    double mass_g = 0;
};

struct StockLine {
    Lot lot;
    double usualLife_days = notKnown;  // once opened, by house rule
    Estimate left_g;
    Estimate used_g;
    std::optional<StockCount> counted;  // the latest stock-take
    bool isOld = false;                 // open longer than that, for certain or by one reading
    bool isRunningLow = false;          // less than a month of use is left
    bool lacksMass = false;             // nothing says what was ever in it
    std::string place;                  // in the studio; empty where none is recorded
    bool isAway = false;                // its place is not the studio's, and is not named
};

struct StockSheetFacts {
    CivilMinute asOf = 0;
    std::string studio;
    std::vector<StockLine> open;
    std::vector<StockLine> finished;
    std::vector<RuleInForce> rules;  // how long opened lots usually keep
};

}  // namespace rackbook
