#include "commands/LightReport.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

const std::vector<std::string> rulesUsed = {"extenderRichShare", "skySunnyShare",
                                            "skyOvercastShare"};

// Two digits that count.
std::string shortly(double value) {
    if (!(value > 0))
        return "0";
    const int decimals = std::max(0, 1 - static_cast<int>(std::floor(std::log10(value))));
    return formatFixed(value, std::min(decimals, 4));
}

// "21 (1.1–254)"; without a best value "1.1–254".
std::string estimateShortly(const Estimate& value) {
    const std::string bounds = shortly(value.low) + "–" + shortly(value.high);
    return value.isKnown() ? shortly(value.best) + " (" + bounds + ")" : bounds;
}

Estimate inSunnyDays(const Estimate& dose_Whm2, double sunnyDay_Whm2) {
    return {dose_Whm2.low / sunnyDay_Whm2, dose_Whm2.best / sunnyDay_Whm2,
            dose_Whm2.high / sunnyDay_Whm2};
}

std::string placeWords(const History& history, int place) {
    return place < 0 ? "not known" : history.places[static_cast<std::size_t>(place)].name;
}

class Report {
public:
    Report(Console& console, const LightFacts& facts) : m_console(console), m_facts(facts) {}

    void print() {
        table();
        if (m_facts.impressions.size() == 1)
            stays(m_facts.impressions.front().dose);
        if (!m_facts.notAffected.empty())
            say("Without an extender-rich layer, and not affected: " +
                namesOf(m_facts.notAffected) + ".");
        say("An estimate from the sun's course over the studio, usual skies, and what is recorded "
            "of the places: near ultraviolet (UV-A) on the face of the print. One sunny day hung "
            "up "
            "out of doors, twelve hours at the equinox, is " +
            shortly(m_facts.sunnyDay_Whm2) +
            " Wh/m² of it here. The weather of single days is not recorded, and what glass lets "
            "through is usual clear glass. Whether a print is ready, rackbook ready says; it "
            "counts "
            "days and looks.");
        printHouseRules(m_console, m_facts.rules, rulesUsed);
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    std::string namesOf(const std::vector<std::size_t>& rows) const {
        std::map<std::string, std::vector<int>> numbers;
        for (const std::size_t row : rows) {
            const ImpressionLabel& label = labelOf(row);
            numbers[label.edition].push_back(label.workingNumber);
        }
        std::vector<std::string> names;
        for (auto& [edition, its] : numbers) {
            std::sort(its.begin(), its.end());
            names.push_back(edition + ":" + formatRanges(its));
        }
        return joined(names);
    }

    const ImpressionLabel& labelOf(std::size_t row) const {
        return m_facts.labels[static_cast<std::size_t>(m_facts.readiness.rows[row].impression)];
    }

    // Impressions of which the same is to be said share a line.
    void table() {
        std::map<std::vector<std::string>, std::vector<std::size_t>> lines;
        std::vector<std::vector<std::string>> inOrder;
        for (const LightHad& had : m_facts.impressions) {
            std::vector<std::string> cells = cellsOf(had);
            cells.insert(cells.begin(), labelOf(had.row).edition);
            if (lines[cells].empty())
                inOrder.push_back(cells);
            lines[cells].push_back(had.row);
        }
        Table table({{"impressions"},
                     {"last extender-rich layer"},
                     {"UV-A Wh/m²", Align::right},
                     {"in sunny days", Align::right},
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
        const HistoryLayer& layer = m_facts.history.layers[static_cast<std::size_t>(row.layer)];
        const Estimate days = inSunnyDays(had.dose.dose_Whm2, m_facts.sunnyDay_Whm2);
        return {std::to_string(layer.ordinal) + ", " + dayWords(row.pulled),
                estimateShortly(had.dose.dose_Whm2), estimateShortly(days),
                placeWords(m_facts.history, row.place)};
    }

    void stays(const DoseSince& dose) {
        m_console.out() << "\n" << m_console.emphasis("Stay by stay") << "\n";
        Table table({{"from"}, {"to"}, {"at"}, {"UV-A Wh/m²", Align::right}});
        for (const StayDose& stay : dose.stays)
            table.addRow({momentWords(stay.from), momentWords(stay.to),
                          placeWords(m_facts.history, stay.place) +
                              (stay.interleaved ? ", interleaved" : ""),
                          estimateShortly(stay.dose_Whm2)});
        m_console.out() << table.text(m_console.width(), "Nothing is recorded since.");
    }

    Console& m_console;
    const LightFacts& m_facts;
};

}  // namespace

void printLight(Console& console, const LightFacts& facts) {
    Report(console, facts).print();
}

Tree lightTree(const LightFacts& facts) {
    Tree report = newReport("light");
    report.set("on", formatDay(facts.readiness.asOf));
    report.set("sunnyDay_Whm2", facts.sunnyDay_Whm2);
    Tree impressions = Tree::array();
    for (const LightHad& had : facts.impressions) {
        const ReadinessRow& row = facts.readiness.rows[had.row];
        Tree one = Tree::object();
        one.set("impression", facts.labels[static_cast<std::size_t>(row.impression)].id);
        one.set("layer", facts.history.layers[static_cast<std::size_t>(row.layer)].ordinal);
        one.set("pulled", treeOf(row.pulled));
        one.set("nearUltraviolet_Whm2", treeOf(had.dose.dose_Whm2));
        Tree stays = Tree::array();
        for (const StayDose& stay : had.dose.stays) {
            Tree its = Tree::object();
            its.set("place",
                    stay.place < 0
                        ? Tree()
                        : Tree(facts.history.places[static_cast<std::size_t>(stay.place)].id));
            its.set("from", treeOf(stay.from)).set("to", treeOf(stay.to));
            its.set("interleaved", stay.interleaved);
            its.set("nearUltraviolet_Whm2", treeOf(stay.dose_Whm2));
            stays.add(std::move(its));
        }
        one.set("stays", std::move(stays));
        impressions.add(std::move(one));
    }
    report.set("impressions", std::move(impressions));
    Tree notAffected = Tree::array();
    for (const std::size_t row : facts.notAffected)
        notAffected.add(
            facts.labels[static_cast<std::size_t>(facts.readiness.rows[row].impression)].id);
    report.set("notAffected", std::move(notAffected));
    report.set("houseRules", treeOf(facts.rules, rulesUsed));
    return report;
}

}  // namespace rackbook
