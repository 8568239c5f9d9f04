#include "store/Salvage.h"

#include <limits>
#include <map>
#include <set>
#include <tuple>

#include "base/Files.h"
#include "base/Sha256.h"
#include "store/BookInner.h"
#include "store/BrokenReferences.h"
#include "store/BytesTable.h"
#include "store/Journal.h"
#include "store/Migration.h"
#include "store/PageScan.h"
#include "store/Replay.h"

namespace rackbook {

namespace {

constexpr std::size_t journalColumns = 15;
constexpr std::size_t noLimit = std::numeric_limits<std::size_t>::max();

// Serial types of the file format: whole numbers are 1 to 6, 8 and 9; texts are odd from 13 on,
// blobs even from 12 on.
bool isWhole(std::uint64_t type) {
    return (type >= 1 && type <= 6) || type == 8 || type == 9;
}
bool isNothing(std::uint64_t type) {
    return type == 0;
}

const std::string* bytesIn(const ScannedValue& value) {
    return std::get_if<std::string>(&value);
}

std::optional<std::string> optionalIn(const ScannedValue& value) {
    const std::string* bytes = bytesIn(value);
    return bytes == nullptr ? std::nullopt : std::optional(*bytes);
}

std::optional<std::int64_t> wholeIn(const ScannedValue& value) {
    const std::int64_t* whole = std::get_if<std::int64_t>(&value);
    return whole == nullptr ? std::nullopt : std::optional(*whole);
}

// The columns of the journal in their order; nothing where one is of another kind.
std::optional<JournalRow> journalRowFrom(const ScannedRow& scanned) {
    const std::vector<ScannedValue>& v = scanned.values;
    const std::optional<std::int64_t> intake = wholeIn(v[1]);
    for (const std::size_t wanted : {2u, 3u, 5u, 6u, 7u, 12u, 13u, 14u})
        if (bytesIn(v[wanted]) == nullptr)
            return std::nullopt;
    if (!intake)
        return std::nullopt;
    JournalRow row;
    row.entry = scanned.rowid;
    row.intake = *intake;
    row.recordedAt = *bytesIn(v[2]);
    row.recordedBy = *bytesIn(v[3]);
    row.happenedAt = optionalIn(v[4]);
    row.action = *bytesIn(v[5]);
    row.kind = *bytesIn(v[6]);
    row.id = *bytesIn(v[7]);
    row.earlier = wholeIn(v[8]);
    row.reason = optionalIn(v[9]);
    row.salt = optionalIn(v[10]).value_or(std::string());
    row.payload = optionalIn(v[11]);
    row.payloadHash = *bytesIn(v[12]);
    row.previousHash = *bytesIn(v[13]);
    row.hash = *bytesIn(v[14]);
    return row;
}

std::string nameOfRow(const JournalRow& row) {
    return entryName(row.entry) + ", " + row.kind + " " + row.id;
}

using Rows = std::map<std::int64_t, JournalRow>;

class SalvageRun {
public:
    SalvageRun(const std::string& path, BookFile& into, const RecordDecoder& decode)
        : m_path(path),
          m_target(*into.inner().database),
          m_schemaFolder(into.inner().options.schemaFolder),
          m_decode(decode) {}

    Salvaged run() {
        const std::string log =
            fileExists(m_path + "-wal") ? readFile(m_path + "-wal", noLimit) : std::string();
        m_file = withLog(readFile(m_path, noLimit), log);
        findRows();
        tellGaps();
        dropUnplaced();
        writeJournal();
        writeFiles();
        for (const auto& [name, last] : m_aside)
            m_result.notPlaced.push_back(last.second);
        return std::move(m_result);
    }

private:
    void lose(const std::string& what, const std::string& cause) {
        m_result.losses.push_back({what, cause});
    }

    void findRows() {
        scanRows(m_file,
                 {journalColumns,
                  [](std::uint64_t first, std::uint64_t second) {
                      return isNothing(first) && isWhole(second);
                  }},
                 [&](ScannedRow& scanned) {
                     if (const std::optional<JournalRow> row = journalRowFrom(scanned))
                         consider(*row);
                 });
        for (auto& [entry, versions] : m_found)
            choose(entry, versions);
    }

    static bool isSound(const JournalRow& row) { return !wasChanged(row) && !isGone(row); }

    // A row may lie there more than once, with its record damaged in one place and whole in
    // another; what was forgotten in one stays so.
    void consider(const JournalRow& row) {
        if (rowHashOf(row) != row.hash)
            return;
        const auto [known, isNew] = m_found[row.entry].emplace(row.hash, row);
        if (!isNew && isSound(row) && !isForgotten(known->second))
            known->second = row;
    }

    // Where an entry was found with several hashes, the one that the entry before it leads to.
    void choose(std::int64_t entry, const std::map<std::string, JournalRow>& versions) {
        const JournalRow* chosen = &versions.begin()->second;
        const auto before = m_rows.find(entry - 1);
        for (const auto& [hash, row] : versions)
            if (before != m_rows.end() && row.previousHash == before->second.hash)
                chosen = &row;
        m_last = entry;
        if (isSound(*chosen))
            m_rows.emplace(entry, *chosen);
        else
            lose(nameOfRow(*chosen), "its record is damaged");
    }

