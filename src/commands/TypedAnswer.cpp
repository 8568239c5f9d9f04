#include "commands/TypedAnswer.h"

#include <algorithm>
#include <regex>

#include "base/Error.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "base/Translated.h"
#include "base/TypedDate.h"
#include "base/TypedNumber.h"
#include "commands/AnswerKind.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/SheetSelection.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// Small letters, without space at either end and with one space for several.
std::string plainWords(const std::string& typed) {
    std::string words;
    for (const char c : plainlyTyped(typed)) {
        if (c == ' ' && (words.empty() || words.back() == ' '))
            continue;
        words += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return words;
}

bool isOneOf(const std::string& words, std::initializer_list<const char*> known) {
    return std::any_of(known.begin(), known.end(), [&](const char* word) { return words == word; });
}

bool saysAll(const std::string& typed) {
    return isOneOf(plainWords(typed), {"all", "all of them", "every one", "alle", "all sheets"});
}

// With strokes or hyphens either number may be the month; only one reading may be a day.
std::string dayWithStrokes(const std::string& typed) {
    const std::optional<std::string> dayFirst = typedDay(typed, DateOrder::dayMonthYear);
    const std::optional<std::string> monthFirst = typedDay(typed, DateOrder::monthDayYear);
    if (dayFirst && monthFirst && *dayFirst != *monthFirst)
        throw UsageError(
            filledIn(translated("mistake", "\"%1\" can be %2 or %3"),
                     {excerpt(typed), *dayFirst, *monthFirst}),
            translated("mistake", "Write it like one of the two, or with dots: day.month.year."));
    return dayFirst ? *dayFirst : monthFirst.value_or(typed);
}

// The latest 26.11. that is not to come.
std::string dayWithoutYear(const std::string& day, const std::string& month, CivilMinute now,
                           const std::string& typed) {
    constexpr int yearsBack = 8;  // to the last 29 February, over a century's end too
    const std::int64_t year = civilFromDays(dayOf(now)).year;
    for (std::int64_t back = 0; back <= yearsBack; ++back) {
        const std::string whole = day + "." + month + "." + std::to_string(year - back);
        const std::optional<std::string> found = typedDay(whole, DateOrder::dayMonthYear);
        if (found && *found <= formatDay(now))
            return *found;
    }
    return typed;
}

std::optional<std::string> clockMeant(const std::string& typed) {
    static const std::regex fourDigits(R"(([01]\d|2[0-3])([0-5]\d))");
    static const std::regex around(R"((?:at |um )?(.*?)(?: ?uhr)?)");
    std::smatch parts;
    std::string words = plainWords(typed);
    if (std::regex_match(words, parts, around))
        words = parts[1].str();
    if (std::regex_match(words, parts, fourDigits))
        return parts[1].str() + ":" + parts[2].str();
    return typedClock(words);
}

// Whatever joins or parts numbers in words, as signs.
std::string withSigns(std::string words) {
    static const std::vector<std::pair<std::regex, const char*>> signs = {
        {std::regex("–|—|−"), "-"},
        {std::regex(R"((\d) ?(?:to|bis|through|until) ?(?=\d))"), "$1-"},
        {std::regex(R"( ?(?:,|;|&|\band\b|\bund\b) ?)"), ","},
        {std::regex(R"( ?- ?)"), "-"},
        {std::regex(R"((\d) (?=\d))"), "$1,"},
        {std::regex(",,+"), ","}};
    for (const auto& [form, sign] : signs)
        words = std::regex_replace(words, form, sign);
    return words;
}

bool isRange(const std::string& text) {
    return !text.empty() && text.find_first_not_of("0123456789,-") == std::string::npos &&
           text.find_first_of("0123456789") != std::string::npos;
}

// The code before the colon of what is named already, or of the only edition.
std::optional<std::string> codeAtHand(const AnswersSoFar& soFar, const std::string& name) {
    const auto codeIn = [](const std::optional<std::string>& sheets) {
        return sheets ? std::optional(sheets->substr(0, sheets->find(':'))) : std::nullopt;
    };
    if (name != "sheets" && soFar.answers.has("sheets"))
        return codeIn(soFar.answers.of("sheets"));
    if (const std::optional<std::string> preset = presetFor(soFar, name))
        return codeIn(preset);
    const std::vector<Edition> editions = allOf<Edition>(soFar.book);
    return editions.size() == 1 ? std::optional(editions.front().code) : std::nullopt;
}

std::string codeInBook(const AnswersSoFar& soFar, const std::string& typed) {
    for (const Edition& edition : allOf<Edition>(soFar.book))
        if (plainWords(edition.code) == plainWords(typed))
            return edition.code;
    return typed;
}

std::string sheetsMeant(const AnswersSoFar& soFar, const std::string& name,
                        const std::string& typed) {
    if (saysAll(typed)) {
        if (const std::optional<std::string> code = codeAtHand(soFar, name))
            return *code;
        throw UsageError(
            translated("mistake", "all sheets of which edition is not said"),
            translated("mistake", "Type the code of the edition alone for all its sheets."));
    }
    if (const std::string range = rangeMeant(typed); isRange(range)) {
        if (const std::optional<std::string> code = codeAtHand(soFar, name))
            return *code + ":" + range;
        throw UsageError(
            filledIn(translated("mistake", "of which edition sheets %1 are is not said"), {range}),
            filledIn(translated("mistake", "Write its code before the numbers, such as EEL:%1."),
                     {range}));
    }
    static const std::regex codeAndNumbers(R"(([^:\s]+)\s*[:\s]\s*(\d.*))");
    std::smatch parts;
    if (!std::regex_match(typed, parts, codeAndNumbers))
        return codeInBook(soFar, typed);
    const std::string range = rangeMeant(parts[2]);
    return isRange(range) ? codeInBook(soFar, parts[1]) + ":" + range : typed;
}

std::string rangeAnswered(const AnswersSoFar& soFar, const std::string& name,
                          const std::string& typed) {
    if (!saysAll(typed))
        return rangeMeant(typed);
    const std::optional<std::string> every =
        name == "spoiled" ? soFar.answers.of("range") : presetFor(soFar, name);
    if (!every)
        throw UsageError(translated("mistake", "which numbers all of them are is not known here"),
                         translated("mistake", "Write working numbers, such as 1-18 or 4, 9."));
    return *every;
}

// The day on which what ends began.
CivilMinute dayOfClock(const AnswersSoFar& soFar, const std::string& name, CivilMinute now) {
    const char* beginning = name == "end" ? "start" : name == "to" ? "from" : nullptr;
    if (beginning == nullptr || !soFar.answers.has(beginning))
        return now;
    try {
        return EdtfDate::parse(withDay(soFar.answers.text(beginning), now)).earliest();
    } catch (const InputError&) {
        return now;
    }
}

}  // namespace

