#include "commands/StockReport.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/StockWords.h"

namespace rackbook {

namespace {

const Lot& lotAt(const StockFacts& facts, std::size_t lot) {
    return facts.ink.records.of<Lot>()[lot];
}

// The name on the container, without what else is said about the colour.
std::string shortColour(const Lot& lot) {
    return lot.colourWords.substr(0, lot.colourWords.find(';'));
}

void printLeft(Console& console, const StockFacts& facts) {
    Table table({{"lot"},
                 {"kind"},
                 {"colour"},
                 {"pigments"},
                 {"g left", Align::decimal},
                 {"g a month", Align::decimal},
                 {"runs out"}});
    for (const std::size_t i : facts.lots) {
        const Lot& lot = lotAt(facts, i);
        const LotUse& use = facts.uses[i];
        table.addRow({lot.id, rackbook::textOf(lot.lotKind), shortColour(lot),
                      joined(lot.pigments, ", "), estimateWords(use.left_g, 1),
                      estimateWords(use.lastYear.perMonth_g, 2), runsOutWords(use, facts.asOf)});
    }
    console.out() << table.text(console.width(), "No lot is open, by the book.");
}

std::string lastStockTakeWords(const StockFacts& facts, const LotUse& use) {
    if (use.differences.empty())
        return "none";
    const StockDifference& last = use.differences.back();
    const StockTake& take = facts.ink.records.of<StockTake>()[last.stockTake];
    return take.at.text() + ": " + formatFixed(take.mass_g, 1) + " g, " +
           differenceWords(last.difference_g);
}

void printKeeping(Console& console, const StockFacts& facts) {
    Table table({{"lot"},
                 {"last stock-take"},
                 {"opened"},
                 {"keeps until"},
                 {"used up by then"},
                 {moneyWords(facts.ink.studio) + " a gram used", Align::decimal}});
    for (const std::size_t i : facts.lots) {
        const LotUse& use = facts.uses[i];
        table.addRow({lotAt(facts, i).id, lastStockTakeWords(facts, use),
                      openedWords(lotAt(facts, i), facts.asOf),
                      use.lifeEnds ? momentWords(*use.lifeEnds) : "", beforeLifeEndsWords(use),
                      costPerGramWords(lotAt(facts, i), use)});
    }
    console.out() << "\n" << table.text(console.width(), {});
}

void printPart(Console& console, const std::string& what, const std::vector<std::string>& lots,
               const std::string& remedy) {
    if (!lots.empty())
        printIndented(console, what + ": " + joined(lots) + ". " + remedy);
}

bool anyProjected(const StockFacts& facts) {
    return std::any_of(facts.lots.begin(), facts.lots.end(), [&](std::size_t i) {
        return facts.uses[i].costIsProjected && !std::isinf(facts.uses[i].costPerGram.high);
    });
}

Tree differencesTree(const StockFacts& facts, const LotUse& use) {
    Tree list = Tree::array();
    for (const StockDifference& difference : use.differences) {
        const StockTake& take = facts.ink.records.of<StockTake>()[difference.stockTake];
        Tree one = Tree::object();
        one.set("stockTake", take.id).set("at", take.at.text()).set("mass_g", take.mass_g);
        one.set("expected_g", treeOf(difference.expected_g));
        one.set("difference_g", treeOf(difference.difference_g));
        list.add(std::move(one));
    }
    return list;
}

Tree lotTree(const StockFacts& facts, std::size_t i) {
    const Lot& lot = lotAt(facts, i);
    const LotUse& use = facts.uses[i];
    Tree one = Tree::object();
    one.set("lot", lot.id).set("lotKind", rackbook::textOf(lot.lotKind));
    one.set("left_g", treeOf(use.left_g)).set("used_g", treeOf(use.used_g));
    one.set("perMonth_g", treeOf(use.lastYear.perMonth_g));
    one.set("perMonthSinceOpened_g", treeOf(use.sinceOpened.perMonth_g));
    if (use.runsOut)
        one.set("runsOut", treeOf(*use.runsOut));
    if (use.lifeEnds)
        one.set("lifeEnds", treeOf(*use.lifeEnds))
            .set("usedUpByThen", textOf(use.runsOutBeforeLifeEnds));
    one.set("costPerGram", treeOf(use.costPerGram)).set("costIsProjected", use.costIsProjected);
    one.set("old", isOld(use, facts.asOf)).set("nearlyOut", isNearlyOut(use, facts.asOf));
    one.set("lacksMass", lacksMass(lot, use));
    one.set("stockTakes", differencesTree(facts, use));
    return one;
}

}  // namespace

const std::vector<std::string>& rulesOfStock() {
    static const std::vector<std::string> names = {"openedLifeTin_days", "openedLifeTube_days"};
    return names;
}

bool isOld(const LotUse& use, CivilMinute asOf) {
    return use.lifeEnds && use.lifeEnds->earliest < asOf;
}

bool isNearlyOut(const LotUse& use, CivilMinute asOf) {
    const double rate = use.lastYear.perMonth_g.best;
    if (use.left_g.isKnown() && rate > 0)
        return use.left_g.best < rate;
    const auto month = static_cast<CivilMinute>(daysPerMonth * minutesPerDay);
    return use.runsOut && use.runsOut->earliest < asOf + month;
}

bool lacksMass(const Lot& lot, const LotUse& use) {
    return !lot.netMass_g && use.differences.empty();
}

std::string openedWords(const Lot& lot, CivilMinute asOf) {
    if (!lot.openedOn)
        return "not recorded";
    constexpr double minutesPerHour = 60;
    const auto hoursSince = [&](CivilMinute minute) {
        return std::max(0.0, static_cast<double>(asOf - minute)) / minutesPerHour;
    };
    const Estimate age{hoursSince(lot.openedOn->latest()), notKnown,
                       hoursSince(lot.openedOn->earliest())};
    const bool isDay = !lot.openedOn->isBadlyKnown();
    return lot.openedOn->text() + ", " + (isDay ? ageWords(age.high) : ageWords(age));
}

void printStock(Console& console, const StockFacts& facts) {
    printLeft(console, facts);
    if (facts.lots.empty())
        return;
    printKeeping(console, facts);
    printToSeeTo(console, facts);
}

void printToSeeTo(Console& console, const StockFacts& facts) {
    std::vector<std::string> old, nearlyOut, withoutMass;
    for (const std::size_t i : facts.lots) {
        const std::string& id = lotAt(facts, i).id;
        const LotUse& use = facts.uses[i];
        const bool finished = lotAt(facts, i).finishedOn.has_value();
        if (!finished && isOld(use, facts.asOf))
            old.push_back(id);
        if (!finished && isNearlyOut(use, facts.asOf))
            nearlyOut.push_back(id);
        if (!finished && lacksMass(lotAt(facts, i), use))
            withoutMass.push_back(id);
    }
    if (!old.empty() || !nearlyOut.empty() || !withoutMass.empty())
        console.out() << "\n" << console.emphasis("To see to") << "\n";
    printPart(console, "Open longer than it keeps by the house rule", old,
              "Look under the skin, and try it on scrap before it goes into a mix.");
    printPart(console, "Less than a month of use left", nearlyOut, "Buy before the next edition.");
    if (!withoutMass.empty())
        printPart(console, "What was in it is not recorded", withoutMass,
                  "Weigh what is there and record it with rackbook stock-take " +
                      withoutMass.front() + " MASS.");
    console.out() << "\n";
    printIndented(console,
                  "Use is that of the last 12 months, or since the lot was opened or "
                  "first weighed from, where that is shorter; when it runs out lies "
                  "between the faster and the slower of that and the use since it was "
                  "opened. A month is 30.44 days.");
    if (anyProjected(facts))
        printIndented(console,
                      "A projected cost is the price over what will have been used when "
                      "the lot runs out or no longer keeps, if use goes on as it is.");
    printHouseRules(console, facts.ink.rules, rulesOfStock());
}

Tree treeOf(const StockFacts& facts) {
    Tree report = newReport("stock");
    report.set("on", formatDay(facts.asOf));
    if (facts.ink.studio.currency)
        report.set("currency", *facts.ink.studio.currency);
    Tree lots = Tree::array();
    for (const std::size_t i : facts.lots)
        lots.add(lotTree(facts, i));
    report.set("lots", std::move(lots));
    report.set("houseRules", treeOf(facts.ink.rules, rulesOfStock()));
    return report;
}

}  // namespace rackbook
