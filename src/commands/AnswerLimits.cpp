#include "commands/AnswerLimits.h"

#include <algorithm>
#include <limits>
#include <set>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Ranges.h"
#include "base/Translated.h"
#include "commands/AnswerKind.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/MassGiven.h"

namespace rackbook {

namespace {

constexpr double noMost = std::numeric_limits<double>::infinity();

constexpr NumberLimits allLimits[] = {{"DEGREES", -40, 60, " °C"},
                                      {"PERCENT", 0, 100, " %"},
                                      {"SHARE", 0, 1, ""},
                                      {"LUX", 0, noMost, " lx"},
                                      {"LUXHOURS", 0, 10'000'000, " lx·h"},
                                      {"WATTHOURS", 0, 10'000, " Wh/m²"}};

const OptionSpec* optionOf(const CommandSpec& spec, const std::string& name) {
    for (const OptionSpec& option : spec.options)
        if (option.name == name)
            return &option;
    return nullptr;
}

void checkNumber(const AnswersSoFar& soFar, const std::string& name, const std::string& answer) {
    const OptionSpec* option = optionOf(soFar.spec, name);
    const NumberLimits* limits = option != nullptr ? limitsOf(option->valueName) : nullptr;
    const std::optional<double> value = parseNumber(answer);
    if (limits == nullptr || !value || (*value >= limits->least && *value <= limits->most))
        return;
    const std::string unit = limits->unit;
    throw UsageError(
        filledIn(translated("mistake", "%1 cannot be"), {answer + unit}),
        limits->most == noMost
            ? translated("mistake", "It is 0 or more.")
            : filledIn(translated("mistake",
                                  "It lies between %1 and %2; leave it out where it was not "
                                  "measured."),
                       {formatShortest(limits->least), formatShortest(limits->most) + unit}));
}

std::optional<double> grams(const std::string& text) {
    try {
        return massGiven(text, "the mass", {nullptr, true});
    } catch (const UsageError&) {
        return std::nullopt;
    }
}

void checkMass(const AnswersSoFar& soFar, const std::string& name, const std::string& answer) {
    const std::optional<double> mass_g = grams(answer);
    if (!mass_g)
        return;
    if (name == "mass" && soFar.spec.name == "weigh" && *mass_g == 0)
        throw UsageError(translated("mistake", "a mass of 0 g is no weighing"),
                         translated("mistake", "Give what was weighed, or the word unknown."));
    const std::optional<double> before_g =
        name == "ink-after" ? grams(soFar.answers.text("ink-before")) : std::nullopt;
    if (before_g && *mass_g > *before_g)
        throw UsageError(
            filledIn(translated("mistake", "more ink is left than there was before (%1 g)"),
                     {formatShortest(*before_g)}),
            translated("mistake", "Weigh again, or change the answer before at the end."));
    const std::optional<double> gross_g =
        name == "tare" ? grams(soFar.answers.text("mass")) : std::nullopt;
    if (gross_g && *mass_g > *gross_g)
        throw UsageError(
            filledIn(translated("mistake",
                                "the empty container weighs more than with what is in it (%1 g)"),
                     {formatShortest(*gross_g)}),
            translated("mistake", "Weigh again, or change the answer before at the end."));
}

std::optional<EdtfDate> dateIn(const AnswersSoFar& soFar, const std::string& answer) {
    try {
        return EdtfDate::parse(withDay(answer, nowAt(soFar.studio).earliest()));
    } catch (const InputError&) {
        return std::nullopt;
    }
}

// The question that the answer must not lie before.
const char* beginningOf(const std::string& name) {
    return name == "end" ? "start" : name == "to" ? "from" : name == "due" ? "on" : nullptr;
}

void checkOrder(const AnswersSoFar& soFar, const std::string& name, const std::string& answer) {
    const char* beginning = beginningOf(name);
    if (beginning == nullptr || !soFar.answers.has(beginning))
        return;
    const std::optional<EdtfDate> begin = dateIn(soFar, soFar.answers.text(beginning));
    const std::optional<EdtfDate> end = dateIn(soFar, answer);
    if (begin && end && end->latest() < begin->earliest())
        throw UsageError(
            filledIn(translated("mistake", "that is before it began (%1)"), {begin->text()}),
            translated("mistake", "Where it went on past midnight, write the day too."));
}

void checkSpoiled(const AnswersSoFar& soFar, const std::string& answer) {
    if (!soFar.answers.has("range"))
        return;
    std::vector<int> pulled = parseRanges(soFar.answers.text("range"));
    std::vector<int> strangers;
    for (const int number : parseRanges(answer))
        if (!std::binary_search(pulled.begin(), pulled.end(), number))
            strangers.push_back(number);
    if (!strangers.empty())
        throw UsageError(
            filledIn(strangers.size() == 1 ? translated("mistake", "%1 was not pulled")
                                           : translated("mistake", "%1 were not pulled"),
                     {formatRanges(strangers)}),
            filledIn(translated("mistake", "Pulled were %1; name sheets of these."),
                     {formatRanges(pulled)}));
}

}  // namespace

const NumberLimits* limitsOf(const std::string& valueName) {
    for (const NumberLimits& limits : allLimits)
        if (valueName == limits.valueName)
            return &limits;
    return nullptr;
}

void checkLimits(const AnswersSoFar& soFar, const std::string& name, const std::string& answer) {
    switch (answerKindOf(soFar.spec, name)) {
        case AnswerKind::number:
            checkNumber(soFar, name, answer);
            break;
        case AnswerKind::mass:
            checkMass(soFar, name, answer);
            break;
        case AnswerKind::moment:
        case AnswerKind::date:
            checkOrder(soFar, name, answer);
            break;
        case AnswerKind::range:
            if (name == "spoiled")
                checkSpoiled(soFar, answer);
            break;
        default:
            break;
    }
}

std::optional<std::string> aheadWords(const EdtfDate& date, CivilMinute now) {
    if (date.earliest() <= now || date.earliest() == endOfTime)
        return std::nullopt;
    const std::int64_t days = dayOf(date.earliest()) - dayOf(now);
    return days == 0   ? "later today"
           : days == 1 ? "tomorrow"
                       : "in " + std::to_string(days) + " days";
}

std::string doubtAbout(const AnswersSoFar& soFar, const std::string& name,
                       const std::string& answer) {
    static const std::set<std::string> mayBeAhead = {"due", "year", "until"};
    const AnswerKind kind = answerKindOf(soFar.spec, name);
    if ((kind != AnswerKind::moment && kind != AnswerKind::date) || mayBeAhead.count(name) > 0)
        return {};
    const std::optional<EdtfDate> date = dateIn(soFar, answer);
    const std::optional<std::string> ahead =
        date ? aheadWords(*date, nowAt(soFar.studio).latest()) : std::nullopt;
    if (!ahead)
        return {};
    const std::int64_t days = dayOf(date->earliest()) - dayOf(nowAt(soFar.studio).latest());
    if (days == 0)
        return translated("mistake", "That is later today.");
    if (days == 1)
        return translated("mistake", "That is tomorrow.");
    return filledIn(translated("mistake", "That is in %1 days."), {std::to_string(days)});
}

}  // namespace rackbook
