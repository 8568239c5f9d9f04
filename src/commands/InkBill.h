// Ink of each lot that an edition's layers took, and its cost.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "calc/UseOfPulls.h"
#include "commands/InkBook.h"

namespace rackbook {

struct BillLine {
    int lot = -1;  // -1: what was never recorded
    Estimate laid_g;
    Estimate cost;  // nothing known where the lot has no price
    bool isPriced = false;
};

// Of a layer, or of the whole edition.
struct BillPart {
    std::vector<BillLine> lines;  // the most first
    Estimate ink_g = Estimate::exactly(0);
    Estimate cost = Estimate::exactly(0);        // of what is priced
    Estimate unpriced_g = Estimate::exactly(0);  // what is not in the cost
    std::size_t pulls = 0;
    std::size_t pullsNotWeighed = 0;  // their ink is not known
    int sheets = 0;                   // spoiled ones too; a sheet counts once for each pull
};

struct LayerBill {
    std::size_t layer = 0;  // position
    BillPart part;
};

struct InkBill {
    std::vector<LayerBill> layers;  // of the edition, by ordinal
    BillPart whole;
};

// Price over net mass by lot; nothing known where either is not recorded.
std::vector<Estimate> pricesBought(const InkBook& ink);

// Price over the grams really used (calc/LotUse.h).
std::vector<Estimate> pricesUsed(const std::vector<LotUse>& uses);

// `edition` is an id.
InkBill inkBillOf(const InkBook& ink, const std::string& edition,
                  const std::vector<Estimate>& pricePerGram);

// A mean over so many sheets. Nothing known where there are none.
Estimate perSheet(const Estimate& value, int sheets);

}  // namespace rackbook
