#include "calc/LotUse.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "calc/EstimateMath.h"
#include "calc/EventMass.h"
#include "calc/OneLotUse.h"

namespace rackbook {

namespace {

void checkQuestion(const LotUseQuestion& question) {
    for (std::size_t i = 0; i < question.stockTakes.size(); ++i) {
        const HistoryStockTake& take = question.stockTakes[i];
        const std::string where = "stock-take " + std::to_string(i + 1);
        if (take.lot < 0 || static_cast<std::size_t>(take.lot) >= question.lots.size())
            throw InputError(where, "it names no lot", "Name a lot of the book.");
        if (!(take.mass_g >= 0) || std::isinf(take.mass_g))
            throw InputError(where, "its mass is not a number of 0 or more",
                             "Give the net mass in g.");
    }
    for (const LotFacts& facts : question.lots)
        if (facts.openedLife_days <= 0)
            throw InputError("opened life", "it is not above 0", "Give it in days.");
}

void refuseBelow(double value, bool zeroToo, const char* what) {
    if (value < 0 || (zeroToo && value == 0) || std::isinf(value))
        throw InputError("offer", std::string(what) + (zeroToo ? " is not above 0" : " is below 0"),
                         "Give a number that can be, or leave it out where it is not known.");
}

}  // namespace

std::vector<LotUse> useOfLots(const LotUseQuestion& question) {
    checkQuestion(question);
    std::vector<OneLotUse> lots;
    lots.reserve(question.lots.size());
    for (const LotFacts& facts : question.lots)
        lots.emplace_back(facts, question.asOf);
    for (std::size_t row = 0; row < question.history.weighings.size(); ++row) {
        const HistoryWeighing& weighing = question.history.weighings[row];
        const bool takes = weighing.mix >= 0 && weighing.act == WeighingAct::add &&
                           weighing.fromMix < 0 && weighing.lot >= 0;
        if (takes && weighing.at.earliest <= question.asOf)
            lots[static_cast<std::size_t>(weighing.lot)].addTaking(
                {row, weighing.at, massOf(weighing)});
    }
    for (std::size_t i = 0; i < question.stockTakes.size(); ++i)
        if (question.stockTakes[i].at.earliest <= question.asOf)
            lots[static_cast<std::size_t>(question.stockTakes[i].lot)].addStockTake(
                i, question.stockTakes[i]);
    std::vector<LotUse> uses;
    uses.reserve(lots.size());
    for (OneLotUse& lot : lots)
        uses.push_back(lot.result());
    return uses;
}

std::vector<Estimate> takenOutOfLots(const History& history, CivilMinute asOf) {
    const std::vector<LotFacts> noFacts(history.lots.size());
    const std::vector<HistoryStockTake> noStockTakes;
    std::vector<Estimate> taken_g;
    for (const LotUse& use : useOfLots({history, noFacts, noStockTakes, asOf}))
        taken_g.push_back(use.used_g);
    return taken_g;
}

OfferCost costOfOffer(const LotOffer& offer, double perMonth_g) {
    refuseBelow(offer.price, false, "the price");
    refuseBelow(offer.netMass_g, true, "the net mass");
    refuseBelow(offer.openedLife_days, true, "the opened life");
    if (!(perMonth_g > 0) || std::isinf(perMonth_g))
        throw InputError("use", "the grams per month are not above 0",
                         "Give the ink used in 30.44 days.");
    OfferCost cost;
    if (std::isnan(offer.netMass_g))
        return cost;
    cost.used_g = offer.netMass_g;
    if (!std::isnan(offer.openedLife_days))
        cost.used_g = std::min(offer.netMass_g, perMonth_g * offer.openedLife_days / daysPerMonth);
    cost.wasted_g = offer.netMass_g - cost.used_g;
    cost.costPerGram = offer.price / cost.used_g;
    return cost;
}

}  // namespace rackbook
