#include "commands/LightReport.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/DoseCurve.h"
#include "calc/ToldChance.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/ImpressionNames.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"
#include "commands/PlaceGiven.h"
#include "commands/ToldChanceWords.h"

namespace rackbook {

namespace {

const std::vector<std::string> rulesUsed = {
    "extenderRichShare", "skySunnyShare", "skyOvercastShare", "lightDose_sunnyDays",
    "lightDoseFactor",   "lookChance",    "returnedChance",   "looksToLearn"};

class Report {
public:
    Report(Console& console, const LightFacts& facts) : m_console(console), m_facts(facts) {}

    void print() {
        table();
        if (m_facts.impressions.size() + m_facts.notAffected.size() == 1) {
            const bool isAffected = !m_facts.impressions.empty();
            const LightHad& only =
                isAffected ? m_facts.impressions.front() : m_facts.notAffected.front();
            if (isAffected)
                stays(only.dose);
            layers(only);
        }
        if (!m_facts.notAffected.empty())
            say("Without an extender-rich layer, and not affected: " +
                namesOf(m_facts.notAffected) + ".");
        if (isAnyLeftOpenByDates())
            say("Not known: dates. Dates of pulls or moves are known so badly that they leave the "
                "light open; no chance follows from it.");
        say("An estimate from the sun's course over the studio, the skies, and what is recorded of "
            "the places: near ultraviolet (UV-A) on the face of the print. One sunny day hung up "
            "out of doors, twelve hours at the equinox, is " +
            roughly(m_facts.ledger.ultraviolet().sunnyDay_Whm2()) +
            " Wh/m² of it here; in sunny days the light is known better than in Wh/m², because "
            "what is wrong with the one is wrong with the other. What glass lets through is usual "
            "for its kind where it is not recorded. Whether a print is ready, rackbook ready "
            "says.");
        if (m_facts.givesRules)
            printHouseRules(m_console, m_facts.rules, rulesUsed);
        else
            m_console.out() << "Reckoned by the house rules; --why prints them.\n";
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    std::string namesOf(const std::vector<LightHad>& all) const {
        std::vector<std::uint32_t> impressions;
        for (const LightHad& one : all)
            impressions.push_back(
                static_cast<std::uint32_t>(m_facts.readiness.rows[one.row].impression));
        return rackbook::namesOf(impressions, m_facts.labels);
    }

    bool isAnyLeftOpenByDates() const {
        return std::any_of(
            m_facts.impressions.begin(), m_facts.impressions.end(), [&](const LightHad& had) {
                return toldChanceOf(m_facts.readiness.rows[had.row]) == ToldChance::datesTooWide;
            });
    }

    const ImpressionLabel& labelOf(const LightHad& had) const {
        const int impression = m_facts.readiness.rows[had.row].impression;
        return m_facts.labels[static_cast<std::size_t>(impression)];
    }

    // Impressions of which the same is to be said share a line.
    void table() {
        std::map<std::vector<std::string>, std::vector<LightHad>> lines;
        std::vector<std::vector<std::string>> inOrder;
        for (const LightHad& had : m_facts.impressions) {
            std::vector<std::string> cells = cellsOf(had);
            cells.insert(cells.begin(), labelOf(had).edition);
            if (lines[cells].empty())
                inOrder.push_back(cells);
            lines[cells].push_back({had.row, {}, {}});
        }
        Table table({{"impressions"},
                     {"last extender-rich layer"},
                     {"light in sunny days", Align::right},
                     {"chance that it is back", Align::right},
                     {"now at"}});
        for (const std::vector<std::string>& line : inOrder) {
            std::vector<std::string> row(line.begin() + 1, line.end());
            row.insert(row.begin(), namesOf(lines[line]));
            table.addRow(row);
        }
        m_console.out() << table.text(m_console.width(),
                                      "None of them has an extender-rich layer.");
    }

    std::vector<std::string> cellsOf(const LightHad& had) const {
        const ReadinessRow& row = m_facts.readiness.rows[had.row];
        return {layerWords(row.layer) + ", " + dayWords(row.pulled),
                roughly(had.dose.dose.sunnyDays), toldChanceWords(row, m_facts.history),
                placeWords(m_facts.history, row.place)};
    }

    std::string layerWords(int layer) const {
        return std::to_string(m_facts.history.layers[static_cast<std::size_t>(layer)].ordinal);
    }

    std::vector<std::string> doseCells(const LightDose& dose) const {
        return {roughly(dose.nearUltraviolet_Whm2), roughly(dose.sunnyDays)};
    }

    void stays(const DoseSince& dose) {
        m_console.out() << "\n" << m_console.emphasis("Stay by stay") << "\n";
        Table table(
            {{"from"}, {"to"}, {"at"}, {"UV-A Wh/m²", Align::right}, {"sunny days", Align::right}});
        for (const StayDose& stay : dose.stays) {
            std::vector<std::string> row = {momentWords(stay.from), momentWords(stay.to),
                                            placeWords(m_facts.history, stay.place) +
                                                (stay.interleaved ? ", interleaved" : "")};
            for (std::string& cell : doseCells(stay.dose))
                row.push_back(std::move(cell));
            table.addRow(row);
        }
        m_console.out() << table.text(m_console.width(), "Nothing is recorded since.");
    }

    void layers(const LightHad& had) {
        m_console.out() << "\n"
                        << m_console.emphasis("Layer by layer, since each was pulled") << "\n";
        Table table(
            {{"layer"}, {"pulled"}, {"UV-A Wh/m²", Align::right}, {"sunny days", Align::right}});
        for (const LayerLight& layer : had.layers) {
            std::vector<std::string> row = {layerWords(layer.layer), momentWords(layer.pulled)};
            for (std::string& cell : doseCells(layer.dose))
                row.push_back(std::move(cell));
            table.addRow(row);
        }
        m_console.out() << table.text(m_console.width(), "No pull of it is recorded.");
    }

    Console& m_console;
    const LightFacts& m_facts;
};

Tree treeOf(const LightDose& dose) {
    return Tree::object()
        .set("nearUltraviolet_Whm2", roundedTreeOf(dose.nearUltraviolet_Whm2))
        .set("sunnyDays", roundedTreeOf(dose.sunnyDays));
}

Tree placeTree(const History& history, int place) {
    return place < 0 ? Tree() : Tree(history.places[static_cast<std::size_t>(place)].id);
}

Tree staysTree(const DoseSince& dose, const History& history) {
    Tree stays = Tree::array();
    for (const StayDose& stay : dose.stays)
        stays.add(Tree::object()
                      .set("place", placeTree(history, stay.place))
                      .set("from", treeOf(stay.from))
                      .set("to", treeOf(stay.to))
                      .set("interleaved", stay.interleaved)
                      .set("dose", treeOf(stay.dose)));
    return stays;
}

Tree layersTree(const LightHad& had, const History& history) {
    Tree layers = Tree::array();
    for (const LayerLight& layer : had.layers)
        layers.add(Tree::object()
                       .set("layer", history.layers[static_cast<std::size_t>(layer.layer)].ordinal)
                       .set("pulled", treeOf(layer.pulled))
                       .set("dose", treeOf(layer.dose)));
    return layers;
}

// What a plot of the dose over time needs: the curve, where looks become worth making and the dose
// counts as enough, and what the looks found.
Tree plotTree(const LightFacts& facts, const ReadinessRow& row) {
    constexpr std::size_t mostPoints = 120;
    std::vector<Stay> stays;
    staysOf(facts.history, static_cast<std::size_t>(row.impression), facts.readiness.asOf, stays);
    Tree points = Tree::array();
    for (const DosePoint& point :
         doseCurveOf(facts.ledger, stays, row.pulled, facts.readiness.asOf, mostPoints))
        points.add(Tree::object()
                       .set("at", formatMinute(point.at))
                       .set("sunnyDays", roundedTreeOf(point.dose.sunnyDays)));
    Tree looks = Tree::array();
    const auto at = static_cast<std::size_t>(row.impression);
    const std::uint32_t* end = facts.history.looksOf.end(at);
    for (const std::uint32_t* i = facts.history.looksOf.begin(at); i != end; ++i) {
        const HistoryLook& look = facts.history.looks[*i];
        if (!look.hasColour || look.at.earliest <= row.pulled.latest ||
            look.at.earliest > facts.readiness.asOf)
            continue;
        looks.add(Tree::object()
                      .set("at", treeOf(look.at))
                      .set("colour", textOf(look.colour))
                      .set("sunnyDays", roundedTreeOf(facts.ledger
                                                          .sumSince(stays, row.pulled,
                                                                    std::min(look.at.latest,
                                                                             facts.readiness.asOf))
                                                          .sunnyDays)));
    }
    const ReturnChance& chance = row.wanted->chance;
    return Tree::object()
        .set("points", std::move(points))
        .set("looks", std::move(looks))
        .set("lookWorthMaking_sunnyDays",
             roundedToFive(chance.doseFor_sunnyDays(facts.rules.value("lookChance"))))
        .set("half_sunnyDays", roundedToFive(chance.doseFor_sunnyDays(0.5)))
        .set("enough_sunnyDays",
             roundedToFive(chance.doseFor_sunnyDays(facts.rules.value("returnedChance"))));
}

Tree hadTree(const LightFacts& facts, const LightHad& had, bool withPlot) {
    const ReadinessRow& row = facts.readiness.rows[had.row];
    Tree one = Tree::object();
    one.set("impression", facts.labels[static_cast<std::size_t>(row.impression)].id);
    if (row.pull >= 0) {
        one.set("layer", facts.history.layers[static_cast<std::size_t>(row.layer)].ordinal);
        one.set("pulled", treeOf(row.pulled)).set("dose", treeOf(had.dose.dose));
        setToldChance(one, row, facts.history);
        one.set("stays", staysTree(had.dose, facts.history));
        if (withPlot)
            one.set("plot", plotTree(facts, row));
    }
    one.set("layers", layersTree(had, facts.history));
    return one;
}

}  // namespace

void printLight(Console& console, const LightFacts& facts) {
    Report(console, facts).print();
}

Tree lightTree(const LightFacts& facts) {
    Tree report = newReport("light");
    report.set("on", formatDay(facts.readiness.asOf));
    report.set("sunnyDay_Whm2", roundedToFive(facts.ledger.ultraviolet().sunnyDay_Whm2()));
    const bool isOne = facts.impressions.size() == 1;
    Tree impressions = Tree::array();
    for (const LightHad& had : facts.impressions)
        impressions.add(hadTree(facts, had, isOne));
    report.set("impressions", std::move(impressions));
    Tree notAffected = Tree::array();
    for (const LightHad& had : facts.notAffected)
        notAffected.add(hadTree(facts, had, false));
    report.set("notAffected", std::move(notAffected));
    report.set("houseRules", treeOf(facts.rules, rulesUsed));
    return report;
}

}  // namespace rackbook
