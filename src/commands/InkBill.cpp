#include "commands/InkBill.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "calc/EstimateMath.h"

namespace rackbook {

namespace {

constexpr int notRecorded = -1;

bool isPriced(const Estimate& price) {
    return price.low > 0 || !std::isinf(price.high);
}

BillLine& lineOf(BillPart& part, int lot) {
    for (BillLine& line : part.lines)
        if (line.lot == lot)
            return line;
    part.lines.push_back({lot, Estimate::exactly(0), Estimate::exactly(0), false});
    return part.lines.back();
}

void add(BillPart& part, int lot, const Estimate& laid_g, const Estimate& price) {
    BillLine& line = lineOf(part, lot);
    line.laid_g = sumOf(line.laid_g, laid_g);
    line.isPriced = isPriced(price);
    if (!line.isPriced) {
        part.unpriced_g = sumOf(part.unpriced_g, laid_g);
        return;
    }
    const Estimate cost = productOf(laid_g, price);
    line.cost = sumOf(line.cost, cost);
    part.cost = sumOf(part.cost, cost);
}

void addPull(BillPart& part, const UseOfPull& use, int sheets,
             const std::vector<Estimate>& pricePerGram) {
    ++part.pulls;
    part.pullsNotWeighed += use.ink_g.isKnown() ? 0 : 1;
    part.sheets += sheets;
    part.ink_g = sumOf(part.ink_g, use.ink_g);
    for (const LotInPull& lot : use.lots)
        add(part, lot.lot, lot.laid_g, pricePerGram[static_cast<std::size_t>(lot.lot)]);
    if (use.unrecordedShare.high > 0)
        add(part, notRecorded, productOf(use.ink_g, use.unrecordedShare), Estimate::anyMass());
}

void sortByMass(BillPart& part) {
    const auto weight = [](const BillLine& line) {
        return std::isnan(line.laid_g.best) ? line.laid_g.low : line.laid_g.best;
    };
    std::stable_sort(part.lines.begin(), part.lines.end(),
                     [&](const BillLine& a, const BillLine& b) {
                         if ((a.lot == notRecorded) != (b.lot == notRecorded))
                             return b.lot == notRecorded;
                         return weight(a) > weight(b);
                     });
}

}  // namespace

std::vector<Estimate> pricesBought(const InkBook& ink) {
    std::vector<Estimate> prices;
    for (const Lot& lot : ink.records.of<Lot>())
        prices.push_back(lot.price && lot.netMass_g ? Estimate::exactly(*lot.price / *lot.netMass_g)
                                                    : Estimate());
    return prices;
}

std::vector<Estimate> pricesUsed(const std::vector<LotUse>& uses) {
    std::vector<Estimate> prices;
    for (const LotUse& use : uses)
        prices.push_back(use.costPerGram);
    return prices;
}

InkBill inkBillOf(const InkBook& ink, const std::string& edition,
                  const std::vector<Estimate>& pricePerGram) {
    const MixLedger ledger(ledgerByLot(ink.history));
    const std::vector<int> sheets = sheetsOfPulls(ink.history);
    const std::vector<double> noPrices(pricePerGram.size(), notKnown);
    const UseOfPulls uses = useOfPulls({ink.history, ledger, sheets, noPrices});
    std::map<int, LayerBill> layers;  // by ordinal
    std::map<int, int> ordinals;      // by position
    for (std::size_t i = 0; i < ink.records.of<Layer>().size(); ++i) {
        const Layer& layer = ink.records.of<Layer>()[i];
        if (layer.edition.id != edition)
            continue;
        layers[layer.ordinal].layer = i;
        ordinals[static_cast<int>(i)] = layer.ordinal;
    }
    InkBill bill;
    for (std::size_t pull = 0; pull < uses.pulls.size(); ++pull) {
        const auto found = ordinals.find(ink.history.pulls[pull].layer);
        if (found == ordinals.end())
            continue;
        addPull(layers[found->second].part, uses.pulls[pull], sheets[pull], pricePerGram);
        addPull(bill.whole, uses.pulls[pull], sheets[pull], pricePerGram);
    }
    for (auto& [ordinal, layer] : layers) {
        sortByMass(layer.part);
        bill.layers.push_back(std::move(layer));
    }
    sortByMass(bill.whole);
    return bill;
}

Estimate perSheet(const Estimate& value, int sheets) {
    return sheets > 0 ? quotientOf(value, Estimate::exactly(sheets)) : Estimate();
}

}  // namespace rackbook
