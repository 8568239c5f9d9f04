// The tables made from the journal. Private to store/.
#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "base/Error.h"
#include "store/Journal.h"
#include "store/Projector.h"
#include "store/Verification.h"

namespace rackbook {

// Tables that are projections: all but the journal and the bytes of attachments.
std::vector<std::string> projectionTables(const Database& database);

// "journal entry 12"
std::string entryName(std::int64_t entry);

constexpr std::size_t progressStep = 1000;

// Tells the caller of every thousandth entry.
class EntryCounter {
public:
    explicit EntryCounter(const OnEntries& onEntries) : m_onEntries(onEntries) {}
    void next() {
        if (++m_count % progressStep == 0 && m_onEntries)
            m_onEntries(progressStep);
    }

private:
    const OnEntries& m_onEntries;
    std::size_t m_count = 0;
};

// Writes the tables from the journal of `source` into `target`, which holds empty tables.
class Replay {
public:
    Replay(const Database& source, Database& target, const RecordDecoder& decode,
           const OnEntries& onEntries)
        : m_source(source),
          m_keys(target),
          m_projector(target, m_keys),
          m_decode(decode),
          m_counter(onEntries) {}

    // What could not be replayed is told to `complain`.
    template <class Complain>
    void run(Complain&& complain) {
        findKeys();
        JournalReader journal(m_source);
        JournalRow row;
        std::unordered_map<std::string, bool> seen;
        while (journal.next(row)) {
            m_counter.next();
            if (!row.payload)
                continue;
            const std::string name = row.kind + " " + row.id;
            try {
                const Record record = m_decode(*row.payload);
                if (nameOf(kindOf(record), idOf(record)) != name) {
                    complain(row.entry, "it holds another record than the one it names");
                    continue;
                }
                const std::optional<std::int64_t> key = m_keys.find(kindOf(record), row.id);
                if (key && row.action == "strike") {
                    m_projector.erase(kindOf(record), *key);
                    continue;
                }
                const bool isNew = seen.emplace(name, true).second;
                if (!key || !m_projector.write(record, *key, row.entry, isNew).empty())
                    complain(row.entry, "its record does not fit the journal around it");
            } catch (const InputError& error) {
                complain(row.entry, error.what());
            }
        }
    }

private:
    // An intake may name records that come later in it, so every key is known first. A record
    // whose payload was taken out keeps its key, so that those after it keep theirs.
    void findKeys() {
        Statement rows = m_source.prepare("SELECT kind, id FROM journal ORDER BY entry");
        while (rows.step()) {
            const std::optional<RecordKind> kind = enumFrom<RecordKind>(rows.view(0));
            const std::string id = rows.text(1);
            if (kind && !m_keys.find(*kind, id))
                m_keys.assign(*kind, id);
        }
    }

    const Database& m_source;
    Keys m_keys;
    Projector m_projector;
    const RecordDecoder& m_decode;
    EntryCounter m_counter;
};

// Empties every projection and makes it again from the journal of the same database. Throws
// StoreError where an entry cannot be replayed. Pre: a transaction is open.
void projectAnew(Database& database, const RecordDecoder& decode);

}  // namespace rackbook
