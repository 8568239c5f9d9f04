#include "commands/StockLot.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "base/TypedNumber.h"
#include "cli/Table.h"
#include "commands/InkWords.h"
#include "commands/MassGiven.h"
#include "commands/StockWords.h"

namespace rackbook {

namespace {

const Lot& theLot(const StockFacts& facts) {
    return facts.ink.records.of<Lot>()[facts.lots.front()];
}

const LotUse& theUse(const StockFacts& facts) {
    return facts.uses[facts.lots.front()];
}

NamedOffer offerFrom(const std::string& words) {
    const std::size_t first = words.find(':');
    const std::size_t second = first == std::string::npos ? first : words.find(':', first + 1);
    const std::string form =
        "Write price, net mass and, where it is known, the days it keeps once "
        "opened, such as 96:60 or 168:250g:730.";
    if (first == std::string::npos)
        throw UsageError("--offer is \"" + excerpt(words) + "\", which has no mass", form);
    const std::optional<double> price = parseTypedNumber(words.substr(0, first));
    if (!price || *price < 0)
        throw UsageError("--offer is \"" + excerpt(words) + "\", and its price is no amount", form);
    NamedOffer named{words, {*price, notKnown, notKnown}};
    named.offer.netMass_g = massGiven(words.substr(first + 1, second - first - 1),
                                      "stock: the mass of --offer " + excerpt(words));
    if (second == std::string::npos)
        return named;
    const std::optional<double> days = parseTypedNumber(words.substr(second + 1));
    if (!days || *days <= 0)
        throw UsageError(
            "--offer is \"" + excerpt(words) + "\", and its days are no number above 0", form);
    named.offer.openedLife_days = *days;
    return named;
}

std::string rateWords(const UseRate& rate) {
    return gramsWords(rate.perMonth_g, 2) + ", from " + std::to_string(rate.weighings) +
           (rate.weighings == 1 ? " weighing" : " weighings");
}

void printStanding(Console& console, const StockFacts& facts) {
    const Lot& lot = theLot(facts);
    const LotUse& use = theUse(facts);
    const std::string money = moneyWords(facts.ink.studio);
    Table table({{"on " + formatDay(facts.asOf)}, {lotWords(lot)}});
    table.addRow({"kind", std::string(textOf(lot.lotKind)) +
                              (lot.container ? ", " + std::string(textOf(*lot.container)) : "")});
    table.addRow({"opened", openedWords(lot, facts.asOf)});
    if (lot.finishedOn)
        table.addRow({"finished", lot.finishedOn->text()});
    table.addRow({"net mass when new",
                  lot.netMass_g ? formatShortest(*lot.netMass_g) + " g" : "not recorded"});
    table.addRow({"used by the book", gramsWords(use.used_g, 2)});
    table.addRow({"left by the book", gramsWords(use.left_g, 2)});
    table.addRow({"use a month, last 12 months", rateWords(use.lastYear)});
    table.addRow({"use a month, since opened", rateWords(use.sinceOpened)});
    table.addRow({"runs out", runsOutWords(use, facts.asOf)});
    if (use.lifeEnds) {
        table.addRow({"keeps until", momentWords(*use.lifeEnds)});
        table.addRow({"used up by then", beforeLifeEndsWords(use)});
    }
    if (lot.price && lot.netMass_g)
        table.addRow({money + " a gram bought", formatFixed(*lot.price / *lot.netMass_g, 2)});
    table.addRow({money + " a gram used", costPerGramWords(lot, use)});
    console.out() << table.text(console.width(), {});
}

void printTakings(Console& console, const StockFacts& facts) {
    Table table({{"when"}, {"into mix"}, {"g", Align::decimal}, {"weighing"}});
    std::vector<LotTaking> takings = theUse(facts).takings;
    std::stable_sort(takings.begin(), takings.end(), [](const LotTaking& a, const LotTaking& b) {
        return a.at.earliest < b.at.earliest;
    });
    for (const LotTaking& taking : takings) {
        const Weighing& weighing = facts.ink.records.of<Weighing>()[taking.weighing];
        table.addRow(
            {weighing.at.text(), weighing.mix.id, estimateWords(taking.mass_g, 2), weighing.id});
    }
    console.out() << "\n"
                  << console.emphasis("What was taken from it") << "\n"
                  << table.text(console.width(), "Nothing is recorded.");
}

void printStockTakes(Console& console, const StockFacts& facts) {
    Table table({{"when"},
                 {"found g", Align::decimal},
                 {"expected g", Align::decimal},
                 {"difference"},
                 {"stock-take"}});
    for (const StockDifference& difference : theUse(facts).differences) {
        const StockTake& take = facts.ink.records.of<StockTake>()[difference.stockTake];
        const bool canTell = !std::isinf(difference.expected_g.high);
        table.addRow({take.at.text(), formatFixed(take.mass_g, 2),
                      canTell ? estimateWords(difference.expected_g, 2) : "not known",
                      differenceWords(difference.difference_g), take.id});
    }
    console.out() << "\n"
                  << console.emphasis("Stock-takes") << "\n"
                  << table.text(console.width(), "None is recorded.");
}

// At the slowest, the best and the fastest use; a container that is used faster wastes less.
Estimate costAtUse(const LotOffer& offer, const Estimate& perMonth_g) {
    const auto at = [&](double rate) { return costOfOffer(offer, rate).costPerGram; };
    Estimate cost{at(perMonth_g.high), at(perMonth_g.best),
                  std::numeric_limits<double>::infinity()};
    if (perMonth_g.low > 0)
        cost.high = at(perMonth_g.low);
    return cost;
}

bool canCompare(const Estimate& perMonth_g) {
    return perMonth_g.best > 0 && !std::isinf(perMonth_g.high);
}

void printOffers(Console& console, const StockFacts& facts, const std::vector<NamedOffer>& offers) {
    const Estimate& perMonth_g = theUse(facts).lastYear.perMonth_g;
    console.out() << "\n" << console.emphasis("What others would cost") << "\n";
    if (!canCompare(perMonth_g)) {
        console.out() << "Its use in the last 12 months is not known, so offers cannot be "
                         "compared.\n";
        return;
    }
    Table table({{"offer"},
                 {"keeps", Align::decimal},
                 {"g used", Align::decimal},
                 {"g past", Align::decimal},
                 {moneyWords(facts.ink.studio) + " a gram used", Align::decimal}});
    for (const NamedOffer& named : offers) {
        const OfferCost cost = costOfOffer(named.offer, perMonth_g.best);
        const double days = named.offer.openedLife_days;
        table.addRow({formatShortest(named.offer.price) + " for " +
                          formatShortest(named.offer.netMass_g) + " g",
                      std::isnan(days) ? "not given" : formatShortest(days) + " days",
                      formatFixed(cost.used_g, 1), formatFixed(cost.wasted_g, 1),
                      estimateWords(costAtUse(named.offer, perMonth_g), 2)});
    }
    console.out() << table.text(console.width(), {});
    printIndented(console, "At " + gramsWords(perMonth_g, 2) +
                               " a month, the use of the last 12 months. What is left when it no "
                               "longer keeps is past; without days it is all used.");
}

Tree offersTree(const StockFacts& facts, const std::vector<NamedOffer>& offers) {
    const Estimate& perMonth_g = theUse(facts).lastYear.perMonth_g;
    Tree list = Tree::array();
    for (const NamedOffer& named : offers) {
        Tree one = Tree::object();
        one.set("price", named.offer.price).set("netMass_g", named.offer.netMass_g);
        one.set("openedLife_days", named.offer.openedLife_days);
        if (canCompare(perMonth_g)) {
            const OfferCost cost = costOfOffer(named.offer, perMonth_g.best);
            one.set("used_g", cost.used_g).set("past_g", cost.wasted_g);
            one.set("costPerGram", treeOf(costAtUse(named.offer, perMonth_g)));
        }
        list.add(std::move(one));
    }
    return list;
}

}  // namespace

std::vector<NamedOffer> offersFrom(const std::vector<std::string>& words) {
    std::vector<NamedOffer> offers;
    for (const std::string& one : words)
        offers.push_back(offerFrom(one));
    if (offers.size() == 1)
        throw UsageError("one offer has nothing to be compared with",
                         "Give --offer twice or more.");
    return offers;
}

void printLot(Console& console, const StockFacts& facts, const std::vector<NamedOffer>& offers) {
    printStanding(console, facts);
    printTakings(console, facts);
    printStockTakes(console, facts);
    if (!offers.empty())
        printOffers(console, facts, offers);
    printToSeeTo(console, facts);
}

void addLotDetails(Tree& report, const StockFacts& facts, const std::vector<NamedOffer>& offers) {
    Tree takings = Tree::array();
    for (const LotTaking& taking : theUse(facts).takings) {
        const Weighing& weighing = facts.ink.records.of<Weighing>()[taking.weighing];
        Tree one = Tree::object();
        one.set("weighing", weighing.id).set("mix", weighing.mix.id);
        one.set("at", weighing.at.text()).set("mass_g", treeOf(taking.mass_g));
        takings.add(std::move(one));
    }
    report.set("takings", std::move(takings));
    if (!offers.empty())
        report.set("offers", offersTree(facts, offers));
}

}  // namespace rackbook
