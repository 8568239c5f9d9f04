#include "commands/Sky.h"

#include <map>

#include "base/Numbers.h"
#include "base/Text.h"
#include "base/TypedNumber.h"
#include "commands/BookAccess.h"
#include "commands/OptionRows.h"
#include "commands/Recording.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

constexpr std::int64_t mostDays = 366;

struct DaySpan {
    std::int64_t first = 0;  // days since 1970-01-01
    std::int64_t last = 0;
};

[[noreturn]] void refuseDay(const std::string& text) {
    throw UsageError("sky: DAY is \"" + excerpt(text) + "\", which is no day",
                     "Write 2026-03-18, or 2026-03-10/2026-03-17 for several days.");
}

// A single day, written as one.
std::int64_t dayGiven(const std::string& part, const std::string& text) {
    try {
        const EdtfDate date = EdtfDate::parse(part);
        if (date == EdtfDate::ofDay(date.earliest()))
            return dayOf(date.earliest());
    } catch (const InputError&) {
        // Told as what was written, below.
    }
    refuseDay(text);
}

DaySpan daysGiven(const std::string& text) {
    const std::size_t slash = text.find('/');
    if (slash == std::string::npos) {
        const std::int64_t day = dayGiven(text, text);
        return {day, day};
    }
    const DaySpan days{dayGiven(text.substr(0, slash), text),
                       dayGiven(text.substr(slash + 1), text)};
    if (days.last < days.first)
        throw UsageError("sky: DAY is \"" + excerpt(text) + "\", which ends before it begins",
                         "Write the earlier day first.");
    if (days.last - days.first >= mostDays)
        throw UsageError("sky: DAY is \"" + excerpt(text) + "\", which is more than " +
                             std::to_string(mostDays) + " days",
                         "Record it year by year.");
    return days;
}

void requireNotAhead(const DaySpan& days, const Book& studio) {
    if (days.last > dayOf(nowAt(studio).latest()))
        throw UsageError("sky: " + formatDay(days.last * minutesPerDay) +
                             " is still to come; today is " + formatDay(nowAt(studio).earliest()) +
                             " at the studio",
                         "Record the sky once the day is there.");
}

// Sets the sky in a word or the oktas, as they were typed.
void setSky(const std::string& text, Weather& weather) {
    weather.sky = enumFrom<Sky>(text);
    if (weather.sky)
        return;
    weather.oktas = parseTypedNumber(text);
    if (weather.oktas && *weather.oktas >= 0 && *weather.oktas <= 8)
        return;
    const std::optional<std::string> nearest =
        weather.oktas ? std::nullopt : nearestName(text, enumNames<Sky>());
    throw UsageError("sky: SKY is \"" + excerpt(text) + "\"",
                     nearest ? "Did you mean " + *nearest + "?"
                             : "Give " + joined(enumNames<Sky>(), " or ") +
                                   ", or how many eighths of the sky were covered, 0 to 8.");
}

std::string skyWords(const Weather& weather) {
    return weather.sky ? std::string(textOf(*weather.sky))
                       : formatShortest(weather.oktas.value_or(0)) + " oktas";
}

std::string freeId(const BookFile& book, const std::string& day) {
    const std::string plain = "sky-" + day;
    std::string id = plain;
    for (int again = 2; wasStruck(book, Weather::kind, id); ++again)
        id = plain + "-" + std::to_string(again);
    return id;
}

// `days` are those that the book has otherwise, each with its sky.
[[noreturn]] void refuseOther(std::vector<std::string> days) {
    constexpr std::size_t mostTold = 3;
    const std::size_t more = days.size() > mostTold ? days.size() - mostTold : 0;
    if (more > 0) {
        days.resize(mostTold);
        days.push_back(std::to_string(more) + (more == 1 ? " other day" : " other days"));
    }
    throw UsageError("the book has it otherwise for " + joined(days, " and "),
                     "Give --reason TEXT to correct it.");
}

// One record for each day; a day that the book has keeps its record, and its note unless another
// is given.
std::vector<MadeRecord> skiesGiven(const CommandContext& context, const BookFile& book) {
    Weather given;
    setSky(context.arguments.text("sky"), given);
    const DaySpan days = daysGiven(context.arguments.text("day"));
    requireNotAhead(days, bookRecordOf(book));
    std::map<std::int64_t, Weather> standing;
    for (Weather& weather : allOf<Weather>(book))
        standing.emplace(dayOf(weather.on.earliest()), std::move(weather));
    std::vector<MadeRecord> made;
    std::vector<std::string> differing;
    for (std::int64_t day = days.first; day <= days.last; ++day) {
        const auto found = standing.find(day);
        Weather weather = found == standing.end() ? Weather{} : found->second;
        if (found == standing.end()) {
            weather.on = EdtfDate::ofDay(day * minutesPerDay);
            weather.id = freeId(book, weather.on.text());
        }
        weather.sky = given.sky;
        weather.oktas = given.oktas;
        if (const std::optional<std::string> note = context.arguments.value("note"))
            weather.note = note;
        if (found != standing.end() && !sameFacts(weather, found->second))
            differing.push_back(formatDay(day * minutesPerDay) + " (" + skyWords(found->second) +
                                ")");
        made.push_back({weather});
    }
    if (!differing.empty() && !context.arguments.has("reason"))
        refuseOther(differing);
    return made;
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    return recordMade(context, book, skiesGiven(context, book), context.arguments.value("reason"));
}

}  // namespace

Command skyCommand() {
    CommandSpec spec;
    spec.name = "sky";
    spec.group = toTranslate("group", "At the press");
    spec.summary =
        toTranslate("summary", "Record how the sky was on a day, for the light that prints have");
    spec.details =
        "SKY is sunny (little or no cloud), broken (sun and cloud took turns) or overcast (grey "
        "throughout), or the eighths of the sky that were covered (oktas), 0 to 8, as a mean "
        "over the hours of daylight: 5.5 or 5,5.\n\n"
        "Each day has one record. What the book has for a day already is corrected with --reason.";
    spec.positionals = {
        {"day", "A day such as 2026-03-18, or a first and a last day with a slash between."},
        {"sky", "A word, or eighths of the sky."}};
    spec.options = {valueOption("reason", "TEXT", "Why the book was wrong, for days that it has."),
                    valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.examples = {{"rackbook sky 2026-03-18 sunny", "One day."},
                     {"rackbook sky 2026-02-10/2026-02-17 overcast", "Eight grey days."},
                     {"rackbook sky 2026-03-18 6", "Six eighths of the sky were covered."}};
    return {spec, run};
}

}  // namespace rackbook
