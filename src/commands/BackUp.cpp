#include "commands/BackUp.h"

#include <sys/stat.h>

#include <QFile>

#include "base/Clock.h"
#include "base/Files.h"
#include "base/Text.h"
#include "commands/BackupFiles.h"
#include "commands/BackupNote.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "exchange/RecordCodec.h"
#include "store/NewBook.h"
#include "store/Verification.h"

namespace rackbook {

namespace {

constexpr int mostKept = 10'000;

bool areOnOneDisk(const std::string& one, const std::string& other) {
    struct stat first;
    struct stat second;
    return stat(one.c_str(), &first) == 0 && stat(other.c_str(), &second) == 0 &&
           first.st_dev == second.st_dev;
}

// A copy of a book that is not what was recorded would push out good ones.
void requireSound(const BookFile& book) {
    const Verification found = verify(book, decodeRecord);
    if (!found.findings.empty())
        throw StoreError(book.path(),
                         "it is not what was recorded, so no backup was made of it: " +
                             describe(found.findings.front()),
                         "rackbook verify tells all of it; keep the backups there are.");
}

// What was written is read again from the disk and held against the book.
JournalEnd copyTo(const std::string& path, const CommandContext& context, const BookFile& book) {
    const JournalEnd end = journalEndOf(book);
    BookOptions options = bookOptionsOf(context);
    options.path = path;
    NewBook copy(options, book);
    copy.restAlone();
    copy.settle();
    const Verification found = verify(copy.book(), decodeRecord);
    if (!found.findings.empty() || journalEndOf(copy.book()).hash != end.hash)
        throw StoreError(path, "what was written there is not what the book holds",
                         "Check that disk, and back up to another one.");
    copy.finish();
    return end;
}

std::vector<std::string> namesIn(const std::string& folder) {
    std::vector<std::string> names;
    for (const std::string& path : filesBelow(folder, ".rackbook").paths)
        if (folderOf(path) == folderOf(pathOf(folder, "x")))
            names.push_back(fileNameOf(path));
    return names;
}

void dropSuperseded(Console& console, const std::string& folder, const std::string& bookPath,
                    const Keeping& keeping) {
    for (const std::string& name : superseded(bookPath, namesIn(folder), keeping)) {
        const std::string path = pathOf(folder, name);
        if (QFile::remove(QString::fromStdString(path)))
            console.out() << "No longer kept: " << printable(path) << "\n";
        else
            console.err() << "rackbook: " << printable(path) << " cannot be removed.\n";
    }
}

std::optional<Keeping> keepingGiven(const CommandContext& context, bool isInFolder) {
    const std::optional<int> days = wholeGiven(context, "keep-days", "--keep-days", 0, mostKept);
    const std::optional<int> months =
        wholeGiven(context, "keep-months", "--keep-months", 0, mostKept);
    if (!days && !months)
        return std::nullopt;
    if (!isInFolder)
        throw UsageError("--keep-days and --keep-months are about a folder of backups",
                         "Name a folder that is there.");
    return Keeping{static_cast<std::size_t>(days.value_or(0)),
                   static_cast<std::size_t>(months.value_or(0))};
}

ExitCode run(CommandContext& context) {
    if (context.arguments.has("said-on"))
        throw UsageError("a backup is of the book as it is now, with all that it ever said",
                         "Leave --said-on out.");
    const std::string where = context.arguments.text("where");
    const bool isInFolder = isFolder(where);
    const std::optional<Keeping> keeping = keepingGiven(context, isInFolder);
    const BookFile book = bookToRead(context);
    const std::int64_t now_s = nowEpoch_s();
    const std::string path = isInFolder ? pathOf(where, backupName(book.path(), now_s)) : where;
    if (fileExists(path))
        throw UsageError(path + " is there already", "Name another file, or a folder.");
    requireSound(book);
    const JournalEnd end = copyTo(path, context, book);
    Console& console = context.console;
    console.out() << printable(path) << ": " << end.entry
                  << (end.entry == 1 ? " journal entry" : " journal entries")
                  << ", read again and found to be what the book holds.\n";
    if (end.entry > 0)
        console.out() << "Hash of the last entry: " << end.hash << "\n";
    writeBackupNote(book.path(), {now_s, path, end});
    if (keeping)
        dropSuperseded(console, where, book.path(), *keeping);
    if (areOnOneDisk(book.path(), path))
        console.err()
            << "rackbook: that lies on the same disk as the book, and goes with it. Put a "
               "copy elsewhere.\n";
    return ExitCode::success;
}

}  // namespace

Command backUpCommand() {
    CommandSpec spec;
    spec.name = "back-up";
    spec.group = toTranslate("group", "The book");
    spec.summary = toTranslate("summary", "Make a copy of the book that can stand in for it");
    spec.details =
        "The book may be in use meanwhile; the copy is one state of it. It is read again from "
        "where "
        "it was written, proved as rackbook verify does, held against the book, and brought to the "
        "disk before it gets its name. A book that is not what was recorded is not backed up.\n\n"
        "In a folder a backup is named after the book and the moment, in UTC. --keep-days and "
        "--keep-months then remove earlier ones of the same book: of each of so many days and "
        "months that have a backup its last one stays, and the latest of all always does. Without "
        "them nothing is removed.\n\n"
        "When it was made is noted in a file beside the book, whose name ends in .backed-up; "
        "rackbook today reminds once the house rule backUp_days is passed. rackbook restore brings "
        "a backup back.";
    spec.positionals = {{"where", "A folder that is there, or the name of a new file."}};
    spec.options = {
        valueOption("keep-days", "COUNT", "Keep the last backup of each of so many days."),
        valueOption("keep-months", "COUNT", "Keep the last backup of each of so many months too.")};
    spec.caution =
        "A backup on the same disk is none: what breaks, burns or is stolen takes both. Keep one "
        "in another house, and try now and then to restore it.";
    spec.examples = {{"rackbook back-up north-shed.rackbook", "One file."},
                     {"rackbook back-up . --keep-days 14 --keep-months 24",
                      "Into a folder, every evening; about forty files stay."}};
    return {spec, run};
}

}  // namespace rackbook
