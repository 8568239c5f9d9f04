#include "commands/Begin.h"

#include <sstream>

#include "commands/BookAccess.h"
#include "commands/Recording.h"
#include "store/NewBook.h"

namespace rackbook {

namespace {

constexpr const char* afterStudio =
    "\nNext come the people, places and tins, with rackbook enter party, place and lot; then\n"
    "rackbook edition, layer and impressions. README.md walks through a first evening.\n";
constexpr const char* afterNothing =
    "It holds nothing yet. Take in record files with rackbook take-in; one of them must\n"
    "hold the record of kind book, with studio and timeZone.\n";

// Nothing is told before all of it is done.
void recordQuietly(const CommandContext& context, BookFile& book, const Book& record,
                   std::ostream& told) {
    ConsoleTraits traits;
    traits.width = context.console.width();
    Console console(told, context.console.err(), traits);
    CommandContext quiet{context.arguments, console, context.folders, context.conversation};
    recordMade(quiet, book, {{record, std::nullopt}});
}

ExitCode run(CommandContext& context) {
    const Arguments& arguments = context.arguments;
    const std::optional<std::string> studio = arguments.value("studio");
    const std::optional<std::string> timeZone = arguments.value("time-zone");
    if (studio.has_value() != timeZone.has_value())
        throw UsageError("--studio and --time-zone belong together", "Give both or neither.");
    Book record;
    if (studio) {
        record.id = "book";
        record.studio = *studio;
        record.timeZone = *timeZone;
        record.latitude_deg = arguments.number("latitude");
        record.longitude_deg = arguments.number("longitude");
        record.currency = arguments.value("currency");
        RecordFileReader check(context.folders.schema);
        check.add(record, "the command line");
        if (!check.findings().empty())
            throw RefusedInput(check.findings());
    }
    const BookOptions options = bookOptionsOf(context);
    if (arguments.has("dry-run")) {
        context.console.out() << "Tried only: " << options.path << " was not made.\n";
        return ExitCode::success;
    }
    // What is recorded first belongs to the making: there is never a book without it.
    NewBook made(options);
    std::ostringstream recorded;
    if (studio)
        recordQuietly(context, made.book(), record, recorded);
    made.finish();
    context.console.out() << "A new book was made: " << options.path << "\n\n"
                          << recorded.str() << (studio ? afterStudio : afterNothing);
    return ExitCode::success;
}

}  // namespace

Command beginCommand() {
    CommandSpec spec;
    spec.name = "begin";
    spec.group = toTranslate("group", "The book");
    spec.summary = toTranslate("summary", "Make a new book");
    spec.details =
        "Makes one file that will hold all records of a studio. With --studio and --time-zone it "
        "is ready for daily use; without them it waits for record files that say so.";
    spec.options = {
        {"studio", "NAME", "The studio's name as it stands on sheets.", false, false, {}, {}},
        {"time-zone",
         "ZONE",
         "IANA time zone, for instance Europe/Copenhagen.",
         false,
         false,
         {},
         {}},
        {"latitude", "DEGREES", "Latitude of the studio, north positive.", false, false, {}, {}},
        {"longitude", "DEGREES", "Longitude of the studio, east positive.", false, false, {}, {}},
        {"currency", "CODE", "ISO 4217 code for prices.", false, false, {}, {}}};
    spec.writesBook = true;
    spec.examples = {{"rackbook begin --studio \"North shed\" --time-zone Europe/Copenhagen",
                      "Begin studio.rackbook in this folder."}};
    return {spec, run};
}

}  // namespace rackbook
