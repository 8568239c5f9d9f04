#include "store/Replay.h"

#include "store/Columns.h"

namespace rackbook {

std::vector<std::string> projectionTables(const Database& database) {
    std::vector<std::string> names;
    Statement rows = database.prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT IN ('journal', "
        "'attachmentBytes') AND name NOT LIKE 'sqlite_%' ORDER BY rowid");
    while (rows.step())
        names.push_back(rows.text(0));
    return names;
}

std::string entryName(std::int64_t entry) {
    return "journal entry " + std::to_string(entry);
}

void projectAnew(Database& database, const RecordDecoder& decode, std::int64_t last) {
    database.execute("PRAGMA defer_foreign_keys = ON");
    for (const std::string& table : projectionTables(database))
        database.execute("DELETE FROM " + quoted(table));
    // Keys are given from 1 on again, in the same order.
    database.execute("DELETE FROM sqlite_sequence");
    Replay(database, database, decode, {}, last)
        .run([&](std::int64_t entry, const std::string& what) {
            throw StoreError(database.path(), entryName(entry) + ": " + what,
                             "Keep the file as it is and restore the last backup.");
        });
}

}  // namespace rackbook
