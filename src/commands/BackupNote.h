// When a book was backed up last: a note in a file beside it. It is no record: in the journal it
// would make the book another one than its backup at once.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "commands/TodayPlan.h"
#include "records/HouseRules.h"
#include "store/JournalEnd.h"

namespace rackbook {

struct BackupNote {
    std::int64_t madeAt_s = 0;  // since 1970-01-01T00:00Z
    std::string file;           // as it was named
    JournalEnd end;             // of the journal in it
};

// "studio.rackbook.backed-up"
std::string backupNotePath(const std::string& bookPath);

// Throws StoreError.
void writeBackupNote(const std::string& bookPath, const BackupNote& note);
// Nothing where there is none that can be read, or it is about another book.
std::optional<BackupNote> backupNoteOf(const BookFile& book);

// What `today` says about it: one line where the house rule backUp_days is passed on that day.
TodaySection backUpSection(const BookFile& book, const Book& studio, CivilMinute asOf);

}  // namespace rackbook
