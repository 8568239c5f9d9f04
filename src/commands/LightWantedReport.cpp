#include "commands/LightWantedReport.h"

#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/ImpressionNames.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"

namespace rackbook {

namespace {

const std::vector<std::string> rulesUsed = {
    "extenderRichShare", "lightDays",    "lightDose_sunnyDays", "lightDoseFactor",
    "returnedChance",    "looksToLearn", "colourTolerance_dE00"};

std::string groupWords(const InkLikeness& alike, const std::vector<std::string>& lotIds) {
    static constexpr const char* shares[] = {"less than 90 % base", "90 to 95 % base",
                                             "95 % base or more"};
    std::vector<std::string> parts;
    if (alike.baseLot >= 0)
        parts.push_back("base of " + lotIds[static_cast<std::size_t>(alike.baseLot)]);
    if (alike.byDrier && alike.drier != LightRule::drierNotKnown)
        parts.push_back(alike.drier == LightRule::withDrier ? "with drier" : "without drier");
    if (alike.byShare)
        parts.push_back(shares[alike.shareBand]);
    return parts.empty() ? "all extender-rich inks" : joined(parts);
}

const char* answerWords(DecayAnswer answer) {
    switch (answer) {
        case DecayAnswer::told:
            return "";
        case DecayAnswer::tooFewDoses:
            return "it takes three readings or more before the last, with light in between";
        case DecayAnswer::wantedIsNoise:
            return "readings cannot tell so small a difference";
        case DecayAnswer::alreadyBelow:
            return "it was no farther off from the first reading on";
        case DecayAnswer::noFall:
            return "no fall is seen";
    }
    return "";
}

class Report {
public:
    Report(Console& console, const LightWantedFacts& facts) : m_console(console), m_facts(facts) {}

