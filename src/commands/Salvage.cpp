#include "commands/Salvage.h"

#include "base/Files.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/JournalWords.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "store/NewBook.h"
#include "store/Salvage.h"

namespace rackbook {

namespace {

std::string counted(std::int64_t count, const std::string& one, const std::string& several) {
    return std::to_string(count) + " " + (count == 1 ? one : several);
}

void print(Console& console, const std::string& path, const Salvaged& found) {
    console.out() << printable(path) << " holds "
                  << counted(found.entries, "journal entry", "journal entries") << " and "
                  << counted(found.files, "file of an attachment", "files of attachments")
                  << ", each proved by its hash.\n"
                  << "The last was recorded on " << recordedInUtc(found.lastRecordedAt)
                  << ", as entry " << found.lastKept << " of the damaged book.\n";
    if (found.losses.empty()) {
        console.out() << "Up to there nothing is missing, and the journal is the same.\n";
        return;
    }
    console.out() << "\n";
    Table table({{"lost"}, {"why"}});
    for (const Loss& loss : found.losses)
        table.addRow({loss.what, loss.cause});
    console.out() << table.text(console.width(), {});
    if (!found.isSameJournal)
        printParagraph(console,
                       "The entries that were kept have new numbers and hashes in the new book; "
                       "their records, times and reasons are as they were.");
}

// Records that can be read and have no place in the book: for whoever makes one for them.
void writeNotPlaced(Console& console, const std::string& path, const Salvaged& found) {
    if (found.notPlaced.empty())
        return;
    writeFileSafely(path, recordFileText(found.notPlaced));
    printParagraph(console, counted(static_cast<std::int64_t>(found.notPlaced.size()),
                                    "record that names what was lost lies in ",
                                    "records that name what was lost lie in ") +
                                printable(path) + "; take-in takes them once that is there again.");
}

ExitCode run(CommandContext& context) {
    const std::string damaged = context.arguments.text("damaged");
    const std::string path = context.arguments.text("new-book");
    const std::string notPlaced = path + ".not-placed.json";
    requireRegularFile(damaged);
    for (const std::string& one : {path, notPlaced})
        if (fileExists(one))
            throw UsageError(one + " is there already", "Name a new file.");
    BookOptions options;
    options.path = path;
    options.schemaFolder = context.folders.schema;
    NewBook made(options);
    const Salvaged found = salvage(damaged, made.book(), decodeRecord);
    if (found.entries == 0)
        throw InputError(damaged, "no entry of a journal can be read in it",
                         "Restore the last backup.");
    writeNotPlaced(context.console, notPlaced, found);
    made.finish();
    print(context.console, path, found);
    return found.losses.empty() ? ExitCode::success : ExitCode::findings;
}

}  // namespace

Command salvageCommand() {
    CommandSpec spec;
    spec.name = "salvage";
    spec.group = toTranslate("group", "The book");
    spec.summary =
        toTranslate("summary", "Read what can still be read of a damaged book into a new one");
    spec.details =
        "For a file that is cut, has lost pages or does not open any more, where no backup is as "
        "good. Its bytes are looked through for journal entries and files of attachments; each "
        "must "
        "fit the hash that was made of it when it was recorded, so nothing comes in that was not. "
        "All tables are made anew from the entries. What is lost is listed by entry; records that "
        "name something lost lie in a record file beside the new book.\n\n"
        "The damaged book is only read. Exit code 1 where something is lost.";
    spec.positionals = {{"damaged", "The damaged book; a log beside it is read too."},
                        {"new-book", "A file that is not there yet."}};
    spec.needsBook = false;
    spec.examples = {{"rackbook salvage studio.rackbook found.rackbook",
                      "What can be found goes into a new book."}};
    return {spec, run};
}

}  // namespace rackbook
