#include "commands/ForecastReport.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "calc/ToldChance.h"
#include "calc/Wording.h"
#include "cli/Table.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"
#include "commands/PlaceGiven.h"
#include "commands/ReadyReport.h"
#include "commands/ToldChanceWords.h"

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

bool isPassed(const ReadinessRow& row, GateKind kind) {
    return row.gates[static_cast<std::size_t>(kind)].state == GateState::passed;
}

bool needsLight(const ReadinessRow& row, GateKind kind) {
    return row.gates[static_cast<std::size_t>(kind)].need == GateNeed::light;
}

class Report {
public:
    Report(Console& console, const ForecastFacts& facts) : m_console(console), m_facts(facts) {}

    void print() {
        for (const ForecastGroup& group : m_facts.plan.groups) {
            printGroup(group);
            m_console.out() << "\n";
        }
        if (m_facts.plan.groups.empty())
            m_console.out() << "No impression is waiting for light.\n";
        if (m_facts.plan.notConcerned > 0)
            m_console.out() << m_facts.plan.notConcerned
                            << " ready or not affected are not listed.\n";
        if (m_facts.plan.notKnown > 0)
            m_console.out()
                << m_facts.plan.notKnown
                << " of which too little is known are not listed; rackbook ready says what is "
                   "missing.\n";
        if (!m_facts.plan.groups.empty())
            say(captionWords());
        if (m_facts.givesRules)
            printHouseRules(m_console, m_facts.rules, rulesUsed);
        else if (!m_facts.plan.groups.empty())
            m_console.out() << "Judged by the house rules; --why prints them.\n";
    }

private:
    void say(const std::string& words) { printParagraph(m_console, words); }

    CivilMinute asOf() const { return m_facts.readiness.asOf; }

    void printGroup(const ForecastGroup& group) {
        const ReadinessRow& row = m_facts.readiness.rows[group.sample];
        m_console.out() << m_console.emphasis(printable(group.edition + " " +
                                                        formatRanges(group.numbers) + ": " +
                                                        saidVerdict(row.verdict)))
                        << "\n";
        std::string had = "Now at " + placeWords(m_facts.history, row.place) +
                          (group.isInterleaved ? ", interleaved" : "") + "; " +
                          daysWords(row.daysLow, row.daysHigh) + " in light of " +
                          formatShortest(row.daysNeeded);
        if (row.dose.sunnyDays.isKnown())
            had += ", worth " + roughly(row.dose.sunnyDays) + " sunny days";
        say(had + ".");
        switch (toldChanceOf(row)) {
            case ToldChance::foundTrue:
                sayFoundTrue(group, row);
                return;
            case ToldChance::datesTooWide:
                say("No forecast: dates of pulls or moves are known so badly that they leave its "
                    "light so far open.");
                return;
            case ToldChance::lightNotKnown:
                sayWhenToLook(row, "A look", "The next look");
                sayLightNotKnown();
                return;
            case ToldChance::told:
                break;
        }
        sayWhenToLook(row, "A look", "The next look");
        const double byRule = m_facts.rules.value("lookChance");
        (lookChanceFor(row.looks, byRule) > byRule ? m_hasRaised : m_hasPlain) = true;
        Table table({{"hanging at"}, {"a look from"}, {"half back by"}, {"most back by"}});
        for (const PlaceForecast& one : group.at)
            table.addRow({hangingWords(one), dayWordsOf(one.days.early, asOf()),
                          dayWordsOf(one.days.likely, asOf()), dayWordsOf(one.days.late, asOf())});
        printTable(table);
    }

    void printTable(Table& table) {
        m_console.out() << table.text(m_console.width(),
                                      "No rack or wall of the studio is recorded as lit.");
    }

    void sayWhenToLook(const ReadinessRow& row, const std::string& now, const std::string& later) {
        if (row.verdict != Verdict::lookDue)
            return;
        const CivilMinute from = std::max(nextLookFrom(row, m_facts.rules), asOf());
        say(from <= asOf() ? now + " is due now."
                           : later + " may be made from " + formatDay(from) + " on.");
    }

    void sayLightNotKnown() {
        say("No forecast: its light so far is not known. rackbook ready --why says what is "
            "missing.");
    }

    // What looks found goes before any chance; what they leave to be done is told instead.
    void sayFoundTrue(const ForecastGroup& group, const ReadinessRow& row) {
        say(foundTrueWords(row, m_facts.history));
        const bool isSettled = isPassed(row, GateKind::colour);
        const bool wantsDose = needsLight(row, GateKind::dose);
        const bool wantsDays = needsLight(row, GateKind::light);
        if ((wantsDose || wantsDays) && !row.dose.sunnyDays.isKnown()) {
            sayLightNotKnown();
        } else if (wantsDose || (wantsDays && !isSettled)) {
            m_hasLookOnly = true;
            Table table({{"hanging at"}, {isSettled ? "light enough by" : "another look from"}});
            for (const PlaceForecast& one : group.at)
                table.addRow({hangingWords(one), dayWordsOf(one.days.early, asOf())});
            printTable(table);
        } else if (wantsDays) {
            const auto missing =
                static_cast<std::int64_t>(std::ceil(row.daysNeeded - row.daysLow - 1e-9));
            say("Hanging in light, its days are done by " +
                formatDay((dayOf(asOf()) + missing) * minutesPerDay) + ".");
        } else if (isSettled) {
            say("What is missing is a look that finds it dry.");
        } else if (row.verdict == Verdict::lookDue) {
            sayWhenToLook(row, "Another look", "Another look");
        } else {
            const CivilMinute from = nextLookFrom(row, m_facts.rules);
            say("Another look counts " +
                (from <= asOf() ? std::string("now") : "from " + formatDay(from) + " on") +
                (row.verdict == Verdict::unknown
                     ? "; rackbook ready --why says what else is missing."
                     : "."));
        }
    }