    void print() {
        groups();
        looks();
        decays();
        say("Light in sunny days of twelve hours hung up out of doors, by estimate: of near "
            "ultraviolet since the last extender-rich layer. Half back by: the light after which "
            "half of such prints have their colour again, and beside it the light for " +
            percentWords(Estimate::exactly(m_facts.rules.value("returnedChance"))) +
            " of them. Not all prints want the same: most come back near the middle, a few only "
            "after several times as much. While little is known, the house rules weigh in, the "
            "less the more batches there are. A batch is the prints of one pull that hung and "
            "were looked at together; it counts once.");
        if (m_facts.givesRules)
            printHouseRules(m_console, m_facts.rules, rulesUsed);
        else
            m_console.out() << "Reckoned by the house rules; --why prints them.\n";
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    void groups() {
        const double share = m_facts.rules.value("returnedChance");
        Table table({{"inks"},
                     {"batches", Align::right},
                     {"half back by"},
                     {percentWords(Estimate::exactly(share)) + " back by"},
                     {""}});
        for (const LightWantedGroup& group : m_facts.wanted.groups())
            table.addRow({groupWords(group.alike, m_facts.lotIds), std::to_string(group.count),
                          roughly(group.threshold.quantile_sunnyDays(0.5)),
                          roughly(group.threshold.quantile_sunnyDays(share)),
                          group.isLearnt ? "learnt" : "too few batches: house rules weigh in"});
        m_console.out() << table.text(m_console.width(), "");
    }

    void looks() {
        m_console.out() << "\n" << m_console.emphasis("Looks") << "\n";
        Table table(
            {{"prints"}, {"not yet true", Align::right}, {"true", Align::right}, {"looks on"}});
        for (const ReturnLook& look : m_facts.wanted.looks())
            table.addRow({namesOf(look.impressions, m_facts.labels),
                          look.notYetLook < 0 ? "" : roughly(look.observed.low_sunnyDays),
                          look.trueLook < 0 ? "" : roughly(look.observed.high_sunnyDays),
                          daysOf(look)});
        m_console.out() << table.text(m_console.width(),
                                      "No look at an extender-rich print tells anything yet.");
    }

    std::string daysOf(const ReturnLook& look) const {
        std::vector<std::string> days;
        for (const int row : {look.notYetLook, look.trueLook})
            if (row >= 0)
                days.push_back(
                    formatDay(m_facts.history.looks[static_cast<std::size_t>(row)].at.earliest));
        return joined(days);
    }

    void decays() {
        if (m_facts.decays.empty())
            return;
        const std::string wanted = formatShortest(m_facts.rules.value("colourTolerance_dE00"));
        m_console.out() << "\n" << m_console.emphasis("Readings over time") << "\n";
        Table table({{"print"},
                     {"readings", Align::right},
                     {"off at first, ΔE00", Align::decimal},
                     {"less than " + wanted + " from"},
                     {""}});
        for (const ReadingDecay& one : m_facts.decays) {
            const bool isTold = one.decay.answer == DecayAnswer::told;
            const ImpressionLabel& label = m_facts.labels[one.impression];
            table.addRow(
                {label.edition + ":" + std::to_string(label.workingNumber),
                 std::to_string(one.points.size() + 1),
                 std::isnan(one.decay.start_dE00) ? "" : formatFixed(one.decay.start_dE00, 1),
                 isTold ? roughly(one.decay.enough_sunnyDays) : "", answerWords(one.decay.answer)});
        }
        m_console.out() << table.text(m_console.width(), "");
        say("How far each was from its last reading, which stands for the final colour.");
    }

    Console& m_console;
    const LightWantedFacts& m_facts;
};

Tree numberOrNull(double value) {
    return std::isfinite(value) ? Tree(roundedToFive(value)) : Tree();
}

// The fitted curve with the interval that holds it in nine cases of ten.
Tree curveTree(const LightWantedGroup& group) {
    constexpr int points = 60;
    const double first = group.threshold.quantile_sunnyDays(0.01).best;
    const double last = group.threshold.quantile_sunnyDays(0.99).best;
    Tree curve = Tree::array();
    for (int i = 0; i <= points; ++i) {
        const double dose = first * std::pow(last / first, static_cast<double>(i) / points);
        curve.add(Tree::object()
                      .set("sunnyDays", roundedToFive(dose))
                      .set("returned", roundedTreeOf(group.threshold.probabilityBy(dose))));
    }
    return curve;
}

Tree groupTree(const LightWantedFacts& facts, const LightWantedGroup& group) {
    Tree one = Tree::object();
    one.set("inks", groupWords(group.alike, facts.lotIds));
    one.set("looks", static_cast<int>(group.count)).set("learnt", group.isLearnt);
    const ThresholdCurve& curve = group.threshold.curve();
    one.set("medianLog", roundedToFive(curve.location_log))
        .set("widthLog", roundedToFive(curve.scale_log));
    one.set("half_sunnyDays", roundedTreeOf(group.threshold.quantile_sunnyDays(0.5)));
    one.set("most_sunnyDays",
            roundedTreeOf(group.threshold.quantile_sunnyDays(facts.rules.value("returnedChance"))));
    one.set("curve", curveTree(group));
    return one;
}

Tree lookTree(const LightWantedFacts& facts, const ReturnLook& look) {
    Tree prints = Tree::array();
    for (const std::uint32_t impression : look.impressions)
        prints.add(facts.labels[impression].id);
    return Tree::object()
        .set("impressions", std::move(prints))
        .set("notYet_sunnyDays",
             look.notYetLook < 0 ? Tree() : Tree(roundedToFive(look.observed.low_sunnyDays)))
        .set("true_sunnyDays",
             look.trueLook < 0 ? Tree() : Tree(roundedToFive(look.observed.high_sunnyDays)));
}

Tree decayTree(const LightWantedFacts& facts, const ReadingDecay& one) {
    Tree points = Tree::array();
    for (const DecayPoint& point : one.points)
        points.add(Tree::object()
                       .set("sunnyDays", roundedToFive(point.dose_sunnyDays))
                       .set("dE00", roundedToFive(point.fromFinal_dE00)));
    const bool isTold = one.decay.answer == DecayAnswer::told;
    return Tree::object()
        .set("impression", facts.labels[one.impression].id)
        .set("finalReading", one.finalReading)
        .set("points", std::move(points))
        .set("start_dE00", numberOrNull(one.decay.start_dE00))
        .set("scale_sunnyDays", numberOrNull(one.decay.scale_sunnyDays))
        .set("enough_sunnyDays", isTold ? roundedTreeOf(one.decay.enough_sunnyDays) : Tree())
        .set("why", answerWords(one.decay.answer));
}

}  // namespace

void printLightWanted(Console& console, const LightWantedFacts& facts) {
    Report(console, facts).print();
}

Tree lightWantedTree(const LightWantedFacts& facts) {
    Tree report = newReport("light-wanted");
    report.set("on", formatDay(facts.asOf));
    Tree groups = Tree::array();
    for (const LightWantedGroup& group : facts.wanted.groups())
        groups.add(groupTree(facts, group));
    Tree looks = Tree::array();
    for (const ReturnLook& look : facts.wanted.looks())
        looks.add(lookTree(facts, look));
    Tree decays = Tree::array();
    for (const ReadingDecay& one : facts.decays)
        decays.add(decayTree(facts, one));
    report.set("groups", std::move(groups)).set("looks", std::move(looks));
    report.set("readings", std::move(decays));
    report.set("houseRules", treeOf(facts.rules, rulesUsed));
    return report;
}

}  // namespace rackbook
