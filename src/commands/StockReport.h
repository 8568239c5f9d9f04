// What is left of lots, as text and as JSON.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"
#include "cli/Console.h"
#include "commands/InkBook.h"

namespace rackbook {

// Refers to the book, which must outlive it.
struct StockFacts {
    const InkBook& ink;
    CivilMinute asOf = 0;
    std::vector<LotUse> uses;       // by position of the lot
    std::vector<std::size_t> lots;  // those to report
};

// Both rules of how long an opened lot keeps.
const std::vector<std::string>& rulesOfStock();

// Opened so long ago that its life is over, for certain or by one reading of the dates.
bool isOld(const LotUse& use, CivilMinute asOf);

// Less than a month of use is left.
bool isNearlyOut(const LotUse& use, CivilMinute asOf);

// Neither a net mass nor a stock-take says what was ever in it.
bool lacksMass(const Lot& lot, const LotUse& use);

// Tables of what is left and how it keeps, then what to see to, then the house rules.
void printStock(Console& console, const StockFacts& facts);

// What to see to about these lots, and the house rules.
void printToSeeTo(Console& console, const StockFacts& facts);

// "2025-11-19, 4 months"; "not recorded".
std::string openedWords(const Lot& lot, CivilMinute asOf);

Tree treeOf(const StockFacts& facts);

}  // namespace rackbook
