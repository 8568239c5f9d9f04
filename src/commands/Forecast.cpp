#include "commands/Forecast.h"

#include "base/Clock.h"
#include "base/Error.h"
#include "base/Files.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/CommandTable.h"
#include "commands/ForecastCalendar.h"
#include "commands/ForecastReport.h"
#include "commands/JudgedPrints.h"
#include "commands/OptionRows.h"
#include "commands/PlaceGiven.h"
#include "commands/PrintsWanted.h"
#include "commands/SheetSelection.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

void writeCalendar(CommandContext& context, const std::string& path,
                   const std::vector<CalendarEntry>& entries) {
    // Beside a report in JSON, what was written is told apart from it.
    std::ostream& out =
        context.arguments.has("json") ? context.console.err() : context.console.out();
    if (entries.empty()) {
        out << "\nNothing to be reminded of; no calendar was written.\n";
        return;
    }
    const std::string productId = std::string("-//Rackbook//Rackbook ") + programVersion + "//EN";
    writeFileSafely(path, calendarText(entries, {productId, nowEpoch_s()}));
    out << "\nWrote " << printable(path) << ": " << entries.size()
        << (entries.size() == 1 ? " reminder.\n" : " reminders.\n");
}

// Before anything is reckoned. Through a link or not: a book has no business being written over.
void requireFreeFile(const CommandContext& context, const std::string& path) {
    if (!fileExists(path))
        return;
    if (!context.arguments.has("replace"))
        throw UsageError("the file " + printable(path) + " is there already",
                         "--replace writes over a calendar; another name leaves it alone.");
    constexpr std::string_view begins = "BEGIN:VCALENDAR";
    if (readFile(path, 1 << 24).compare(0, begins.size(), begins) != 0)
        throw UsageError("the file " + printable(path) + " is no calendar",
                         "Give another name: only a calendar is written over.");
}

// Of what was judged, the rows that the filters let through.
Readiness chosenFrom(const CommandContext& context, const BookFile& book,
                     const JudgedPrints& prints) {
    Readiness chosen = prints.readiness;
    if (!hasPrintFilters(context))
        return chosen;
    const std::vector<bool> isWanted =
        printsWanted(context, book, prints.history, prints.labels, prints.readiness);
    chosen.rows.clear();
    for (std::size_t i = 0; i < isWanted.size(); ++i)
        if (isWanted[i])
            chosen.rows.push_back(prints.readiness.rows[i]);
    return chosen;
}

ExitCode run(CommandContext& context) {
    const std::optional<std::string> calendar = context.arguments.value("calendar");
    if (calendar)
        requireFreeFile(context, *calendar);
    const BookFile book = bookToRead(context);
    const Book studio = bookRecordOf(book);
    const HouseRules rules(studio.houseRules);
    requireStudioPlace(studio);
    const std::optional<std::string> sheets = context.arguments.value("sheets");
    const std::optional<HistoryFilter> filter =
        sheets ? std::optional(filterNamed(book, *sheets)) : std::nullopt;
    const JudgedPrints prints(book, studio, rules, filter, asOfDay(context, studio));
    const History& history = prints.history;
    const Readiness readiness = chosenFrom(context, book, prints);
    const std::optional<std::string> place = context.arguments.value("place");
    const ForecastPlan plan =
        forecastPlanOf(history, prints.labels, readiness, *prints.light.model(), rules,
                       place ? placePosition(history, *place) : -1);
    const ForecastFacts facts{history, rules, readiness, plan, context.arguments.has("why")};
    if (context.arguments.has("json"))
        context.console.out() << jsonText(forecastTree(facts));
    else
        printForecast(context.console, facts);
    if (calendar)
        writeCalendar(context, *calendar, remindersOf(plan, readiness, history, rules));
    return ExitCode::success;
}

}  // namespace

Command forecastCommand() {
    CommandSpec spec;
    spec.name = "forecast";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Estimate when prints should have had their light, here and at other places");
    spec.details =
        "For what is neither ready nor unaffected: from when on a look may be worth making, when "
        "half of such prints have their colour back, and when most have, at the place where they "
        "hang and at every other rack and wall of the studio that is recorded as lit. Estimates "
        "through the season's sun and usual skies; whether a print is ready, looks decide. A "
        "look is worth making from the chance of the house rule lookChance on; after a look that "
        "did not find the colour true, once the next is likelier than not (50 %) to find it so, "
        "so that the first two dates are the same. Where the last look found it true, it is told "
        "from when on another one counts. Of what hangs interleaved, the dates are those with "
        "the interleaving taken off.\n\n"
        "SHEETS is an edition's code, a code with working numbers such as TIDE:1-12,15, or ids of "
        "impressions with commas between; without it, the whole book. --edition, --holder and "
        "--verdict choose among them. --place is another thing here than with other verbs: where "
        "they would hang, not where they are. --during does not apply.";
    spec.positionals = {{"sheets", "Which impressions.", false, false}};
    spec.options = {
        valueOption("place", "PLACE", "Only what it would be at this place."),
        valueOption("calendar", "FILE",
                    "Write reminders for looks, and for what is to be brought out, as a calendar "
                    "(iCalendar) that other programs take in."),
        flagOption("replace", "Write over a calendar that is there already."),
        flagOption("why", "Give the house rules too."),
        valueOption("on", "DATE", "From the end of this day.", "today at the studio")};
    for (OptionSpec& filter : printFilters())
        spec.options.push_back(std::move(filter));
    spec.reportsJson = true;
    spec.examples = {{"rackbook forecast --on 2026-03-20", "All that waits for light."},
                     {"rackbook forecast BRK --on 2026-03-20", "One edition."}};
    return {spec, run};
}

}  // namespace rackbook
