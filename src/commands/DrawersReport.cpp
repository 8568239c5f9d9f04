#include "commands/DrawersReport.h"

#include <map>
#include <tuple>

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/DrawerWords.h"
#include "commands/InkWords.h"
#include "commands/Paragraph.h"
#include "commands/ReadyReport.h"

namespace rackbook {

namespace {

constexpr const char* noneOfThose = "None of the prints asked for lies in a drawer or box.";

const ReadinessRow& rowOf(const DrawersFacts& facts, const LyingPrint& print) {
    return facts.readiness.rows[print.row];
}

const std::string& nameOf(const DrawersFacts& facts, const DrawerContents& drawer) {
    return facts.history.places[static_cast<std::size_t>(drawer.place)].name;
}

// What is at risk in a drawer, gathered where it is as long in the dark and judged alike; what is
// to be aired first comes first.
using RiskKey = std::tuple<std::pair<bool, CivilMinute>, std::string, std::string>;
struct RiskLine {
    std::vector<int> impressions;
    const LyingPrint* sample = nullptr;
};

std::map<RiskKey, RiskLine> riskLines(const DrawersFacts& facts, const DrawerContents& drawer) {
    std::map<RiskKey, RiskLine> lines;
    for (const LyingPrint& print : drawer.prints) {
        if (!print.isAtRisk)
            continue;
        RiskLine& line = lines[{airingOrder(print), daysOf(print.darkSince),
                                saidVerdict(rowOf(facts, print).verdict)}];
        line.impressions.push_back(print.impression);
        line.sample = &print;
    }
    return lines;
}

void addRows(Table& table, const DrawersFacts& facts, const DrawerContents& drawer) {
    std::string name = nameOf(facts, drawer);
    std::string fill = fillWords(drawer);
    std::string count = std::to_string(drawer.atRisk());
    if (drawer.atRisk() == 0)
        table.addRow({name, fill, "none", "", "", "", ""});
    for (const auto& [key, line] : riskLines(facts, drawer)) {
        table.addRow({name, fill, count, printNames(facts, line.impressions), std::get<2>(key),
                      std::get<1>(key), airingWords(facts, *line.sample)});
        name.clear();
        fill.clear();
        count.clear();
    }
}

void printOverview(Console& console, const DrawersFacts& facts) {
    Table table({{"drawer or box"},
                 {"lie there"},
                 {"at risk"},
                 {"which"},
                 {"verdict"},
                 {"dark since"},
                 {"to be aired"}});
    std::vector<std::string> empty;
    for (const DrawerContents& drawer : facts.plan.drawers) {
        if (drawer.prints.empty())
            empty.push_back(nameOf(facts, drawer));
        else
            addRows(table, facts, drawer);
    }
    console.out() << table.text(
        console.width(), facts.isFiltered ? noneOfThose : "No print lies in a drawer or box.");
    if (!empty.empty())
        printParagraph(console, "No prints in: " + joined(empty) + ".");
}

void printDetail(Console& console, const DrawersFacts& facts, const DrawerContents& drawer) {
    printHeading(console, nameOf(facts, drawer) + ": " + fillWords(drawer));
    Table table({{"impression"},
                 {"verdict"},
                 {"there since"},
                 {"dark since"},
                 {"to be aired"},
                 {"interleaved"},
                 {"felt then"}});
    for (const LyingPrint& print : drawer.prints) {
        std::string verdict =
            print.isSpoiled ? std::string("spoiled") : saidVerdict(rowOf(facts, print).verdict);
        if (print.stay.undecided)
            verdict += ", may lie elsewhere";
        table.addRow({printNames(facts, {print.impression}), verdict, daysOf(print.stay.from),
                      daysOf(print.darkSince), airingWords(facts, print),
                      print.stay.interleaved ? "yes" : "no", touchWords(facts, print)});
    }
    console.out() << table.text(console.width(), "No print lies there.");
}

void printSoft(Console& console, const DrawersFacts& facts) {
    bool isFirst = true;
    for (const DrawerContents& drawer : facts.plan.drawers) {
        if (drawer.soft.empty())
            continue;
        if (isFirst) {
            console.out() << "\n";
            printHeading(console, "Not known to be dry when they were put away");
        }
        isFirst = false;
        printWrapped(console, nameOf(facts, drawer));
        for (const PutAwaySoft& soft : drawer.soft)
            printIndented(console, softWords(facts, soft));
    }
    if (!isFirst)
        printParagraph(console,
                       "Ink that is not dry may stick to what lies on it, or set off on it; "
                       "interleaving keeps faces apart. What a look has found dry since is not "
                       "listed.");
}

void printSum(Console& console, const DrawersFacts& facts) {
    std::size_t lying = 0;
    std::size_t atRisk = 0;
    std::size_t due = 0;
    for (const DrawerContents& drawer : facts.plan.drawers)
        for (const LyingPrint& print : drawer.prints) {
            ++lying;
            atRisk += print.isAtRisk ? 1 : 0;
            due +=
                print.isAtRisk && isAiringDue(print, facts.plan.airing_days, facts.readiness.asOf)
                    ? 1
                    : 0;
        }
    std::string text = "On " + formatDay(facts.readiness.asOf) + ": " + std::to_string(atRisk) +
                       " of " + std::to_string(lying) +
                       (lying == 1 ? " impression is at risk" : " impressions are at risk");
    if (atRisk > 0)
        text += "; airing is due for " + (due == 0 ? "none yet" : std::to_string(due) + " of them");
    text += ".";
    if (atRisk > 0)
        text +=
            " At risk is whatever is neither ready nor unaffected; rackbook ready --place "
            "PLACE says why.";
    printParagraph(console, text);
}

}  // namespace

void printDrawers(Console& console, const DrawersFacts& facts) {
    if (!facts.inDetail)
        printOverview(console, facts);
    else if (facts.plan.drawers.empty())
        console.out() << "None of the prints asked for lies there.\n";
    bool isFirst = true;
    for (const DrawerContents& drawer : facts.plan.drawers) {
        if (!facts.inDetail)
            break;
        console.out() << (isFirst ? "" : "\n");
        isFirst = false;
        printDetail(console, facts, drawer);
    }
    printSoft(console, facts);
    printSum(console, facts);
    printHouseRules(console, facts.rules, {"airing_days"});
}

}  // namespace rackbook
