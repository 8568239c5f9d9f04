#include "commands/ForecastCalendar.h"

#include <algorithm>

#include "base/Ranges.h"
#include "calc/DoseReasons.h"
#include "calc/ToldChance.h"
#include "commands/ToldChanceWords.h"

namespace rackbook {

namespace {

std::string placeWords(const History& history, const ReadinessRow& row,
                       const ForecastGroup& group) {
    if (row.place < 0)
        return " It is at a place that is not known.";
    const std::string name = history.places[static_cast<std::size_t>(row.place)].name;
    if (group.isInterleaved && group.isPlaceLit)
        return " It is at " + name + ", in light with the interleaving taken off.";
    return " It is at " + name + (group.isInterleaved ? ", interleaved." : ".");
}

class Reminding {
public:
    Reminding(const Readiness& readiness, const History& history, const HouseRules& rules)
        : m_readiness(readiness), m_history(history), m_rules(rules) {}

    void remind(const ForecastGroup& group) {
        const ReadinessRow& row = m_readiness.rows[group.sample];
        const std::string names = group.edition + " " + formatRanges(group.numbers);
        const std::string where = placeWords(m_history, row, group);
        const ToldChance told = toldChanceOf(row);
        const LightForecast here =
            told == ToldChance::datesTooWide ? LightForecast{} : forecastOf(row, m_rules);
        if (row.verdict == Verdict::bringOut)
            add(group, "bring-out", dayOf(m_readiness.asOf), "Bring out into light: " + names,
                "Put away before its light was done." + where);
        else if (row.verdict == Verdict::lookDue)
            add(group, "look", dayOf(std::max(nextLookFrom(row, m_rules), m_readiness.asOf)),
                "Look at " + names + ": dry, and the colour true?",
                "The studio wants " + std::to_string(row.looks.wanted) +
                    " looks that find the colour true; " + std::to_string(row.looks.foundTrue) +
                    " so far." + where);
        else if (row.verdict == Verdict::moreLight && here.early)
            add(group, "look", *here.early, "Look at " + names + ": dry, and the colour true?",
                (told == ToldChance::foundTrue ? foundTrueWords(row, m_history) + " " : "") +
                    "By estimate, " + forecastWords(here) + "." + where);
    }

    std::vector<CalendarEntry> entries;

private:
    // The same reminder keeps its name when its day moves, so that calendars move it too. When a
    // group parts, the part with its first print keeps the name, and only the others get new ones.
    void add(const ForecastGroup& group, const std::string& what, std::int64_t day,
             const std::string& summary, const std::string& description) {
        CalendarEntry entry;
        entry.uid =
            what + ":" + group.edition + ":" + std::to_string(group.numbers.front()) + "@rackbook";
        entry.day = day;
        entry.summary = summary;
        entry.description = description;
        entry.reminds = true;
        entries.push_back(std::move(entry));
    }

    const Readiness& m_readiness;
    const History& m_history;
    const HouseRules& m_rules;
};

}  // namespace

std::vector<CalendarEntry> remindersOf(const ForecastPlan& plan, const Readiness& readiness,
                                       const History& history, const HouseRules& rules) {
    Reminding reminding(readiness, history, rules);
    for (const ForecastGroup& group : plan.groups)
        reminding.remind(group);
    return std::move(reminding.entries);
}

}  // namespace rackbook
