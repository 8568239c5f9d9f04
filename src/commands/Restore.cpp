#include "commands/Restore.h"

#include "base/Clock.h"
#include "base/Files.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BackupFiles.h"
#include "commands/BookAccess.h"
#include "commands/JournalWords.h"
#include "commands/OptionRows.h"
#include "exchange/RecordCodec.h"
#include "store/JournalEnd.h"
#include "store/JournalQuery.h"
#include "store/NewBook.h"
#include "store/Restoring.h"
#include "store/Verification.h"

namespace rackbook {

namespace {

constexpr std::size_t mostIntakes = 1000;

// What only the present book holds, and would be lost.
struct Losses {
    bool isKnown = false;  // the present book could be read
    std::int64_t entries = 0;
    std::vector<std::vector<JournalEntry>> intakes;  // the latest first
};

Losses lossesIn(const BookOptions& options, const BookFile& backup) {
    Losses losses;
    try {
        const BookFile present = BookFile::openToRead(options);
        const JournalEnd common = lastInCommon(present, backup);
        losses.entries = journalEndOf(present).entry - common.entry;
        for (std::vector<JournalEntry>& intake : latestIntakes(present, mostIntakes))
            if (intake.back().entry > common.entry)
                losses.intakes.push_back(std::move(intake));
        losses.isKnown = true;
    } catch (const StoreError&) {
        // It is damaged: that is why it is to be replaced.
        losses = {};
    }
    return losses;
}

std::string counted(std::int64_t entries) {
    return entries == 1 ? "1 journal entry" : std::to_string(entries) + " journal entries";
}

void print(Console& console, const std::string& path, const Losses& losses) {
    if (!losses.isKnown) {
        console.out() << printable(path)
                      << " cannot be read, so what only it holds is not known. rackbook salvage "
                         "reads what it can.\n";
        return;
    }
    if (losses.entries == 0) {
        console.out() << "The backup holds all that " << printable(path) << " does.\n";
        return;
    }
    console.out() << counted(losses.entries) << " of " << printable(path)
                  << (losses.entries == 1 ? " is" : " are") << " not in the backup:\n\n";
    Table table({{"no.", Align::right}, {"recorded"}, {"by"}, {"what"}});
    for (const std::vector<JournalEntry>& intake : losses.intakes)
        table.addRow({std::to_string(intake.front().intake),
                      recordedInUtc(intake.front().recordedAt), intake.front().recordedBy,
                      intakeInShort(intake)});
    console.out() << table.text(console.width(), {}) << "\n";
}

BookFile openBackup(const CommandContext& context, const std::string& path) {
    BookOptions options = bookOptionsOf(context);
    options.path = path;
    BookFile backup = BookFile::openToRead(options);
    const Verification found = verify(backup, decodeRecord);
    if (!found.findings.empty())
        throw StoreError(path, "it is not what was recorded: " + describe(found.findings.front()),
                         "Take an earlier backup; rackbook verify --book tells all of it.");
    return backup;
}

void makeAnew(const BookOptions& options, const BookFile& backup, bool inPlace) {
    NewBook made(options, backup);
    made.settle();
    if (journalEndOf(made.book()).hash != journalEndOf(backup).hash)
        throw StoreError(options.path, "what was written there is not what the backup holds",
                         "Check the disk.");
    if (inPlace)
        made.finishInPlace();
    else
        made.finish();
}

// An attempt that was cut off may have left its copy.
std::string freeName(const std::string& wanted) {
    std::string name = wanted;
    for (int number = 2; fileExists(name); ++number)
        name = wanted + "-" + std::to_string(number);
    return name;
}

// The files as they are, whatever is in them.
void keepBytes(const std::string& path, const std::string& kept) {
    for (const char* ending : {"-wal", ""})
        if (fileExists(path + ending))
            copyFileSafely(path + ending, kept + ending);
}

// Everybody who has the book open goes on with it. One that cannot be opened is replaced as a file.
void putInPlace(const BookOptions& options, const BookFile& backup, const std::string& kept,
                bool canBeRead) {
    if (!canBeRead) {
        keepBytes(options.path, kept);
        makeAnew(options, backup, true);
        return;
    }
    BookFile present = BookFile::openToWrite(options);
    BookOptions aside = options;
    aside.path = kept;
    if (verify(present, decodeRecord).findings.empty())
        makeAnew(aside, present, false);
    else
        keepBytes(options.path, kept);
    becomeEqual(present, backup);
    if (!verify(present, decodeRecord).findings.empty())
        throw StoreError(
            options.path, "it was not restored as it should be",
            "What it was lies in " + kept + ". Move the book away and restore once more.");
}

ExitCode replace(CommandContext& context, const BookOptions& options, const BookFile& backup) {
    Console& console = context.console;
    const Losses losses = lossesIn(options, backup);
    print(console, options.path, losses);
    if (context.arguments.has("dry-run")) {
        console.out() << "Tried only: nothing was restored.\n";
        return ExitCode::success;
    }
    if (!context.arguments.has("replace"))
        throw UsageError("there is a book at " + options.path + ", and it was left as it is",
                         "Give --replace to put the backup in its place, or another name with "
                         "--book.");
    const std::string kept = freeName(options.path + ".before-" + stampOf(nowEpoch_s()));
    putInPlace(options, backup, kept, losses.isKnown);
    console.out() << "Restored: " << printable(options.path) << " holds "
                  << counted(journalEndOf(backup).entry) << ". What it was before lies in "
                  << printable(kept) << ".\n";
    return ExitCode::success;
}

ExitCode run(CommandContext& context) {
    const BookOptions options = bookOptionsOf(context);
    const BookFile backup = openBackup(context, context.arguments.text("backup"));
    if (fileExists(options.path))
        return replace(context, options, backup);
    if (context.arguments.has("dry-run")) {
        context.console.out() << "Tried only: nothing was restored.\n";
        return ExitCode::success;
    }
    makeAnew(options, backup, false);
    context.console.out() << "Restored: " << printable(options.path) << " holds "
                          << counted(journalEndOf(backup).entry) << ".\n";
    return ExitCode::success;
}

}  // namespace

Command restoreCommand() {
    CommandSpec spec;
    spec.name = "restore";
    spec.group = toTranslate("group", "The book");
    spec.summary = toTranslate("summary", "Bring a backup back as the book");
    spec.details =
        "Proves the backup as rackbook verify does, and makes the book that --book names equal to "
        "it. Where there is a book already, it says what only that one holds, and leaves it as it "
        "is unless --replace is given; even then what it was is kept beside it, under a name that "
        "ends in .before- and the moment. A backup of an earlier version is brought up to this "
        "one; the backup itself stays as it is.";
    spec.positionals = {{"backup", "The backup, as rackbook back-up made it, or any other book."}};
    spec.options = {flagOption("replace", "Put it in the place of the book that is there.")};
    spec.writesBook = true;
    spec.examples = {
        {"rackbook restore north-shed.rackbook --dry-run", "What would be lost by it?"},
        {"rackbook restore north-shed.rackbook --book tried.rackbook",
         "Under another name: an evening's test of the backup."}};
    return {spec, run};
}

}  // namespace rackbook
