#include "store/Verification.h"

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

#include "base/Error.h"
#include "base/Sha256.h"
#include "store/BookInner.h"
#include "store/BytesTable.h"
#include "store/Columns.h"
#include "store/Journal.h"
#include "store/Migration.h"
#include "store/Replay.h"
#include "store/TableComparison.h"

namespace rackbook {

namespace {

constexpr const char* rebuildRemedy =
    "Run rackbook verify --rebuild to make it again from the journal.";
constexpr const char* restoreRemedy = "Keep the file as it is and restore the last backup.";

Finding finding(const std::string& rule, const std::string& record, const std::string& what,
                const std::string& remedy) {
    Finding found;
    found.rule = rule;
    found.where.record = record;
    found.what = what;
    found.remedy = remedy;
    return found;
}

// What the file defines, by "table mix" or "index block_edition".
std::map<std::string, std::string> definitionsIn(const Database& database) {
    std::map<std::string, std::string> definitions;
    Statement rows = database.prepare(
        "SELECT type || ' ' || name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%'");
    while (rows.step())
        definitions.emplace(rows.text(0), rows.text(1));
    return definitions;
}

class Proof {
public:
    Proof(const BookFile& book, const RecordDecoder& decode, const OnEntries& onEntries)
        : m_book(book),
          m_database(*book.inner().database),
          m_decode(decode),
          m_onEntries(onEntries) {}

    // The findings about the journal alone.
    std::vector<Finding> journalFindings() {
        checkChain();
        return std::move(m_result.findings);
    }

    Verification run() {
        // One view of the book for all the checks, whatever a writer does meanwhile.
        Transaction view(*m_book.inner().database, false);
        // First, since what is to be done about the rest depends on it.
        checkChain();
        checkFile();
        compareTables();
        checkBytes();
        return std::move(m_result);
    }

private:
    void add(const std::string& rule, const std::string& record, const std::string& what,
             const std::string& remedy) {
        m_result.findings.push_back(finding(rule, record, what, remedy));
    }

    void checkFile() {
        Statement integrity = m_database.prepare("PRAGMA integrity_check(100)");
        while (integrity.step())
            if (integrity.view(0) != "ok")
                add("file", m_book.path(), "SQLite finds: " + integrity.text(0), restoreRemedy);
        Statement references = m_database.prepare("PRAGMA foreign_key_check");
        while (references.step())
            add("references", references.text(0) + " row " + std::to_string(references.whole(1)),
                "it names a row of " + references.text(2) + " that is not there", mending());
    }

    void checkChain() {
        JournalReader journal(m_database);
        JournalRow row;
        std::string previous = firstPreviousHash();
        std::int64_t expected = 1;
        const std::size_t before = m_result.findings.size();
        EntryCounter counter(m_onEntries);
        while (journal.next(row)) {
            counter.next();
            if (row.entry != expected)
                add("chain", entryName(row.entry),
                    "entries " + std::to_string(expected) + " to " + std::to_string(row.entry - 1) +
                        " are missing before it",
                    restoreRemedy);
            if (row.previousHash != previous)
                add("chain", entryName(row.entry),
                    "it does not follow the entry that stands before it", restoreRemedy);
            if (wasChanged(row))
                add("chain", entryName(row.entry),
                    "its record, " + row.kind + " " + row.id +
                        ", was changed after it was recorded",
                    restoreRemedy);
            if (rowHashOf(row) != row.hash)
                add("chain", entryName(row.entry), "it was changed after it was recorded",
                    restoreRemedy);
            if (isGone(row))
                add("chain", entryName(row.entry),
                    "its record is gone, though it was not forgotten: its salt is there",
                    restoreRemedy);
            m_result.forgotten += row.payload ? 0 : 1;
            previous = row.hash;
            expected = row.entry + 1;
            ++m_result.entries;
        }
        m_result.lastHash = hexOf(previous);
        if (tablesKnowMore())
            add("chain", "the journal", "the tables name entries that it does not hold",
                restoreRemedy);
        m_journalIsSound = m_result.findings.size() == before;
    }

