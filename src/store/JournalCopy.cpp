#include "store/JournalCopy.h"

#include "base/Sha256.h"
#include "store/BookInner.h"
#include "store/BytesTable.h"
#include "store/NewBook.h"
#include "store/Replay.h"

namespace rackbook {

namespace {

void requireNext(const JournalRow& row, std::int64_t entry, const std::string& previousHash) {
    const std::string remedy = "Take another copy: this one is not what was recorded.";
    if (row.entry != entry)
        throw InputError(entryName(row.entry), "entry " + std::to_string(entry) + " should be here",
                         remedy);
    if (row.previousHash != previousHash)
        throw InputError(entryName(entry), "it does not follow the entry before it", remedy);
    if (wasChanged(row))
        throw InputError(entryName(entry), "its record was changed after it was recorded", remedy);
    if (isGone(row))
        throw InputError(entryName(entry), "its record is gone, though it was not forgotten",
                         remedy);
    if (rowHashOf(row) != row.hash)
        throw InputError(entryName(entry), "it was changed after it was recorded", remedy);
}

std::int64_t copyRows(Database& database, const NextJournalRow& next, const OnEntries& onEntries) {
    JournalWriter writer(database);
    std::string previous = firstPreviousHash();
    std::int64_t entry = 1;
    EntryCounter counter(onEntries);
    JournalRow row;
    for (; next(row); ++entry) {
        requireNext(row, entry, previous);
        writer.insertAsItStands(row);
        previous = row.hash;
        counter.next();
    }
    return entry - 1;
}

void copyBytes(Database& database, const BytesByHash& bytesOf) {
    std::vector<std::string> hashes;
    {
        Statement rows = database.prepare("SELECT DISTINCT sha256 FROM attachment ORDER BY sha256");
        while (rows.step())
            hashes.push_back(rows.text(0));
    }
    BytesTable table(database);
    for (const std::string& hash : hashes)
        if (const std::optional<std::string> bytes = bytesOf(hash)) {
            if (sha256(*bytes) != hash)
                throw InputError("the file of attachment " + hash, "it has other bytes",
                                 "Take another copy: this one is not what was recorded.");
            table.put(hash, *bytes);
        }
}

}  // namespace

void eachJournalRow(const BookFile& book, const std::function<void(const JournalRow&)>& see) {
    Transaction view(*book.inner().database, false);
    JournalReader journal(*book.inner().database);
    JournalRow row;
    while (journal.next(row))
        see(row);
}

std::int64_t bookOfJournal(const BookOptions& options, const NextJournalRow& next,
                           const BytesByHash& bytesOf, const RecordDecoder& decode,
                           const OnEntries& onEntries) {
    NewBook made(options);
    std::int64_t entries = 0;
    {
        Database& database = *made.book().inner().database;
        Transaction transaction(database);
        database.execute("PRAGMA defer_foreign_keys = ON");
        entries = copyRows(database, next, onEntries);
        projectAnew(database, decode);
        copyBytes(database, bytesOf);
        transaction.commit();
    }
    made.finish();
    return entries;
}

}  // namespace rackbook
