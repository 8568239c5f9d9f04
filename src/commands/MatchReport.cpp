#include "commands/MatchReport.h"

#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/Cautions.h"
#include "commands/ColourWords.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

const std::vector<std::string> rulesUsed = {"filmWeightUncertainty", "surfaceOuterReflection",
                                            "surfaceInnerReflection", "colourTolerance_dE00"};

std::string orNothing(const std::optional<double>& value) {
    return value ? formatFixed(*value, 2) : "";
}

class Report {
public:
    Report(Console& console, const InkBook& ink, const Match& match)
        : m_console(console), m_ink(ink), m_match(match) {}

    void print() {
        heading();
        recipes();
        laidOut();
        weighing();
        say("Nothing of this is certain before a drawdown: mix a little, draw it down at this film "
            "weight on this paper, let it hang until its colour has returned, measure it, and ask "
            "rackbook shade what to add.");
        say(inkCaution);
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    void heading() {
        const MatchWanted& wanted = m_match.wanted;
        printHeading(m_console, "To match " + wanted.aim.words);
        Table table({{""}, {""}});
        table.addRow({"colour under D50", labWords(m_match.target.lab_D50)});
        table.addRow({"matched by", byWords()});
        table.addRow({"over", wanted.paper.words + " (reading " + wanted.paper.reading + ")"});
        table.addRow({"film weight", wanted.film.words});
        if (wanted.base >= 0)
            table.addRow({"let down in", lotWords(lotAt(m_ink, wanted.base))});
        for (const LotShare& part : wanted.held)
            table.addRow({"with", formatShortest(std::round(part.share * 1e5) / 1e3) + " % " +
                                      lotWords(lotAt(m_ink, part.lot))});
        table.addRow({"from", lotNames(m_match.colours)});
        for (const LotNotTaken& lot : m_match.notTaken)
            table.addRow({"not", lotAt(m_ink, lot.lot).id + ": " + lot.why});
        m_console.out() << withoutHead(table.text(m_console.width(), ""));
    }

    std::string byWords() const {
        const ColourAim& aim = m_match.wanted.aim;
        if (aim.reading.empty())
            return "what is predicted from what it is made of; no reading";
        return (m_match.target.reflectance ? "the spectrum of reading "
                                           : "CIELAB under D50 alone, of reading ") +
               aim.reading;
    }

    // A list of two columns needs no headings.
    static std::string withoutHead(const std::string& table) {
        const std::size_t rule = table.find('\n');
        return table.substr(table.find('\n', rule + 1) + 1);
    }

    std::string lotNames(const std::vector<int>& lots) const {
        std::vector<std::string> names;
        for (const int lot : lots)
            names.push_back(lotAt(m_ink, lot).id);
        return joined(names);
    }

    void recipes() {
        m_console.out() << "\n" << m_console.emphasis("Recipes") << "\n";
        const bool hasSpectrum = m_match.target.reflectance.has_value();
        std::vector<Column> columns = {
            {""}, {"ΔE00", Align::decimal}, {"give or take", Align::decimal}};
        if (hasSpectrum) {
            columns.push_back({"under A", Align::decimal});
            columns.push_back({"FL11", Align::decimal});
        }
        columns.push_back({"colours"});
        columns.push_back({"base %", Align::decimal});
        if (isFilmFree())
            columns.push_back({"g/m²", Align::decimal});
        columns.push_back({"opacity %", Align::decimal});
        columns.push_back({costHeading(), Align::decimal});
        Table table(columns);
        for (std::size_t i = 0; i < m_match.found.size(); ++i)
            table.addRow(recipeRow(i, hasSpectrum));
        m_console.out() << table.text(m_console.width(), "");
        say(std::string("ΔE00 is that under D50") +
            (hasSpectrum ? "; A is a filament lamp, FL11 a fluorescent one" : "") +
            ". Where two recipes differ by less than their give or take, nothing that is known "
            "tells "
            "which is nearer: choose by opacity, by what is in the tins, by cost.");
    }

    std::string costHeading() const {
        return "100 g" + (m_ink.studio.currency ? ", " + *m_ink.studio.currency : "");
    }

    bool isFilmFree() const {
        return m_match.wanted.film.greatest_gm2 > m_match.wanted.film.least_gm2;
    }

    std::vector<std::string> recipeRow(std::size_t position, bool hasSpectrum) const {
        const MatchFound& found = m_match.found[position];
        std::vector<std::string> row = {std::to_string(position + 1),
                                        formatFixed(found.miss.underD50_dE00, 2),
                                        giveOrTakeWords(m_match.spreads[position].together_dE00)};
        if (hasSpectrum) {
            row.push_back(orNothing(found.miss.underA_dE00));
            row.push_back(orNothing(found.miss.underFL11_dE00));
        }
        row.push_back(shareWords(m_ink, found.shares, LotKind::ink));
        row.push_back(formatFixed(100 * shareOfKind(m_ink, found.shares, LotKind::base), 2));
        if (isFilmFree())
            row.push_back(formatFixed(found.filmWeight_gm2, 1));
        row.push_back(formatFixed(100 * found.opacity, 0));
        const double cost = m_match.cost[position];
        row.push_back(std::isnan(cost) ? "not known" : formatFixed(cost, 2));
        return row;
    }

    void laidOut() {
        const MatchFound& found = m_match.laidOut;
        say("Recipe " + std::to_string(m_match.wanted.recipe + 1) +
            (m_match.weighing ? ", weighed as below," : "") + " is predicted to come out at " +
            labWords(labOf(found.predicted, ViewingLight::D50)) + ", ΔE00 " +
            formatFixed(found.miss.underD50_dE00, 2) + " from the colour. " +
            spreadSentence(m_ink, m_match.laidOutSpread));
        for (const std::string& warning : m_match.warnings)
            say(warning);
        const RuleInForce& rule = m_ink.rules.rule("colourTolerance_dE00");
        if (found.miss.underD50_dE00 > rule.value)
            say("That is further off than the studio's tolerance of ΔE00 " +
                formatShortest(rule.value) + " (" + originWords(rule) +
                "): with these lots, this paper, this film weight and what else was asked for, the "
                "colour is out of reach.");
    }

    void weighing() {
        const MatchWanted& wanted = m_match.wanted;
        if (!m_match.weighing) {
            say("For the weighing, ask again with --mass, such as --mass 60.");
            return;
        }
        m_console.out() << "\n"
                        << m_console.emphasis(
                               printable(formatShortest(std::round(*wanted.mass_g * 1000) / 1000) +
                                         " g of recipe " + std::to_string(wanted.recipe + 1)))
                        << "\n";
        printBalance(m_console, *m_match.weighing, wanted.balance->words,
                     wanted.balance->capacity_g);
        for (const Addition& lot : m_match.shortages)
            say("It takes " + formatFixed(lot.mass_g, 1) + " g of " +
                lotWords(lotAt(m_ink, lot.lot)) + ", more than the book says is left.");
        printWeighing(m_console, m_ink, *m_match.weighing);
    }

    Console& m_console;
    const InkBook& m_ink;
    const Match& m_match;
};

}  // namespace

