// Figures as sentences print them.
#pragma once

#include <string>

#include "calc/Estimate.h"
#include "records/History.h"
#include "records/HouseRules.h"

namespace rackbook {

// "on 2026-03-04", "between 1998-01-01 and 1998-12-31", "by 1998-12-31", "after 1998-01-01",
// "at an unknown time".
std::string dayWords(const TimeSpan& span);

// "97 %", "95.5–98 %"; one decimal at most.
std::string percentWords(const Estimate& share);

// "9 days", "1 day", "9 to 12 days": whole days, rounded down. One figure where the bounds are no
// more than a day apart.
std::string daysWords(double low, double high);
// Its figures alone, for a column: "9", "9–12", "9 or more".
std::string daysFigures(double low, double high);

// A figure with two digits that count, and with how many decimals it is written.
struct RoughFigure {
    double value = 0;
    int decimals = 0;  // 0 … 4
};
RoughFigure roughFigure(double value);

// Two digits that count: "0.043", "1.2", "12", "120"; "0" below what four decimals show.
std::string roughly(double value);
// "21 (1.1–250)", "21 or more" where the high bound is open; without a best value "1.1–250". "less
// than 0.001" where all of it is, and not nothing.
std::string roughly(const Estimate& value);

// Where a rule comes from: "studio rule", "common practice, no source".
std::string originWords(const RuleInForce& rule);

}  // namespace rackbook
