#include "calc/UseOfPulls.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "calc/EstimateMath.h"
#include "calc/EventMass.h"

namespace rackbook {

namespace {

constexpr int noLot = -1;

InkCost costOf(const UseOfPull& use) {
    InkCost cost;
    cost.unpriced_g = productOf(use.ink_g, use.unrecordedShare);
    double unpriced = use.unrecordedShare.best;
    for (const LotInPull& lot : use.lots) {
        if (!std::isnan(lot.cost)) {
            cost.known += lot.cost;
            continue;
        }
        cost.unpriced_g = sumOf(cost.unpriced_g, lot.laid_g);
        unpriced += lot.share.best;
    }
    cost.unpricedShare = std::isnan(unpriced) ? notKnown : std::min(1.0, unpriced);
    cost.unpriced_g.high = std::min(cost.unpriced_g.high, use.ink_g.high);
    return cost;
}

UseOfPull useOfPull(const UseQuestion& question, std::size_t pull) {
    const MixContents contents = question.ledger.atPull(pull);
    UseOfPull use;
    use.ink_g = massOf(question.history.pulls[pull]);
    use.unrecordedShare = contents.unrecorded;
    const int sheets = question.sheetsOfPull[pull];
    for (const MixPart& part : contents.parts) {
        if (part.share.high <= 0)
            continue;
        LotInPull lot{part.constituent, part.share, productOf(use.ink_g, part.share), {}, 0};
        if (sheets > 0)
            lot.perSheet_g = quotientOf(lot.laid_g, Estimate::exactly(sheets));
        lot.cost =
            lot.laid_g.best * question.pricePerGram[static_cast<std::size_t>(part.constituent)];
        use.lots.push_back(lot);
    }
    use.cost = costOf(use);
    return use;
}

// Sorts by lot and makes one of what belongs to the same lot.
void addUp(std::vector<LotInLayer>& lots) {
    std::stable_sort(lots.begin(), lots.end(),
                     [](const LotInLayer& a, const LotInLayer& b) { return a.lot < b.lot; });
    std::size_t kept = 0;
    for (std::size_t i = 0; i < lots.size(); ++i) {
        if (kept > 0 && lots[kept - 1].lot == lots[i].lot)
            lots[kept - 1].laid_g = sumOf(lots[kept - 1].laid_g, lots[i].laid_g);
        else
            lots[kept++] = lots[i];
    }
    lots.resize(kept);
}

void addToLayer(UseOfLayer& layer, const UseOfPull& use) {
    if (layer.pulls++ == 0) {
        layer.ink_g = Estimate::exactly(0);
        layer.cost.unpriced_g = Estimate::exactly(0);
    }
    layer.ink_g = sumOf(layer.ink_g, use.ink_g);
    layer.cost.known += use.cost.known;
    layer.cost.unpriced_g = sumOf(layer.cost.unpriced_g, use.cost.unpriced_g);
    for (const LotInPull& lot : use.lots)
        layer.lots.push_back({lot.lot, lot.laid_g});
}

bool isSurer(const TracedPull& a, const TracedPull& b) {
    return a.holding != b.holding ? a.holding < b.holding : a.share.high > b.share.high;
}

// -1 where the pull cannot hold the lot, else its place in traced.
std::vector<int> placesOf(const std::vector<TracedPull>& traced, std::size_t pulls) {
    std::vector<int> places(pulls, -1);
    for (std::size_t i = 0; i < traced.size(); ++i)
        places[traced[i].pull] = static_cast<int>(i);
    return places;
}

}  // namespace

UseOfPulls useOfPulls(const UseQuestion& question) {
    if (question.sheetsOfPull.size() != question.history.pulls.size() ||
        question.pricePerGram.size() != question.history.lots.size())
        throw std::invalid_argument("useOfPulls: a list does not fit the history");
    UseOfPulls uses;
    uses.layers.resize(question.history.layers.size());
    uses.pulls.reserve(question.history.pulls.size());
    for (std::size_t pull = 0; pull < question.history.pulls.size(); ++pull) {
        uses.pulls.push_back(useOfPull(question, pull));
        const int layer = question.history.pulls[pull].layer;
        if (layer >= 0)
            addToLayer(uses.layers[static_cast<std::size_t>(layer)], uses.pulls.back());
    }
    for (UseOfLayer& layer : uses.layers) {
        addUp(layer.lots);
        layer.cost.unpricedShare =
            layer.ink_g.best > 0 ? layer.cost.unpriced_g.best / layer.ink_g.best : notKnown;
    }
    return uses;
}

std::vector<int> sheetsOfPulls(const History& history) {
    std::vector<int> sheets(history.pulls.size(), 0);
    for (const std::uint32_t pull : history.pullsOf.items)
        ++sheets[pull];
    return sheets;
}

Holding holdingOf(const MixLedger& ledger, std::size_t pull, int lot) {
    const Estimate share = ledger.shareAtPull(pull, lot);
    if (share.low > 0)
        return Holding::holds;
    // What could be no lot at all can only be in what was never recorded.
    return share.high > ledger.shareAtPull(pull, noLot).high ? Holding::mayHold
                                                             : Holding::cannotRuleOut;
}

LotTrace traceOfLot(const History& history, const MixLedger& ledger, int lot) {
    LotTrace trace;
    for (std::size_t pull = 0; pull < history.pulls.size(); ++pull) {
        const Estimate share = ledger.shareAtPull(pull, lot);
        if (share.high <= 0)
            continue;
        trace.pulls.push_back({pull, holdingOf(ledger, pull, lot), share});
    }
    const std::vector<int> places = placesOf(trace.pulls, history.pulls.size());
    for (std::size_t i = 0; i < history.impressions.size(); ++i) {
        const TracedPull* surest = nullptr;
        for (const std::uint32_t* row = history.pullsOf.begin(i); row != history.pullsOf.end(i);
             ++row) {
            if (places[*row] < 0)
                continue;
            const TracedPull& pull = trace.pulls[static_cast<std::size_t>(places[*row])];
            if (!surest || isSurer(pull, *surest))
                surest = &pull;
        }
        if (surest)
            trace.impressions.push_back({i, surest->holding, surest->share});
    }
    return trace;
}

}  // namespace rackbook