std::string typingHelp(const CommandSpec& spec, const std::string& name) {
    switch (answerKindOf(spec, name)) {
        case AnswerKind::moment:
            return translated(
                "typing",
                "Such as now, today, yesterday, 26.11.2026 or 26.11. with the day first, "
                "2026-11-26; and a time behind it or alone: 14:30, 14.30 or 1430.");
        case AnswerKind::date:
            return translated(
                "typing",
                "Such as today, yesterday, 26.11.2026 or 26.11. with the day first, 2026-11-26; "
                "what is badly known as 2026-11, 2026 or 2026~.");
        case AnswerKind::range:
            return spec.name == "impressions"
                       ? translated("typing", "Such as 1-24, 1 to 24, or 4 and 9.")
                       : translated("typing", "Such as 1-18, 1 to 18, 4 and 9, or all.");
        case AnswerKind::sheets:
            return translated(
                "typing",
                "The code of an edition alone, or numbers behind it: EEL 1-12, EEL 4 and 9; "
                "where it is plain which edition is meant, the numbers alone, or all.");
        default:
            return {};
    }
}

std::string dayMeant(const std::string& typed, CivilMinute now) {
    static const std::regex yearLast(R"(\d{1,2}([./-]) ?\d{1,2}\1 ?\d{4}\.?)");
    static const std::regex noYear(R"((\d{1,2})\. ?(\d{1,2})\.)");
    const std::string words = plainWords(typed);
    if (isOneOf(words, {"today", "heute"}))
        return formatDay(now);
    if (isOneOf(words, {"yesterday", "gestern"}))
        return formatDay(now - minutesPerDay);
    std::smatch parts;
    if (std::regex_match(words, parts, noYear))
        return dayWithoutYear(parts[1], parts[2], now, typed);
    if (!std::regex_match(words, parts, yearLast))
        return typed;
    if (parts[1] == ".")
        return typedDay(words, DateOrder::dayMonthYear).value_or(typed);
    return dayWithStrokes(words);
}