    void tellGaps() {
        std::int64_t expected = 1;
        for (const auto& [entry, versions] : m_found) {
            if (entry > expected)
                lose(entry == expected + 1 ? entryName(expected)
                                           : "journal entries " + std::to_string(expected) +
                                                 " to " + std::to_string(entry - 1),
                     "nothing can be read");
            expected = entry + 1;
        }
        if (m_found.empty()) {
            lose("the journal", "no entry of it can be read");
            return;
        }
        const std::string end = "after " + entryName(m_last);
        if (m_file.isCut)
            lose(end, "the file is cut; what came there is not known");
        if (m_file.isLogDamaged)
            lose(end, "the log beside the file is damaged; what was recorded last may be missing");
        // The last entries leave no gap behind.
        if (!m_file.isCut && !m_file.isLogDamaged && !isInOrder(m_file))
            lose(end, "the file is damaged; whether more was recorded is not known");
    }

    // Entries are taken out until the rest can be made into tables.
    void dropUnplaced() {
        while (true) {
            Database trial(":memory:", OpenMode::create, 0);
            migrate(trial, m_schemaFolder, bookVersion);
            trial.execute("PRAGMA foreign_keys = OFF");
            Transaction transaction(trial);
            JournalWriter writer(trial);
            for (const auto& [entry, row] : m_rows) {
                JournalRow alone = row;
                // What it took the place of may be lost; nothing is made from that.
                alone.earlier.reset();
                writer.insertAsItStands(alone);
            }
            std::map<std::int64_t, std::string> misfits;
            Replay(trial, trial, m_decode, {}).run([&](std::int64_t entry, const std::string& why) {
                misfits.emplace(entry, why);
            });
            if (misfits.empty())
                noteStrikesTooMany(trial, misfits);
            if (misfits.empty())
                return;
            for (const auto& [entry, why] : misfits)
                takeOut(entry);
        }
    }

    // What was struck out after another record that named it was: where that strike is lost, this
    // one cannot stand.
    void noteStrikesTooMany(const Database& trial, std::map<std::int64_t, std::string>& misfits) {
        for (const BrokenReference& broken : brokenReferencesIn(trial))
            for (const auto& [entry, row] : m_rows)
                if (row.action == "strike" && row.kind == broken.wantedTable)
                    misfits.emplace(entry, std::string());
    }

    void takeOut(std::int64_t entry) {
        const auto found = m_rows.find(entry);
        const bool strikes = found->second.action == "strike";
        lose(nameOfRow(found->second),
             strikes ? "what was struck out stands again: another record may name it"
                     : "it names what was lost");
        if (!strikes && found->second.payload)
            keepAside(found->second);
        m_rows.erase(found);
    }

    // Of each record as it was said last.
    void keepAside(const JournalRow& row) {
        auto& [entry, payload] = m_aside[row.kind + " " + row.id];
        if (row.entry > entry)
            std::tie(entry, payload) = std::pair(row.entry, *row.payload);
    }

    bool isWholeChain() const {
        std::string previous = firstPreviousHash();
        std::int64_t expected = 1;
        for (const auto& [entry, row] : m_rows) {
            if (entry != expected++ || row.previousHash != previous)
                return false;
            previous = row.hash;
        }
        return true;
    }

    void writeJournal() {
        Transaction transaction(m_target);
        JournalWriter writer(m_target);
        m_result.isSameJournal = isWholeChain();
        std::map<std::int64_t, std::int64_t> numbers;
        for (auto& [entry, row] : m_rows) {
            if (m_result.isSameJournal) {
                writer.insertAsItStands(row);
                continue;
            }
            JournalRow anew = row;
            const auto earlier = row.earlier ? numbers.find(*row.earlier) : numbers.end();
            anew.earlier = earlier == numbers.end() ? std::nullopt : std::optional(earlier->second);
            numbers[entry] = writer.appendChained(anew);
        }
        projectAnew(m_target, m_decode);
        transaction.commit();
        m_result.entries = static_cast<std::int64_t>(m_rows.size());
        if (m_rows.empty())
            return;
        m_result.firstKept = m_rows.begin()->first;
        m_result.lastKept = m_rows.rbegin()->first;
        m_result.lastRecordedAt = m_rows.rbegin()->second.recordedAt;
    }

    void writeFiles() {
        std::set<std::string> wanted;
        Statement named = m_target.prepare("SELECT DISTINCT sha256 FROM attachment");
        while (named.step())
            wanted.insert(named.text(0));
        named.reset();
        Transaction transaction(m_target);
        BytesTable table(m_target);
        scanRows(m_file,
                 {2,
                  [](std::uint64_t first, std::uint64_t second) {
                      return first == 13 + 2 * 64 && second >= 12 && second % 2 == 0;
                  }},
                 [&](ScannedRow& row) {
                     const std::string& hash = std::get<std::string>(row.values[0]);
                     const std::string& bytes = std::get<std::string>(row.values[1]);
                     if (wanted.count(hash) == 0 || sha256(bytes) != hash)
                         return;
                     table.put(hash, bytes);
                     wanted.erase(hash);
                     ++m_result.files;
                 });
        transaction.commit();
    }

    std::string m_path;
    Database& m_target;
    std::string m_schemaFolder;
    const RecordDecoder& m_decode;
    ScannedFile m_file;
    std::map<std::int64_t, std::map<std::string, JournalRow>> m_found;  // by entry, hash
    Rows m_rows;
    std::map<std::string, std::pair<std::int64_t, std::string>> m_aside;
    std::int64_t m_last = 0;
    Salvaged m_result;
};

}  // namespace

Salvaged salvage(const std::string& damagedPath, BookFile& into, const RecordDecoder& decode) {
    return SalvageRun(damagedPath, into, decode).run();
}

}  // namespace rackbook
