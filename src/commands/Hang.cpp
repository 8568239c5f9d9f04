#include "commands/Hang.h"

#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/Moving.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/StoredEarly.h"

namespace rackbook {

namespace {

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const SheetSelection selection = sheetsNamed(book, context.arguments.text("sheets"));
    const Place place = recordNamed<Place>(book, context.arguments.text("place"));
    const EdtfDate at = momentGivenOrNow(context, studio, "at");
    Move move = moveOf(book, selection.sheets, {place.id}, at, MoveWhy::hang);
    move.interleaved = context.arguments.has("interleaved");
    move.note = context.arguments.value("note");
    const ExitCode code = recordMade(context, book, {{move, std::nullopt}});
    // A line in a dark room is as dark as a drawer.
    if (!context.arguments.has("dry-run"))
        warnOfStoredEarly(context.console, book, selection.sheets, at.latest());
    return code;
}

}  // namespace

Command hangCommand() {
    CommandSpec spec;
    spec.name = "hang";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Hang sheets to dry or to see light");
    spec.details =
        "SHEETS is an edition's code for all its kept impressions, a code with working numbers "
        "such as TIDE:1-12,15, or ids of impressions with commas between. Where they came from is "
        "filled in where all of them were at one place.";
    spec.positionals = {{"sheets", "Which impressions."},
                        {"place", "Id of the line, rack or wall they hang at."}};
    spec.options = {
        valueOption("at", "DATE", "When: a date, a date with a time, or a time of today.", "now"),
        flagOption("interleaved", "Under interleaving: no light reaches the face."),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.examples = {{"rackbook hang EEL:3,11,17 south-rack", "Hang three sheets in the light."}};
    return {spec, run};
}

}  // namespace rackbook
