// The tables made from the journal. Private to store/.
#pragma once

#include <limits>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/Error.h"
#include "records/Forgetting.h"
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

constexpr std::int64_t wholeJournal = std::numeric_limits<std::int64_t>::max();

// Writes the tables from the journal of `source` into `target`, which holds empty tables. Entries
// after `last` are passed over. An entry that was forgotten projects nothing; a record of which
// nothing else is known by then stands there as what was left of it, so that others can name it.
class Replay {
public:
    Replay(const Database& source, Database& target, const RecordDecoder& decode,
           const OnEntries& onEntries, std::int64_t last = wholeJournal)
        : m_source(source),
          m_last(last),
          m_keys(target),
          m_projector(target, m_keys),
          m_decode(decode),
          m_counter(onEntries) {}

    // What could not be replayed is told to `complain`.
    template <class Complain>
    void run(Complain&& complain) {
        findKeys();
        JournalReader journal(m_source,
                              "WHERE entry <= " + std::to_string(m_last) + " ORDER BY entry");
        JournalRow row;
        std::unordered_map<std::string, bool> seen;
        while (journal.next(row)) {
            m_counter.next();
            const std::string name = row.kind + " " + row.id;
            if (!row.payload) {
                passForgotten(row, seen.count(name) != 0);
                continue;
            }
            try {
                const Record record = m_decode(*row.payload);
                if (nameOf(kindOf(record), idOf(record)) != name) {
                    complain(row.entry, "it holds another record than the one it names");
                    continue;
                }
                const std::optional<std::int64_t> key = m_keys.find(kindOf(record), row.id);
                if (key && row.action == "strike") {
                    strike(kindOf(record), row.id, *key);
                    continue;
                }
                if (!m_forgotten.empty())
                    m_forgotten.erase({kindOf(record), row.id});
                const bool isNew = seen.emplace(name, true).second;
                if (!key || !m_projector.write(record, *key, row.entry, isNew).empty())
                    complain(row.entry, "its record does not fit the journal around it");
            } catch (const InputError& error) {
                complain(row.entry, error.what());
            }
        }
        writeForgotten();
    }

private:
    using Name = std::pair<RecordKind, std::string>;

    void passForgotten(const JournalRow& row, bool isKnown) {
        const std::optional<RecordKind> kind = enumFrom<RecordKind>(row.kind);
        const std::optional<std::int64_t> key =
            kind ? m_keys.find(*kind, row.id) : std::optional<std::int64_t>();
        if (!key)
            return;
        if (row.action == "strike")
            strike(*kind, row.id, *key);
        else if (!isKnown)
            m_forgotten[{*kind, row.id}] = row.entry;
    }

    void strike(RecordKind kind, const std::string& id, std::int64_t key) {
        m_projector.erase(kind, key);
        m_forgotten.erase({kind, id});
    }

    // Of each as the journal has it from its forgetting on, which may come after `last`.
    void writeForgotten() {
        Statement after = m_source.prepare(
            "SELECT payload FROM journal WHERE kind = ? AND id = ? AND entry > ? AND payload IS "
            "NOT NULL AND action <> 'strike' ORDER BY entry LIMIT 1");
        for (const auto& [name, entry] : m_forgotten) {
            const auto& [kind, id] = name;
            const std::string word = textOf(kind);
            after.bindText(1, word);
            after.bindText(2, id);
            after.bind(3, entry);
            const std::optional<std::string> payload =
                after.step() ? std::optional(after.text(0)) : std::nullopt;
            after.reset();
            const std::int64_t key = *m_keys.find(kind, id);
            if (!(payload && writeLeft(*payload, key, entry)))
                if (const std::optional<Record> least = forgotten(kind, id))
                    m_projector.write(*least, key, entry, true);
        }
    }

    // False where it cannot be read or names what was not there yet.
    bool writeLeft(const std::string& payload, std::int64_t key, std::int64_t entry) {
        try {
            const Record said = m_decode(payload);
            return m_projector.write(forgotten(said).value_or(said), key, entry, true).empty();
        } catch (const InputError&) {
            return false;
        }
    }

    // An intake may name records that come later in it, so every key is known first. A record
    // whose payload was taken out keeps its key, so that those after it keep theirs.
    void findKeys() {
        Statement rows =
            m_source.prepare("SELECT kind, id FROM journal WHERE entry <= ? ORDER BY entry");
        rows.bind(1, m_last);
        while (rows.step()) {
            const std::optional<RecordKind> kind = enumFrom<RecordKind>(rows.view(0));
            const std::string id = rows.text(1);
            if (kind && !m_keys.find(*kind, id))
                m_keys.assign(*kind, id);
        }
    }

    const Database& m_source;
    std::int64_t m_last;
    Keys m_keys;
    std::map<Name, std::int64_t> m_forgotten;  // records of which nothing else is known: last entry
    Projector m_projector;
    const RecordDecoder& m_decode;
    EntryCounter m_counter;
};

// Empties every projection and makes it again from the journal of the same database, up to entry
// `last`. Throws StoreError where an entry cannot be replayed. Pre: a transaction is open.
void projectAnew(Database& database, const RecordDecoder& decode, std::int64_t last = wholeJournal);

}  // namespace rackbook