std::string momentMeant(const std::string& typed, CivilMinute now, CivilMinute clockDay) {
    if (isOneOf(plainWords(typed), {"now", "jetzt"}))
        return formatMinute(now);
    if (const std::optional<std::string> clock = clockMeant(typed))
        return formatDay(clockDay) + "T" + *clock;
    static const std::regex dayAndClock(
        R"((.*?[^ ,]),? +((?:at |um )?\d{1,2} ?[:.h]? ?\d{2}(?: ?[Uu]hr)?))");
    std::smatch parts;
    if (std::regex_match(typed, parts, dayAndClock)) {
        const std::string day = dayMeant(parts[1], now);
        const std::optional<std::string> clock = clockMeant(parts[2]);
        static const std::regex isoDay(R"(\d{4}-\d{2}-\d{2})");
        if (clock && std::regex_match(day, isoDay))
            return day + "T" + *clock;
    }
    return dayMeant(typed, now);
}

std::string rangeMeant(const std::string& typed) {
    const std::string signs = withSigns(plainWords(typed));
    return isRange(signs) ? signs : typed;
}

std::string numberMeant(const std::string& typed) {
    static const std::regex form(
        R"(((?:-|\+|−)?[\d.,]+) ?(?:°|°c|c|degrees|degrees celsius|grad|%|percent|per cent|prozent|lx|lux|lxh|lx·h|g/m²|g/m2|wh/m²|wh/m2)?)");
    std::smatch parts;
    const std::string words = plainWords(typed);
    if (!std::regex_match(words, parts, form))
        return typed;
    std::string number = parts[1];
    if (number.rfind("−", 0) == 0)
        number.replace(0, std::string("−").size(), "-");
    if (!parseTypedNumber(number))
        return typed;
    std::replace(number.begin(), number.end(), ',', '.');
    return number;
}

std::string asTyped(const std::string& answer) {
    static const std::regex moment(R"((\d{4}-\d{2}-\d{2})T(\d{2}:\d{2}))");
    return std::regex_replace(answer, moment, "$1 $2", std::regex_constants::match_continuous);
}

std::string answerMeant(const AnswersSoFar& soFar, const std::string& name,
                        const std::string& typed) {
    constexpr std::size_t longest = 200;  // nobody types a date or a range longer than that
    if (typed.size() > longest)
        return typed;
    const CivilMinute now = nowAt(soFar.studio).earliest();
    switch (answerKindOf(soFar.spec, name)) {
        case AnswerKind::moment:
            return momentMeant(typed, now, dayOfClock(soFar, name, now));
        case AnswerKind::date:
            return dayMeant(typed, now);
        case AnswerKind::range:
            return rangeAnswered(soFar, name, typed);
        case AnswerKind::sheets:
            return sheetsMeant(soFar, name, typed);
        case AnswerKind::number:
            return numberMeant(typed);
        default:
            return typed;
    }
}

}  // namespace rackbook
