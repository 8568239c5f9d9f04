// Masses, shares, money and ages as reports about ink print them, and the house rules behind them.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"
#include "calc/Estimate.h"
#include "cli/Console.h"
#include "records/HouseRules.h"

namespace rackbook {

// "8.70", "8.70 (8.20–9.10)", "8.20–9.10", "8.20 or more", "up to 9.10", "not known".
std::string estimateWords(const Estimate& value, int decimals);

// The same in grams: "8.70 g (8.20–9.10)", "8.20 g or more".
std::string gramsWords(const Estimate& mass_g, int decimals);

// A share in per cent, the same way and without the sign. Pre: 0 … 1.
std::string percentsOf(const Estimate& share, int decimals);

// "40 min", "7 h", "3 days", "5 months", "2.5 years".
std::string ageWords(double hours);

// The same for an age between two bounds: "7 h", "3 h to 2 days".
std::string ageWords(const Estimate& hours);

// "2026-03-04 09:30", "2026-03-04", "1998-01-01 to 1998-12-31", "by 1998-12-31",
// "2026-03-04 or later", "not known".
std::string momentWords(const TimeSpan& span);

// Prints the text, wrapped to the console, two spaces in.
void printIndented(Console& console, const std::string& text);

// "House rules used", each with its value, what it decides and where it comes from.
void printHouseRules(Console& console, const HouseRules& rules,
                     const std::vector<std::string>& names);

Tree treeOf(const HouseRules& rules, const std::vector<std::string>& names);

// Low, best and high; what is not known, or without bound, is null.
Tree treeOf(const Estimate& value);
// The same with five significant digits.
Tree roundedTreeOf(const Estimate& value);

// Earliest and latest; null where it is open.
Tree treeOf(const TimeSpan& span);

}  // namespace rackbook