    // Rows that come from entries which are not there: the journal has lost its end.
    bool tablesKnowMore() const {
        for (const std::string& kind : enumNames<RecordKind>())
            if (m_database.wholeOf("SELECT count(*) FROM " + quoted(kind) +
                                   " WHERE entry NOT IN (SELECT entry FROM journal)") > 0)
                return true;
        return false;
    }

    // Making tables again from a damaged journal would spoil what is whole.
    const char* mending() const { return m_journalIsSound ? rebuildRemedy : restoreRemedy; }

    void compareTables() {
        const BookOptions& options = m_book.inner().options;
        Database again(":memory:", OpenMode::create, 0);
        migrate(again, options.schemaFolder, bookVersion);
        // Rows name journal entries that are not copied here.
        again.execute("PRAGMA foreign_keys = OFF");
        {
            Transaction transaction(again);
            Replay(m_database, again, m_decode, m_onEntries)
                .run([&](std::int64_t entry, const std::string& what) {
                    add("projection", entryName(entry), what, restoreRemedy);
                });
            transaction.commit();
        }
        compareDefinitions(again);
        const std::vector<std::string> mine = projectionTables(m_database);
        for (const std::string& table : projectionTables(again))
            if (std::find(mine.begin(), mine.end(), table) != mine.end())
                rackbook::compareTables(m_database, again, table,
                                        [&](const std::string& row, const std::string& what) {
                                            add("projection", row, what, mending());
                                        });
    }

    // Tables, indexes and whatever else a file can define, triggers among them.
    void compareDefinitions(const Database& again) {
        const std::map<std::string, std::string> wanted = definitionsIn(again);
        const std::map<std::string, std::string> found = definitionsIn(m_database);
        for (const auto& [name, sql] : wanted) {
            const auto mine = found.find(name);
            if (mine == found.end())
                add("tables", name, "it is missing", restoreRemedy);
            else if (mine->second != sql)
                add("tables", name, "it is not defined as in a book of this version",
                    restoreRemedy);
        }
        for (const auto& [name, sql] : found)
            if (wanted.count(name) == 0)
                add("tables", name, "it does not belong to a book", restoreRemedy);
    }

    // The journal does not hold these; the hash in an attachment's record vouches for them.
    void checkBytes() {
        std::map<std::string, std::string> names;
        Statement rows = m_database.prepare("SELECT sha256, id FROM attachment ORDER BY key DESC");
        while (rows.step())
            names[rows.text(0)] = rows.text(1);
        std::set<std::string> kept;
        BytesTable(m_database).forEach([&](const std::string& hash, bool isSound) {
            ++m_result.bytesKept;
            kept.insert(hash);
            const auto named = names.find(hash);
            const std::string name =
                named == names.end() ? "file " + hash : nameOf(Attachment::kind, named->second);
            if (named == names.end())
                add("bytes", name, "it is in the book and belongs to no record", restoreRemedy);
            if (!isSound)
                add("bytes", name, "its bytes are not those that were recorded",
                    "Take in or attach the same file again, or restore the last backup.");
        });
        Statement attachments =
            m_database.prepare("SELECT id, sha256 FROM attachment ORDER BY key");
        while (attachments.step())
            if (kept.count(attachments.text(1)) == 0)
                m_result.withoutBytes.push_back(attachments.text(0));
    }

    const BookFile& m_book;
    const Database& m_database;
    const RecordDecoder& m_decode;
    const OnEntries& m_onEntries;
    bool m_journalIsSound = true;
    Verification m_result;
};

}  // namespace

Verification verify(const BookFile& book, const RecordDecoder& decode, const OnEntries& onEntries) {
    return Proof(book, decode, onEntries).run();
}

std::int64_t journalLength(const BookFile& book) {
    return book.inner().database->wholeOf("SELECT count(*) FROM journal");
}

void rebuild(BookFile& book, const RecordDecoder& decode) {
    Database& database = *book.inner().database;
    const OnEntries silent;
    if (!Proof(book, decode, silent).journalFindings().empty())
        throw StoreError(book.path(), "its journal is damaged, so the tables are not made from it",
                         restoreRemedy);
    Transaction transaction(database);
    projectAnew(database, decode);
    transaction.commit();
}

}  // namespace rackbook
