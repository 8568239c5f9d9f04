#include "commands/TakeLightLog.h"

#include "base/Clock.h"
#include "base/Error.h"
#include "base/Files.h"
#include "base/Sha256.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/LightLogDoubts.h"
#include "commands/LightLogGiven.h"
#include "commands/LightLogReport.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "commands/SampleList.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

// As much as readLightLog takes.
constexpr std::size_t mostBytes = std::size_t{16} << 20;

struct TakenLog {
    std::string sha256;
    LightLogTerms terms;
    LightLog log;
    Place place;
    ZoneShifts shifts;
    std::vector<LoggedDay> days;
};

std::optional<std::int64_t> sinceGiven(const CommandContext& context) {
    const std::optional<EdtfDate> date = dateGiven(context, "since");
    if (!date)
        return std::nullopt;
    if (dayOf(date->earliest()) != dayOf(date->latest()))
        throw UsageError("--since wants a day", "Write it as 2026-03-04.");
    return dayOf(date->earliest());
}

TakenLog takenLog(CommandContext& context, const BookFile& book) {
    const std::string path = context.arguments.text("file");
    const Book studio = bookRecordOf(book);
    TakenLog taken;
    taken.place = recordNamed<Place>(book, context.arguments.text("place"));
    taken.terms = lightLogTermsGiven(context, studio);
    const std::optional<std::int64_t> since = sinceGiven(context);
    constexpr std::size_t steps = 3;
    Progress progress(context.console, "Light log", steps);
    const std::string bytes = readFile(path, mostBytes);
    taken.sha256 = sha256(bytes);
    progress.advance();
    taken.log = lightLogIn(bytes, path, taken.terms);
    progress.advance();
    taken.shifts = zoneShiftsOf(studio.timeZone);
    taken.days = loggedDaysOf(book, taken.log, taken.place, taken.shifts, since);
    for (Finding& doubt :
         lightLogDoubts(book, taken.log, taken.place, taken.shifts, taken.days, path))
        taken.log.notes.push_back(std::move(doubt));
    progress.finish();
    return taken;
}

ExitCode look(CommandContext& context) {
    if (context.arguments.has("instrument"))
        throw UsageError("--instrument is given, and no day is to be recorded", "Give --record.");
    const BookFile book = bookToRead(context);
    const TakenLog taken = takenLog(context, book);
    const std::string path = context.arguments.text("file");
    const LightLogFacts facts{path,        taken.sha256, taken.terms, taken.log,
                              taken.place, taken.shifts, taken.days};
    if (context.arguments.has("json"))
        context.console.out() << jsonText(lightLogTree(facts));
    else
        printLightLog(context.console, facts);
    return ExitCode::success;
}

ExitCode record(CommandContext& context) {
    if (context.arguments.has("json"))
        throw UsageError("--json is for looking at a file", "Leave out what records days.");
    BookFile book = bookToWrite(context);
    const TakenLog taken = takenLog(context, book);
    const std::string path = context.arguments.text("file");
    const std::string note = "From " + fileNameOf(path) + ", SHA-256 " + taken.sha256 + ".";
    std::vector<MadeRecord> made;
    for (const Metering& metering : meteringsOf(taken.days, taken.log, taken.place, path,
                                                context.arguments.value("instrument"), note))
        made.push_back({metering, std::nullopt});
    const ExitCode code = recordMade(context, book, made);
    for (const LoggedDay& day : taken.days)
        if (day.hasNoSpan())
            printParagraph(context.console, formatDay(day.day * minutesPerDay) +
                                                " cannot be recorded: it has no two readings near "
                                                "each other, the second later on the studio's "
                                                "clock.");
    printNotes(context.console, taken.log.notes);
    return code;
}

ExitCode run(CommandContext& context) {
    return context.arguments.has("record") ? record(context) : look(context);
}

}  // namespace

Command takeLightLogCommand() {
    CommandSpec spec;
    spec.name = "take-light-log";
    spec.group = toTranslate("group", "Record files");
    spec.summary = toTranslate(
        "summary", "Look at what a light logger measured at a place, and record its days");
    spec.details =
        "Reads a table as CSV in UTF-8, parted by commas, semicolons or tabs, with a row for each "
        "reading: date and time of day, and illuminance or near ultraviolet. Lines may stand "
        "before the headings. Columns are chosen where only one will do; else the options below "
        "name them. A file with anything wrong in it is refused as a whole, and so is one with "
        "times "
        "that are still to come. What cannot be daylight of the place and time is pointed out.\n\n"
        "Without --record it only shows what is in the file: columns, first readings, gaps, and "
        "the sum of each day. With it every day becomes a metering at PLACE; all of them are "
        "recorded or none. A day that is metered there already is refused. PLACE is where the "
        "logger lay or hung, facing as the sheets do.";
    spec.positionals = {{"file", "The logger's file."}, {"place", "Id of the place."}};
    spec.options = {flagOption("record", "Record a metering for each day."),
                    valueOption("instrument", "TEXT", "The logger, in words."),
                    valueOption("since", "DATE", "Leave out the days before this one.")};
    for (OptionSpec& option : lightLogOptions())
        spec.options.push_back(std::move(option));
    spec.writesBook = true;
    spec.reportsJson = true;
    spec.examples = {
        {"rackbook take-light-log demo-edition/south-rack-light.csv south-rack",
         "What is in the file?"},
        {"rackbook take-light-log demo-edition/south-rack-light.csv south-rack --record "
         "--instrument \"small logger, cosine head\"",
         "Record its days."},
        {"rackbook take-light-log demo-edition/south-rack-light.csv south-rack --since 2026-03-04 "
         "--record",
         "Record those from a day on."}};
    return {spec, run};
}

}  // namespace rackbook
