#include "store/ForgetSaid.h"

#include "store/BookInner.h"
#include "store/Columns.h"

namespace rackbook {

void overwriteWhatGoes(BookFile& book) {
    book.inner().database->execute("PRAGMA secure_delete = ON");
}

std::size_t forgetSaid(BookFile& book, const std::vector<RecordName>& records) {
    Database& database = *book.inner().database;
    std::size_t count = 0;
    for (const RecordName& record : records) {
        const std::string kind = textOf(record.kind);
        Statement update = database.prepare(
            "UPDATE journal SET payload = NULL, salt = NULL WHERE kind = ?1 AND id = ?2 AND "
            "(payload IS NOT NULL OR salt IS NOT NULL) AND entry NOT IN (SELECT entry FROM " +
            quoted(kind) + " WHERE id = ?2)");
        update.bindText(1, kind);
        update.bindText(2, record.id);
        update.run();
        count += static_cast<std::size_t>(database.wholeOf("SELECT changes()"));
    }
    return count;
}

bool dropOldBytes(BookFile& book) {
    Database& database = *book.inner().database;
    // Deleted rows of long ago lie in free space that nothing overwrote then.
    database.execute("VACUUM");
    // The first column says whether someone was in the way.
    return database.wholeOf("PRAGMA wal_checkpoint(TRUNCATE)") == 0;
}

}  // namespace rackbook
