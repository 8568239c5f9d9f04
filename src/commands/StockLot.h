// One lot in detail: its takings, its stock-takes, and what other containers would cost.
#pragma once

#include <string>
#include <vector>

#include "calc/LotUse.h"
#include "commands/StockReport.h"

namespace rackbook {

struct NamedOffer {
    std::string words;  // as given
    LotOffer offer;
};

// PRICE:MASS or PRICE:MASS:DAYS each. Throws UsageError.
std::vector<NamedOffer> offersFrom(const std::vector<std::string>& words);

// Pre: facts.lots has one entry.
void printLot(Console& console, const StockFacts& facts, const std::vector<NamedOffer>& offers);

// To add to a report: "takings" and, where there are any, "offers".
void addLotDetails(Tree& report, const StockFacts& facts, const std::vector<NamedOffer>& offers);

}  // namespace rackbook
