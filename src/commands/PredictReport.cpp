#include "commands/PredictReport.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/Numbers.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/ColourWords.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

const std::vector<std::string> rulesUsed = {"filmWeightUncertainty", "surfaceOuterReflection",
                                            "surfaceInnerReflection"};

std::vector<std::string> labCells(const Bands& bands) {
    const Lab lab = labOf(bands, ViewingLight::D50);
    return {formatFixed(lab.l, 1), formatFixed(lab.a, 1), formatFixed(lab.b, 1)};
}

class Report {
public:
    Report(Console& console, const InkBook& ink, const Prediction& prediction)
        : m_console(console), m_ink(ink), m_prediction(prediction) {}

    void print() {
        printHeading(m_console, "Predicted under D50: " + m_prediction.words);
        printWrapped(m_console, "Over " + m_prediction.paper.words + " (reading " +
                                    m_prediction.paper.reading + ")");
        table("Each alone over the paper", &PredictedFilm::alone, true);
        if (m_prediction.films.size() > 1 && anyIsKnown())
            table("In printing order, over all before", &PredictedFilm::onTop, false);
        for (const PredictedFilm& film : m_prediction.films)
            if (!film.unknown.empty())
                say(film.words + ": " + film.unknown);
        if (m_prediction.films.size() == 1 && m_prediction.films.front().unknown.empty())
            say(spreadSentence(m_ink, m_prediction.films.front().spread));
        else if (anyIsKnown())
            say("Give or take: twice the standard uncertainty from the film weight, from weighing "
                "and from how well its inks are known by their drawdowns, in ΔE00; an estimate.");
        sayUnchecked();
        for (const std::string& note : m_prediction.notes)
            say(note);
        printHouseRules(m_console, m_ink.rules, rulesUsed);
    }

private:
    // Of several films, what the sentence of a single one says of its lots.
    void sayUnchecked() {
        std::set<int> unchecked;
        std::set<int> clear;
        for (const PredictedFilm& film : m_prediction.films) {
            unchecked.insert(film.spread.uncheckedLots.begin(), film.spread.uncheckedLots.end());
            clear.insert(film.spread.takenAsClear.begin(), film.spread.takenAsClear.end());
        }
        if (m_prediction.films.size() < 2)
            return;
        if (!unchecked.empty())
            say("Could not be checked, and counted as the worst known ink: " + idsOf(unchecked) +
                ".");
        if (!clear.empty())
            say("Never measured, and taken as clear: " + idsOf(clear) + ".");
    }

    std::string idsOf(const std::set<int>& lots) const {
        std::vector<std::string> ids;
        for (const int lot : lots)
            ids.push_back(lotAt(m_ink, lot).id);
        return joined(ids);
    }

    bool anyIsCompared() const {
        return std::any_of(
            m_prediction.films.begin(), m_prediction.films.end(),
            [](const PredictedFilm& film) { return film.recorded_dE00.has_value(); });
    }

    bool anyIsKnown() const {
        return std::any_of(m_prediction.films.begin(), m_prediction.films.end(),
                           [](const PredictedFilm& film) { return film.unknown.empty(); });
    }

    void say(const std::string& words) { printParagraph(m_console, words); }

    void table(const std::string& heading, Bands PredictedFilm::*bands, bool isAlone) {
        m_console.out() << "\n" << m_console.emphasis(heading) << "\n";
        std::vector<Column> columns = {
            {"film"}, {"L*", Align::decimal}, {"a*", Align::decimal}, {"b*", Align::decimal}};
        columns.push_back({"give or take", Align::decimal});
        if (isAlone) {
            columns.push_back({"g/m²", Align::decimal});
            if (anyIsCompared())
                columns.push_back({"from its reading ΔE00", Align::decimal});
        }
        Table rows(columns);
        for (const PredictedFilm& film : m_prediction.films)
            rows.addRow(rowOf(film, film.*bands, isAlone));
        m_console.out() << rows.text(m_console.width(), "");
    }

    std::vector<std::string> rowOf(const PredictedFilm& film, const Bands& bands,
                                   bool isAlone) const {
        std::vector<std::string> row = {film.words};
        const bool isKnown = film.unknown.empty() && (isAlone || film.hasOnTop);
        const std::vector<std::string> lab =
            isKnown ? labCells(bands) : std::vector<std::string>{"not known", "", ""};
        row.insert(row.end(), lab.begin(), lab.end());
        const double spread_dE00 = isAlone ? film.spread.together_dE00 : film.onTop_dE00;
        row.push_back(isKnown ? giveOrTakeWords(spread_dE00) : "");
        if (isAlone) {
            row.push_back(isKnown ? formatFixed(film.film.least_gm2, 1) : "");
            if (anyIsCompared())
                row.push_back(film.recorded_dE00 ? formatFixed(*film.recorded_dE00, 2) : "");
        }
        return row;
    }

    Console& m_console;
    const InkBook& m_ink;
    const Prediction& m_prediction;
};

}  // namespace

void printPrediction(Console& console, const InkBook& ink, const Prediction& prediction) {
    Report(console, ink, prediction).print();
}

void addPrediction(Tree& report, const InkBook& ink, const Prediction& prediction) {
    report.set("what", prediction.words);
    report.set("paper", prediction.paper.words).set("paperReading", prediction.paper.reading);
    Tree films = Tree::array();
    for (const PredictedFilm& film : prediction.films) {
        Tree one = Tree::object();
        one.set("film", film.words);
        one.set("unknown", film.unknown.empty() ? Tree() : Tree(film.unknown));
        if (film.unknown.empty()) {
            one.set("shares", treeOf(ink, film.shares));
            one.set("filmWeight_gm2", film.film.least_gm2);
            one.set("aloneLab_D50", treeOf(labOf(film.alone, ViewingLight::D50)));
            one.set("aloneSpectrum", treeOf(film.alone));
            one.set("onTopLab_D50",
                    film.hasOnTop ? treeOf(labOf(film.onTop, ViewingLight::D50)) : Tree());
            one.set("onTopSpectrum", film.hasOnTop ? treeOf(film.onTop) : Tree());
            one.set("spread", treeOf(ink, film.spread))
                .set("onTop_dE00", film.hasOnTop ? Tree(film.onTop_dE00) : Tree());
        }
        one.set("recordedReading", film.reading.empty() ? Tree() : Tree(film.reading));
        one.set("recordedLab_D50", film.recorded_D50 ? treeOf(*film.recorded_D50) : Tree());
        one.set("recorded_dE00", film.recorded_dE00 ? Tree(*film.recorded_dE00) : Tree());
        films.add(std::move(one));
    }
    report.set("films", std::move(films));
    report.set("warnings", textsTree(prediction.notes))
        .set("houseRules", treeOf(ink.rules, rulesUsed));
}

}  // namespace rackbook
