#include "store/BookOfRecords.h"

#include "base/Error.h"
#include "store/BookInner.h"
#include "store/Columns.h"
#include "store/Replay.h"

namespace rackbook {

BookFile bookOfRecords(const BookOptions& options, const std::vector<Entry>& entries) {
    BookFile made = BookFile::openToTry(options);
    Database& database = *made.inner().database;
    {
        Transaction transaction(database);
        database.execute("PRAGMA defer_foreign_keys = ON");
        for (const std::string& table : projectionTables(database))
            database.execute("DELETE FROM " + quoted(table));
        database.execute(
            "DELETE FROM attachmentBytes; DELETE FROM journal; DELETE FROM sqlite_sequence");
        transaction.commit();
    }
    IntakeTerms terms;
    terms.recordedBy = "rackbook";
    terms.recordedAt = "1970-01-01T00:00:00Z";
    const IntakeResult taken = take(made, entries, terms);
    if (!taken.problems.empty())
        throw StoreError(options.path,
                         "its records do not fit together: " + taken.problems.front().what,
                         "rackbook audit and rackbook verify tell more.");
    return made;
}

}  // namespace rackbook
