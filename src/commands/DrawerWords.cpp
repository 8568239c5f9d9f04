#include "commands/DrawerWords.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/Ranges.h"
#include "calc/Wording.h"
#include "commands/InkWords.h"

namespace rackbook {

namespace {

const HistoryLook& lookOf(const DrawersFacts& facts, int look) {
    return facts.history.looks[static_cast<std::size_t>(look)];
}

std::vector<int> impressionsOf(const std::vector<DrawerNeighbour>& neighbours, bool isInterleaved) {
    std::vector<int> impressions;
    for (const DrawerNeighbour& one : neighbours)
        if (one.isInterleaved == isInterleaved)
            impressions.push_back(one.impression);
    return impressions;
}

// "EEL 3,11 (interleaved) and BRK 2".
std::string neighbourNames(const DrawersFacts& facts,
                           const std::vector<DrawerNeighbour>& neighbours) {
    const std::vector<int> bare = impressionsOf(neighbours, false);
    const std::vector<int> interleaved = impressionsOf(neighbours, true);
    std::string names = printNames(facts, bare);
    if (!bare.empty() && !interleaved.empty())
        names += " and ";
    if (!interleaved.empty())
        names += printNames(facts, interleaved) + " (interleaved)";
    return names;
}

std::vector<DrawerNeighbour> without(const std::vector<DrawerNeighbour>& neighbours,
                                     const std::vector<DrawerNeighbour>& others) {
    std::set<int> known;
    for (const DrawerNeighbour& one : others)
        known.insert(one.impression);
    std::vector<DrawerNeighbour> rest;
    for (const DrawerNeighbour& one : neighbours)
        if (known.count(one.impression) == 0)
            rest.push_back(one);
    return rest;
}

}  // namespace

std::string printNames(const DrawersFacts& facts, const std::vector<int>& impressions) {
    std::map<int, std::vector<int>> numbers;
    std::map<int, std::string> codes;
    for (const int impression : impressions) {
        const ImpressionLabel& label = facts.labels[static_cast<std::size_t>(impression)];
        const int edition = facts.history.impressions[static_cast<std::size_t>(impression)].edition;
        numbers[edition].push_back(label.workingNumber);
        codes[edition] = label.edition;
    }
    std::string names;
    for (auto& [edition, some] : numbers) {
        std::sort(some.begin(), some.end());
        names += (names.empty() ? "" : "; ") + codes[edition] + " " + formatRanges(some);
    }
    return names;
}

std::string fillWords(const DrawerContents& drawer) {
    std::string words = std::to_string(drawer.prints.size());
    if (drawer.capacity)
        words += " of " + std::to_string(*drawer.capacity);
    return words + (drawer.isOverCapacity() ? ", over capacity" : "");
}

std::string daysOf(const TimeSpan& span) {
    TimeSpan days = span;
    // Both ends of the day, so that no time of day is told.
    if (span.earliest == span.latest && span.earliest > beginningOfTime) {
        days.earliest = dayOf(span.earliest) * minutesPerDay;
        days.latest = days.earliest + minutesPerDay - 1;
    }
    return momentWords(days);
}

std::string airingWords(const DrawersFacts& facts, const LyingPrint& print) {
    if (!print.isAtRisk)
        return {};
    const std::optional<std::int64_t> day = airingDay(print, facts.plan.airing_days);
    if (!day)
        return "due now";
    const bool isDue = isAiringDue(print, facts.plan.airing_days, facts.readiness.asOf);
    return formatDay(*day * minutesPerDay) + (isDue ? ", due" : "");
}

std::string touchWords(const DrawersFacts& facts, const LyingPrint& print) {
    std::string words =
        print.touchLook < 0 ? "no look" : textOf(lookOf(facts, print.touchLook).touch);
    if (print.drySince >= 0)
        words += ", dry " + dayWords(lookOf(facts, print.drySince).at);
    return words;
}

std::string softWords(const DrawersFacts& facts, const PutAwaySoft& soft) {
    const bool many = soft.impressions.size() > 1;
    std::string words =
        printNames(facts, soft.impressions) + ": put " + "there " + dayWords(soft.putAway);
    words += soft.isInterleaved ? ", interleaved, " : ", not interleaved, ";
    if (soft.touchLook < 0)
        words += "and no look says how the ink felt then.";
    else
        words += std::string(textOf(lookOf(facts, soft.touchLook).touch)) + " by the look " +
                 dayWords(lookOf(facts, soft.touchLook).at) + ".";
    if (many)
        words += " They came together.";
    const std::vector<DrawerNeighbour> come = without(soft.besideNow, soft.besideThen);
    if (!soft.besideThen.empty())
        words += " Beside " + std::string(many ? "them" : "it") +
                 " then: " + neighbourNames(facts, soft.besideThen) + ".";
    if (!come.empty())
        words += " Come since: " + neighbourNames(facts, come) + ".";
    if (soft.besideThen.empty() && come.empty())
        words += " Nothing else is known to have lain there.";
    return words;
}

}  // namespace rackbook
