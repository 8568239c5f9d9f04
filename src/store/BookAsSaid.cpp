#include "store/BookAsSaid.h"

#include "store/BookInner.h"
#include "store/Replay.h"

namespace rackbook {

BookFile bookAsSaid(const BookFile& book, const std::string& before, const RecordDecoder& decode) {
    BookFile said = BookFile::openToTry(book.inner().options);
    Database& database = *said.inner().database;
    Statement last =
        database.prepare("SELECT coalesce(max(entry), 0) FROM journal WHERE recordedAt < ?");
    last.bindText(1, before);
    last.step();
    const std::int64_t kept = last.whole(0);
    last.reset();
    Transaction transaction(database);
    database.execute("PRAGMA defer_foreign_keys = ON");
    // While the end of the journal is still there: it says what was left of what had to be
    // forgotten.
    projectAnew(database, decode, kept);
    database.execute("DELETE FROM journal WHERE entry > " + std::to_string(kept));
    transaction.commit();
    return said;
}

}  // namespace rackbook
