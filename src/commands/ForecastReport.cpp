#include "commands/ForecastReport.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"
#include "commands/PlaceGiven.h"
#include "commands/ReadyReport.h"

namespace rackbook {

namespace {

const std::vector<std::string> rulesUsed = {
    "lightDays",      "lightDaysCareful", "lightDose_sunnyDays", "lightDoseFactor", "lookChance",
    "returnedChance", "looksToLearn",     "skySunnyShare",       "skyOvercastShare"};

std::string dayWordsOf(const std::optional<std::int64_t>& day, CivilMinute asOf) {
    if (!day)
        return "not in two years";
    return *day <= dayOf(asOf) ? "now" : formatDay(*day * minutesPerDay);
}

void printGroup(Console& console, const ForecastFacts& facts, const ForecastGroup& group) {
    const ReadinessRow& row = facts.readiness.rows[group.sample];
    console.out() << console.emphasis(printable(group.edition + " " + formatRanges(group.numbers) +
                                                ": " + saidVerdict(row.verdict)))
                  << "\n";
    std::string had = "Now at " + placeWords(facts.history, row.place) + "; " +
                      daysWords(row.daysLow, row.daysHigh) + " in light of " +
                      formatShortest(row.daysNeeded);
    if (row.dose.sunnyDays.isKnown())
        had += ", worth " + roughly(row.dose.sunnyDays) + " sunny days";
    printParagraph(console, had + ".");
    if (row.verdict == Verdict::lookDue) {
        const CivilMinute from = std::max(nextLookFrom(row, facts.rules), facts.readiness.asOf);
        printParagraph(console, from <= facts.readiness.asOf
                                    ? "A look is due now."
                                    : "The next look may be made from " + formatDay(from) + " on.");
    }
    if (!row.dose.sunnyDays.isKnown()) {
        printParagraph(console,
                       "No forecast: its light so far is not known. rackbook ready --why says "
                       "what is missing.");
        return;
    }
    Table table({{"hanging at"}, {"a look from"}, {"half back by"}, {"most back by"}});
    for (const PlaceForecast& one : group.at)
        table.addRow({placeWords(facts.history, one.place) + (one.isHere ? ", as now" : ""),
                      dayWordsOf(one.days.early, facts.readiness.asOf),
                      dayWordsOf(one.days.likely, facts.readiness.asOf),
                      dayWordsOf(one.days.late, facts.readiness.asOf)});
    console.out() << table.text(console.width(),
                                "No rack or wall of the studio is recorded as lit.");
}

Tree dayTree(const std::optional<std::int64_t>& day) {
    return day ? Tree(formatDay(*day * minutesPerDay)) : Tree();
}

}  // namespace

void printForecast(Console& console, const ForecastFacts& facts) {
    for (const ForecastGroup& group : facts.plan.groups) {
        printGroup(console, facts, group);
        console.out() << "\n";
    }
    if (facts.plan.groups.empty())
        console.out() << "No impression is waiting for light.\n";
    if (facts.plan.notConcerned > 0)
        console.out() << facts.plan.notConcerned << " ready or not affected are not listed.\n";
    if (facts.plan.notKnown > 0)
        console.out()
            << facts.plan.notKnown
            << " of which too little is known are not listed; rackbook ready says what is "
               "missing.\n";
    if (!facts.plan.groups.empty())
        printParagraph(console,
                       "Estimates, from " + formatDay(facts.readiness.asOf) +
                           " on, through the season's sun and usual skies: from when on a look "
                           "may be worth making (a chance of " +
                           percentWords(Estimate::exactly(facts.rules.value("lookChance"))) +
                           " that the colour is back, and its days in light), when half of such "
                           "prints have their colour back, and when most have (" +
                           percentWords(Estimate::exactly(facts.rules.value("returnedChance"))) +
                           "). Whether one is ready, looks decide.");
    if (facts.givesRules)
        printHouseRules(console, facts.rules, rulesUsed);
    else if (!facts.plan.groups.empty())
        console.out() << "Judged by the house rules; --why prints them.\n";
}

Tree forecastTree(const ForecastFacts& facts) {
    Tree report = newReport("forecast");
    report.set("on", formatDay(facts.readiness.asOf));
    Tree groups = Tree::array();
    for (const ForecastGroup& group : facts.plan.groups) {
        const ReadinessRow& row = facts.readiness.rows[group.sample];
        Tree one = Tree::object();
        one.set("edition", group.edition);
        Tree numbers = Tree::array();
        for (const int number : group.numbers)
            numbers.add(number);
        one.set("workingNumbers", std::move(numbers)).set("verdict", textOf(row.verdict));
        one.set("sunnyDays", roundedTreeOf(row.dose.sunnyDays));
        one.set("returnedChance",
                std::isnan(row.returnedChance) ? Tree() : Tree(roundedToFive(row.returnedChance)));
        Tree places = Tree::array();
        for (const PlaceForecast& at : group.at)
            places.add(
                Tree::object()
                    .set("place", facts.history.places[static_cast<std::size_t>(at.place)].id)
                    .set("isHere", at.isHere)
                    .set("early", dayTree(at.days.early))
                    .set("likely", dayTree(at.days.likely))
                    .set("late", dayTree(at.days.late)));
        one.set("places", std::move(places));
        groups.add(std::move(one));
    }
    report.set("groups", std::move(groups));
    report.set("notConcerned", static_cast<double>(facts.plan.notConcerned));
    report.set("notKnown", static_cast<double>(facts.plan.notKnown));
    report.set("houseRules", treeOf(facts.rules, rulesUsed));
    return report;
}

}  // namespace rackbook