void printMatch(Console& console, const InkBook& ink, const Match& match) {
    Report(console, ink, match).print();
}

void addMatch(Tree& report, const InkBook& ink, const Match& match) {
    const MatchWanted& wanted = match.wanted;
    report.set("target", wanted.aim.words);
    report.set("by", wanted.aim.reading.empty() ? "prediction"
                     : match.target.reflectance ? "spectrum"
                                                : "CIELAB");
    report.set("targetReading", wanted.aim.reading.empty() ? Tree() : Tree(wanted.aim.reading));
    report.set("targetLab_D50", treeOf(match.target.lab_D50));
    report.set("targetSpectrum",
               match.target.reflectance ? treeOf(*match.target.reflectance) : Tree());
    report.set("paper", wanted.paper.words).set("paperReading", wanted.paper.reading);
    report.set("filmUncertainty_share", wanted.film.uncertainty_share);
    Tree recipes = Tree::array();
    for (std::size_t i = 0; i < match.found.size(); ++i) {
        const MatchFound& found = match.found[i];
        Tree one = Tree::object();
        one.set("shares", treeOf(ink, found.shares)).set("filmWeight_gm2", found.filmWeight_gm2);
        one.set("dE00", treeOf(found.miss)).set("spread", treeOf(ink, match.spreads[i]));
        one.set("opacity", found.opacity);
        one.set("predictedLab_D50", treeOf(labOf(found.predicted, ViewingLight::D50)));
        one.set("predictedSpectrum", treeOf(found.predicted));
        one.set("costOf100g", std::isnan(match.cost[i]) ? Tree() : Tree(match.cost[i]));
        recipes.add(std::move(one));
    }
    report.set("recipes", std::move(recipes));
    report.set("recipeLaidOut", wanted.recipe + 1);
    report.set("laidOutLab_D50", treeOf(labOf(match.laidOut.predicted, ViewingLight::D50)));
    report.set("laidOut_dE00", treeOf(match.laidOut.miss));
    report.set("laidOutSpread", treeOf(ink, match.laidOutSpread));
    report.set("currency", ink.studio.currency ? Tree(*ink.studio.currency) : Tree());
    Tree notTaken = Tree::array();
    for (const LotNotTaken& lot : match.notTaken)
        notTaken.add(Tree::object().set("lot", lotAt(ink, lot.lot).id).set("why", lot.why));
    report.set("lotsNotTaken", std::move(notTaken));
    Tree weighing = Tree::object();
    if (match.weighing)
        addWeighing(weighing, ink, *match.weighing);
    report.set("weighing", match.weighing ? std::move(weighing) : Tree());
    report.set("warnings", textsTree(match.warnings));
    report.set("houseRules", treeOf(ink.rules, rulesUsed));
}

}  // namespace rackbook
