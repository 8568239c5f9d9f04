#include "commands/ReadyReport.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "base/Translated.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "cli/Wrap.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/PlaceGiven.h"
#include "commands/ToldChanceWords.h"

namespace rackbook {

namespace {

// More than any studio has existed: one end of the count is open.
constexpr double mostDays = 1e6;

std::string daysText(const ReadinessRow& row) {
    if (row.pull < 0)
        return {};
    return daysFigures(row.daysLow, row.daysHigh) + " of " + formatFixed(row.daysNeeded, 0);
}

std::string layerText(const ReadinessRow& row, const History& history) {
    if (row.layer < 0)
        return {};
    const HistoryLayer& layer = history.layers[static_cast<std::size_t>(row.layer)];
    std::string text = std::to_string(layer.ordinal) + ", " + dayWords(row.pulled);
    if (row.extenderShare.isKnown())
        text += ", " + formatFixed(row.extenderShare.best * 100, 0) + " % base";
    return text;
}

std::string lookText(const ReadinessRow& row, const History& history) {
    const int index = std::max(row.colourLook, row.touchLook);
    if (index < 0)
        return "none";
    std::string text;
    if (row.touchLook >= 0)
        text = textOf(history.looks[static_cast<std::size_t>(row.touchLook)].touch);
    if (row.colourLook >= 0)
        text += std::string(text.empty() ? "" : ", ") +
                textOf(history.looks[static_cast<std::size_t>(row.colourLook)].colour);
    return text;
}

std::string reasonsText(const ReadinessRow& row, const ReadyFacts& facts) {
    std::string why;
    for (const std::string& sentence : reasonsFor(row, facts.history, facts.rules))
        why += (why.empty() ? "" : " ") + sentence;
    return why;
}

bool isExplained(const ReadinessRow& row, const ReadyFacts& facts) {
    return facts.explainsAll || mayNeedLight(row.verdict);
}

// What a line of the table says, and the reasons where they are given; impressions that agree in
// all of it share a line.
using LineKey =
    std::tuple<int, std::string, std::string, std::string, std::string, std::string, std::string>;

struct Line {
    std::vector<int> numbers;
    std::size_t sample = 0;  // a row that stands for the others
};

// By urgency, then by edition.
std::map<LineKey, Line> linesOf(const ReadyFacts& facts) {
    std::map<LineKey, Line> lines;
    for (const std::size_t i : facts.chosen) {
        const ReadinessRow& row = facts.readiness.rows[i];
        const ImpressionLabel& label = facts.labels[static_cast<std::size_t>(row.impression)];
        Line& line = lines[{urgencyOf(row.verdict), label.edition, layerText(row, facts.history),
                            daysText(row), lookText(row, facts.history),
                            placeWords(facts.history, row.place),
                            isExplained(row, facts) ? reasonsText(row, facts) : ""}];
        if (line.numbers.empty())
            line.sample = i;
        line.numbers.push_back(label.workingNumber);
    }
    return lines;
}

void printSummary(Console& console, const ReadyFacts& facts) {
    std::map<int, std::pair<Verdict, std::size_t>> counts;
    for (const std::size_t i : facts.chosen) {
        const Verdict verdict = facts.readiness.rows[i].verdict;
        auto& [which, count] = counts[urgencyOf(verdict)];
        which = verdict;
        ++count;
    }
    std::vector<std::string> parts;
    for (const auto& [urgency, entry] : counts)
        parts.push_back(saidVerdict(entry.first) + " " + std::to_string(entry.second));
    console.out() << filledIn(translated("ready", "On %1: %2."),
                              {formatDay(facts.readiness.asOf),
                               parts.empty() ? translated("ready", "no impression is concerned")
                                             : joined(parts, translated("ready", " and "))})
                  << "\n";
    if (facts.readiness.leftOut > 0)
        console.out() << filledIn(translated("ready", "%1 spoiled or destroyed were left out."),
                                  {std::to_string(facts.readiness.leftOut)})
                      << "\n";
}

// Since when the days are counted, and how many there were in all.
void setTurnedAgain(Tree& one, const ReadinessRow& row, const History& history) {
    const HistoryLook& look = history.looks[static_cast<std::size_t>(row.turnedAgain)];
    one.set("foundTurnedAgainOn", formatDay(look.at.latest));
    one.set("lightDaysInAllLow", row.daysInAllLow);
    if (row.daysInAllHigh <= mostDays)
        one.set("lightDaysInAllHigh", row.daysInAllHigh);
}

// The dose since that pull, the doses by which a look is worth making, half of such prints are back
// and it counts as enough, and the chance that this one is back.
void setDose(Tree& one, const ReadinessRow& row, const History& history, const HouseRules& rules) {
    const ReturnChance& chance = row.wanted->chance;
    one.set("dose_sunnyDays", roundedTreeOf(row.dose.sunnyDays));
    one.set("lookWorthMaking_sunnyDays",
            roundedToFive(LightWanted::doseFor_sunnyDays(
                *row.wanted, lookChanceFor(row.looks, rules.value("lookChance")),
                row.notYet_sunnyDays)));
    one.set("half_sunnyDays", roundedToFive(chance.doseFor_sunnyDays(0.5)));
    one.set("enough_sunnyDays",
            roundedToFive(chance.doseFor_sunnyDays(rules.value("returnedChance"))));
    setToldChance(one, row, history);
}

}  // namespace

int urgencyOf(Verdict verdict) {
    switch (verdict) {
        case Verdict::bringOut:
            return 0;
        case Verdict::moreLight:
            return 1;
        case Verdict::lookDue:
            return 2;
        case Verdict::unknown:
            return 3;
        case Verdict::ready:
            return 4;
        case Verdict::notAffected:
            break;
    }
    return 5;
}

std::string saidVerdict(Verdict verdict) {
    return translated("verdict", verdictWords(verdict));
}

bool mayNeedLight(Verdict verdict) {
    return verdict != Verdict::ready && verdict != Verdict::notAffected;
}

void printReadiness(Console& console, const ReadyFacts& facts) {
    Table table({{translated("ready", "impressions")},
                 {translated("ready", "verdict")},
                 {translated("ready", "last extender-rich layer")},
                 {translated("ready", "days in light")},
                 {translated("ready", "look since")},
                 {translated("ready", "now at")}});
    const std::map<LineKey, Line> lines = linesOf(facts);
    for (const auto& [key, line] : lines)
        table.addRow({std::get<1>(key) + " " + formatRanges(line.numbers),
                      saidVerdict(facts.readiness.rows[line.sample].verdict), std::get<2>(key),
                      std::get<3>(key), std::get<4>(key), std::get<5>(key)});
    console.out() << table.text(console.width(),
                                translated("ready", "No impression is concerned."));
    console.out() << "\n";
    for (const auto& [key, line] : lines) {
        const ReadinessRow& row = facts.readiness.rows[line.sample];
        if (!isExplained(row, facts) && lines.size() > 1)
            continue;
        console.out() << console.emphasis(printable(std::get<1>(key) + " " +
                                                    formatRanges(line.numbers) + ": " +
                                                    saidVerdict(row.verdict)))
                      << "\n";
        const std::string why = reasonsText(row, facts);
        for (const std::string& piece : wrapped(printable(why), std::min(console.width() - 2, 96)))
            console.out() << "  " << piece << "\n";
        console.out() << "\n";
    }
    printSummary(console, facts);
    if (facts.explainsAll)
        printHouseRules(console, facts.rules, rulesOfReadiness());
    else if (!facts.chosen.empty())
        console.out() << translated(
                             "ready",
                             "Judged by the house rules; --why prints them, and all reasons.")
                      << "\n";
}

Tree readinessTree(const ReadyFacts& facts) {
    Tree report = newReport("ready");
    report.set("on", formatDay(facts.readiness.asOf));
    Tree rows = Tree::array();
    for (const std::size_t i : facts.chosen) {
        const ReadinessRow& row = facts.readiness.rows[i];
        const ImpressionLabel& label = facts.labels[static_cast<std::size_t>(row.impression)];
        Tree one = Tree::object();
        one.set("impression", label.id).set("edition", label.edition);
        one.set("workingNumber", label.workingNumber);
        if (!label.designation.empty())
            one.set("designation", label.designation);
        one.set("verdict", textOf(row.verdict));
        if (row.pull >= 0) {
            const HistoryLayer& layer = facts.history.layers[static_cast<std::size_t>(row.layer)];
            one.set("layer", layer.ordinal);
            if (row.pulled.earliest != beginningOfTime)
                one.set("pulledEarliest", formatMinute(row.pulled.earliest));
            if (row.pulled.latest != endOfTime)
                one.set("pulledLatest", formatMinute(row.pulled.latest));
            one.set("extenderShare", row.extenderShare.best);
            one.set("lightDaysLow", row.daysLow);
            if (row.daysHigh <= mostDays)
                one.set("lightDaysHigh", row.daysHigh);
            one.set("lightDaysNeeded", row.daysNeeded);
            if (row.turnedAgain >= 0)
                setTurnedAgain(one, row, facts.history);
        }
        if (row.asksDose && row.wanted)
            setDose(one, row, facts.history, facts.rules);
        one.set("touchDry", row.touchDry);
        if (row.touchLook >= 0)
            one.set("touchSeenAtOthers", row.touchWasOther);
        if (row.colourLook >= 0)
            one.set("colourSeenAtOthers", row.colourWasOther);
        if (row.place >= 0)
            one.set("place", facts.history.places[static_cast<std::size_t>(row.place)].id);
        if (row.putAwayEarly)
            one.set("putAwayEarlyOn", formatDay(row.putAwayEarlyOn.earliest));
        Tree reasons = Tree::array();
        for (std::string& sentence : reasonsFor(row, facts.history, facts.rules))
            reasons.add(std::move(sentence));
        one.set("reasons", std::move(reasons));
        rows.add(std::move(one));
    }
    report.set("impressions", std::move(rows));
    report.set("houseRules", treeOf(facts.rules, rulesOfReadiness()));
    return report;
}

}  // namespace rackbook
