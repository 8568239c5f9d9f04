#include "commands/BackupNote.h"

#include "base/Clock.h"
#include "base/Error.h"
#include "base/Files.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr std::size_t largestNote = 100'000;
constexpr CivilMinute minutesOfDay = 24 * 60;

const std::int64_t* wholeIn(const Tree& tree, const char* name) {
    const Tree* member = tree.find(name);
    return member == nullptr ? nullptr : member->asWhole();
}

std::string textIn(const Tree& tree, const char* name) {
    const Tree* member = tree.find(name);
    const std::string* text = member == nullptr ? nullptr : member->asText();
    return text == nullptr ? std::string() : *text;
}

std::optional<BackupNote> noteIn(const Tree& tree) {
    const std::int64_t* madeAt_s = wholeIn(tree, "madeAt_s");
    const std::int64_t* entry = wholeIn(tree, "entry");
    if (madeAt_s == nullptr || entry == nullptr)
        return std::nullopt;
    return BackupNote{*madeAt_s, textIn(tree, "file"), {*entry, textIn(tree, "hash")}};
}

std::string entriesSince(const BookFile& book, const BackupNote& note) {
    const std::int64_t count = journalEndOf(book).entry - note.end.entry;
    return count == 0   ? "nothing was recorded since"
           : count == 1 ? "1 journal entry since"
                        : std::to_string(count) + " journal entries since";
}

}  // namespace

std::string backupNotePath(const std::string& bookPath) {
    return bookPath + ".backed-up";
}

void writeBackupNote(const std::string& bookPath, const BackupNote& note) {
    Tree tree;
    tree.set("rackbookBackup", 1)
        .set("madeAt", utcText(note.madeAt_s))
        .set("madeAt_s", note.madeAt_s)
        .set("file", note.file)
        .set("entry", note.end.entry)
        .set("hash", note.end.hash);
    writeFileSafely(backupNotePath(bookPath), jsonText(tree));
}

std::optional<BackupNote> backupNoteOf(const BookFile& book) {
    const std::string path = backupNotePath(book.path());
    if (!fileExists(path))
        return std::nullopt;
    try {
        const std::optional<BackupNote> note =
            noteIn(treeFromJson(readFile(path, largestNote), path));
        return note && holds(book, note->end) ? note : std::nullopt;
    } catch (const InputError&) {
        // A note that cannot be read vouches for nothing.
        return std::nullopt;
    }
}

TodaySection backUpSection(const BookFile& book, const Book& studio, CivilMinute asOf) {
    TodaySection section{"backUp", "Back up", {}};
    const std::optional<BackupNote> note = backupNoteOf(book);
    if (!note) {
        section.lines.push_back({"the book", {}, "no backup of it is known: rackbook back-up"});
        return section;
    }
    const CivilMinute madeAt = civilMinuteAt(note->madeAt_s, studio.timeZone);
    const double age_days = static_cast<double>(asOf - madeAt) / static_cast<double>(minutesOfDay);
    const std::int64_t wholeDays = asOf / minutesOfDay - madeAt / minutesOfDay;
    if (age_days >= HouseRules(studio.houseRules).value("backUp_days"))
        section.lines.push_back({"the book",
                                 {},
                                 "last done on " + formatDay(madeAt) + ", " +
                                     std::to_string(wholeDays) + " days ago; " +
                                     entriesSince(book, *note)});
    return section;
}

}  // namespace rackbook
