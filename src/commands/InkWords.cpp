#include "commands/InkWords.h"

#include <algorithm>
#include <cmath>

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/EstimateMath.h"
#include "calc/Wording.h"
#include "cli/Wrap.h"

namespace rackbook {

namespace {

constexpr double hoursPerDay = 24;
constexpr double hoursPerMonth = 30.44 * hoursPerDay;
constexpr double hoursPerYear = 365.25 * hoursPerDay;
constexpr int widestText = 96;

std::string boundsWords(const std::string& low, const Estimate& value, int decimals) {
    if (std::isinf(value.high))
        return low + " or more";
    return low + "–" + formatFixed(value.high, decimals);
}

std::string counted(double count, const char* one, const char* many) {
    const std::string number = formatFixed(std::floor(count), 0);
    return number + " " + (number == "1" ? one : many);
}

// An open start or end is open still when a life was added to it: no date can be written that is
// two million years away.
constexpr CivilMinute farthest = 1'000'000'000'000;

bool isEver(CivilMinute minute) {
    return minute < -farthest || minute > farthest;
}

Tree minuteOrNull(CivilMinute minute) {
    return isEver(minute) ? Tree() : Tree(formatMinute(minute));
}

}  // namespace

std::string estimateWords(const Estimate& value, int decimals) {
    const std::string low = formatFixed(value.low, decimals);
    const std::string high = std::isinf(value.high) ? "" : formatFixed(value.high, decimals);
    if (low == high)
        return low;
    if (value.isKnown())
        return formatFixed(value.best, decimals) + " (" + boundsWords(low, value, decimals) + ")";
    if (value.low > 0 || value.low < 0)
        return boundsWords(low, value, decimals);
    return high.empty() ? "not known" : "up to " + high;
}

std::string gramsWords(const Estimate& mass_g, int decimals) {
    std::string words = estimateWords(mass_g, decimals);
    if (words == "not known")
        return words;
    const std::size_t bracket = words.find(" (");
    const std::size_t open = words.find(" or more");
    const std::size_t end = std::min({bracket, open, words.size()});
    return words.insert(end, " g");
}

std::string percentsOf(const Estimate& share, int decimals) {
    return estimateWords({share.low * 100, share.best * 100, std::min(1.0, share.high) * 100},
                         decimals);
}

std::string ageWords(double hours) {
    if (hours < 1)
        return formatFixed(std::floor(hours * 60), 0) + " min";
    if (hours < 2 * hoursPerDay)
        return formatFixed(std::floor(hours), 0) + " h";
    if (hours < 2 * hoursPerMonth)
        return counted(hours / hoursPerDay, "day", "days");
    if (hours < 2 * hoursPerYear)
        return counted(hours / hoursPerMonth, "month", "months");
    return formatFixed(hours / hoursPerYear, 1) + " years";
}

std::string ageWords(const Estimate& hours) {
    const std::string low = ageWords(hours.low);
    if (hours.high > 1000 * hoursPerYear)
        return low + " or more";
    const std::string high = ageWords(hours.high);
    return low == high ? low : low + " to " + high;
}

std::string momentWords(const TimeSpan& span) {
    const bool fromEver = isEver(span.earliest);
    const bool forEver = isEver(span.latest);
    if (fromEver && forEver)
        return "not known";
    if (fromEver)
        return "by " + formatDay(span.latest);
    if (forEver)
        return formatDay(span.earliest) + " or later";
    if (span.earliest == span.latest) {
        std::string text = formatMinute(span.earliest);
        text[text.find('T')] = ' ';
        return text;
    }
    const std::string first = formatDay(span.earliest);
    const std::string last = formatDay(span.latest);
    return first == last ? first : first + " to " + last;
}

void printIndented(Console& console, const std::string& text) {
    for (const std::string& line : wrapped(text, std::min(console.width() - 2, widestText)))
        console.out() << "  " << printable(line) << "\n";
}

void printHouseRules(Console& console, const HouseRules& rules,
                     const std::vector<std::string>& names) {
    console.out() << "\nHouse rules used\n";
    for (const std::string& name : names) {
        const RuleInForce& rule = rules.rule(name);
        printIndented(console, rule.rule + " " + formatShortest(rule.value) + " " + rule.unit +
                                   ": " + rule.words + " (" + originWords(rule) + ")");
    }
}

Tree treeOf(const HouseRules& rules, const std::vector<std::string>& names) {
    Tree list = Tree::array();
    for (const std::string& name : names) {
        const RuleInForce& rule = rules.rule(name);
        Tree one = Tree::object();
        one.set("rule", rule.rule).set("value", rule.value).set("unit", rule.unit);
        one.set("origin", textOf(rule.origin)).set("source", rule.source);
        list.add(std::move(one));
    }
    return list;
}

Tree treeOf(const Estimate& value) {
    Tree tree = Tree::object();
    tree.set("low", value.low).set("best", value.best).set("high", value.high);
    return tree;
}

Tree roundedTreeOf(const Estimate& value) {
    return treeOf(
        Estimate{roundedToFive(value.low), roundedToFive(value.best), roundedToFive(value.high)});
}

Tree treeOf(const TimeSpan& span) {
    Tree tree = Tree::object();
    tree.set("earliest", minuteOrNull(span.earliest));
    tree.set("latest", minuteOrNull(span.latest));
    return tree;
}

}  // namespace rackbook