    std::string hangingWords(const PlaceForecast& one) const {
        return placeWords(m_facts.history, one.place) + (one.isInterleavedHere
                                                             ? ", with the interleaving taken off"
                                                         : one.isHere ? ", as now"
                                                                      : "");
    }

    std::string chanceWords(double chance) const { return percentWords(Estimate::exactly(chance)); }

    // From when on a look may be worth making, for the rows that are shown.
    std::string lookWords() const {
        const double byRule = m_facts.rules.value("lookChance");
        ColourLooks notTrue;
        notTrue.any = true;
        const std::string raised = chanceWords(lookChanceFor(notTrue, byRule));
        const std::string why =
            "the next is worth making when it is likelier than not to find it "
            "so, on the day by which half are back";
        const std::string days = " that the colour is back, and its days in light";
        if (!m_hasRaised)
            return "a chance of " + chanceWords(byRule) + days;
        if (!m_hasPlain)
            return "a chance of " + raised + days + ": where the last look did not find it true, " +
                   why;
        return "a chance of " + chanceWords(byRule) + days + "; " + raised +
               " where the last look did not find it true, because " + why;
    }

    std::string captionWords() const {
        const std::string settled = "Whether one is ready, looks decide.";
        const bool hasChances = m_hasPlain || m_hasRaised;
        if (!hasChances && !m_hasLookOnly)
            return settled;
        std::string words = "Estimates, from " + formatDay(asOf()) +
                            " on, through the season's sun and usual skies";
        if (hasChances)
            words += ": from when on a look may be worth making (" + lookWords() +
                     "), when half of such prints have their colour back, and when most have (" +
                     chanceWords(m_facts.rules.value("returnedChance")) + ")";
        words += ". ";
        if (m_hasLookOnly)
            words +=
                "Where the colour was found true, another look counts once its days in light "
                "are over, looks lie far enough apart, and its light is not too little to "
                "tell (a chance of " +
                chanceWords(m_facts.rules.value("lookChance")) + "). ";
        return words + settled;
    }

    Console& m_console;
    const ForecastFacts& m_facts;
    // What the tables shown hold: looks by the rule's chance, by a higher one after a look that did
    // not find the colour true, and where it was found true.
    bool m_hasPlain = false;
    bool m_hasRaised = false;
    bool m_hasLookOnly = false;
};

Tree dayTree(const std::optional<std::int64_t>& day) {
    return day ? Tree(formatDay(*day * minutesPerDay)) : Tree();
}

Tree placesTree(const ForecastFacts& facts, const ForecastGroup& group) {
    Tree places = Tree::array();
    for (const PlaceForecast& at : group.at)
        places.add(Tree::object()
                       .set("place", facts.history.places[static_cast<std::size_t>(at.place)].id)
                       .set("isHere", at.isHere)
                       .set("interleavedHere", at.isInterleavedHere)
                       .set("early", dayTree(at.days.early))
                       .set("likely", dayTree(at.days.likely))
                       .set("late", dayTree(at.days.late)));
    return places;
}

Tree groupTree(const ForecastFacts& facts, const ForecastGroup& group) {
    const ReadinessRow& row = facts.readiness.rows[group.sample];
    Tree one = Tree::object();
    one.set("edition", group.edition);
    Tree numbers = Tree::array();
    for (const int number : group.numbers)
        numbers.add(number);
    one.set("workingNumbers", std::move(numbers)).set("verdict", textOf(row.verdict));
    one.set("sunnyDays", roundedTreeOf(row.dose.sunnyDays));
    setToldChance(one, row, facts.history);
    one.set("looksFoundTrue", row.looks.foundTrue).set("looksWanted", row.looks.wanted);
    one.set("nextLookFrom",
            row.looks.foundTrue > 0 ? Tree(formatDay(nextLookFrom(row, facts.rules))) : Tree());
    one.set("places", placesTree(facts, group));
    return one;
}

}  // namespace

void printForecast(Console& console, const ForecastFacts& facts) {
    Report(console, facts).print();
}

Tree forecastTree(const ForecastFacts& facts) {
    Tree report = newReport("forecast");
    report.set("on", formatDay(facts.readiness.asOf));
    Tree groups = Tree::array();
    for (const ForecastGroup& group : facts.plan.groups)
        groups.add(groupTree(facts, group));
    report.set("groups", std::move(groups));
    report.set("notConcerned", static_cast<double>(facts.plan.notConcerned));
    report.set("notKnown", static_cast<double>(facts.plan.notKnown));
    report.set("houseRules", treeOf(facts.rules, rulesUsed));
    return report;
}

}  // namespace rackbook
