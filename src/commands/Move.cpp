#include "commands/Move.h"

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
    const MoveWhy why = *enumFrom<MoveWhy>(context.arguments.text("why"));
    const EdtfDate at = momentGivenOrNow(context, studio, "at");
    Move move = moveOf(book, selection.sheets, {place.id}, at, why);
    if (const std::optional<Ref<Place>> from = refGiven<Place>(context, book, "from"))
        move.from = from;
    move.interleaved = context.arguments.has("interleaved");
    move.note = context.arguments.value("note");
    std::vector<MadeRecord> made = {{move, std::nullopt}};
    if (why == MoveWhy::destroy)
        for (MadeRecord& sheet : withFate(selection.sheets, ImpressionFate::destroyed, dayIn(at)))
            made.push_back(std::move(sheet));
    const ExitCode code = recordMade(context, book, made);
    if (why != MoveWhy::destroy && !context.arguments.has("dry-run"))
        warnOfStoredEarly(context.console, book, selection.sheets, at.latest());
    return code;
}

}  // namespace

Command moveCommand() {
    CommandSpec spec;
    spec.name = "move";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Move sheets from one place to another");
    spec.details =
        "SHEETS is an edition's code for all its kept impressions, a code with working numbers "
        "such as TIDE:1-12,15, or ids of impressions with commas between. Where they came from is "
        "filled in where all of them were at one place.\n\n"
        "With --why destroy the sheets also count as destroyed from that day on. What was agreed "
        "at a sale, a loan or a consignment is a record of its own: rackbook hand-over.";
    spec.positionals = {{"sheets", "Which impressions."}, {"place", "Id of the place they go to."}};
    spec.options = {
        required(choiceOption("why", "WHY", "The reason.", enumNames<MoveWhy>())),
        valueOption("from", "PLACE", "Id of the place they come from.",
                    "where all of them were last"),
        valueOption("at", "DATE", "When: a date, a date with a time, or a time of today.", "now"),
        flagOption("interleaved", "Under interleaving or stacked: no light reaches the face."),
        valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.examples = {{"rackbook move EEL:1,2 drawer-2 --why store --interleaved",
                      "Put two sheets into a drawer under tissue."}};
    return {spec, run};
}

}  // namespace rackbook
