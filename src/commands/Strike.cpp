#include "commands/Strike.h"

#include "commands/BookAccess.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"

namespace rackbook {

namespace {

ExitCode run(CommandContext& context) {
    const RecordKind kind = recordKindNamed(context.arguments.text("kind"));
    BookFile book = bookToWrite(context);
    MadeRecord struck;
    struck.strikes = true;
    withRecordType(kind, [&](auto tag) {
        struck.record =
            recordNamed<typename decltype(tag)::Type>(book, context.arguments.text("id"));
    });
    return recordMade(context, book, {struck}, context.arguments.text("reason"));
}

}  // namespace

Command strikeCommand() {
    CommandSpec spec;
    spec.name = "strike";
    spec.group = toTranslate("group", "At the press");
    spec.summary =
        toTranslate("summary", "Strike out a record that should never have been recorded");
    spec.details =
        "For a weighing, a move or a look that was typed by mistake and never happened. The record "
        "no longer counts; the journal keeps it, with the reason. Nothing that other records name "
        "can be struck out, and its id is never given again. What did happen but was typed wrongly "
        "is corrected with rackbook enter instead.";
    spec.positionals = {{"kind", "The kind of record, such as weighing."}, {"id", "Its id."}};
    spec.options = {{"reason", "TEXT", "Why it should not be there.", true, false, {}, {}}};
    spec.writesBook = true;
    spec.examples = {{"rackbook strike move EEL/move-32 --reason \"typed twice\"",
                      "The move no longer counts."}};
    return {spec, run};
}

}  // namespace rackbook
