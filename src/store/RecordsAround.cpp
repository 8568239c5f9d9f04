#include "store/RecordsAround.h"

#include <algorithm>
#include <array>
#include <functional>
#include <set>

#include "store/BookInner.h"
#include "store/HistoryScope.h"
#include "store/RecordRows.h"

namespace rackbook {

namespace {

using KeySet = std::set<std::int64_t>;

constexpr RecordKind ofTheStudio[] = {
    RecordKind::book,    RecordKind::party,    RecordKind::place,   RecordKind::lot,
    RecordKind::balance, RecordKind::drawdown, RecordKind::reading, RecordKind::stockTake,
    RecordKind::weather, RecordKind::metering};

bool isOfTheStudio(RecordKind kind) {
    return std::find(std::begin(ofTheStudio), std::end(ofTheStudio), kind) != std::end(ofTheStudio);
}

// Notes the keys that the references of one record's row and lists hold.
template <class R>
class KeysNamed {
public:
    KeysNamed(const Database& database, std::array<KeySet, recordKinds>& into)
        : m_database(database), m_into(into) {}

    void of(const KeySet& keys) {
        m_keys = &keys;
        const R sample{};
        R::fields(sample, *this);
    }

    template <class T>
    void operator()(const char* name, const T&) {
        note<T>(name);
    }

private:
    template <class T>
    void note(const char* name) {
        if constexpr (IsOptional<T>::value) {
            note<typename T::value_type>(name);
        } else if constexpr (IsRef<T>::value) {
            using Target = typename IsRef<T>::Target;
            read(Target::kind, "SELECT " + quoted(name) + " FROM " + tableOf<R>() +
                                   " WHERE key = ? AND " + quoted(name) + " IS NOT NULL");
        } else if constexpr (IsVector<T>::value) {
            using Item = typename T::value_type;
            if constexpr (IsRef<Item>::value)
                read(IsRef<Item>::Target::kind, "SELECT " + quoted(itemColumn<Item>()) + " FROM " +
                                                    listTableOf<R>(name) + " WHERE " +
                                                    quoted(textOf(R::kind)) + " = ?");
        }
    }

    void read(RecordKind target, const std::string& sql) {
        if (isOfTheStudio(target))
            return;
        Statement rows = m_database.prepare(sql);
        for (const std::int64_t key : *m_keys) {
            rows.bind(1, key);
            while (rows.step())
                m_into[static_cast<std::size_t>(target)].insert(rows.whole(0));
            rows.reset();
        }
    }

    const Database& m_database;
    std::array<KeySet, recordKinds>& m_into;
    const KeySet* m_keys = nullptr;
};

class AroundSearch {
public:
    explicit AroundSearch(const Database& database) : m_database(database) {}

    RecordSet run(const AroundWanted& wanted) {
        seedFrom(wanted);
        addHappenings();
        addPictures();
        return read();
    }

private:
    KeySet& keys(RecordKind kind) { return m_keys[static_cast<std::size_t>(kind)]; }

    // All first columns of what a statement says of each text.
    void insertByText(const std::string& sql, const std::vector<std::string>& texts, KeySet& into) {
        Statement rows = m_database.prepare(sql);
        for (const std::string& text : texts) {
            rows.bindText(1, text);
            while (rows.step())
                into.insert(rows.whole(0));
            rows.reset();
        }
    }

    void insertByKey(const std::string& sql, const KeySet& keys, KeySet& into) {
        Statement rows = m_database.prepare(sql);
        KeySet found;
        for (const std::int64_t key : keys) {
            rows.bind(1, key);
            while (rows.step())
                found.insert(rows.whole(0));
            rows.reset();
        }
        into.insert(found.begin(), found.end());
    }

    void seedFrom(const AroundWanted& wanted) {
        insertByText("SELECT key FROM edition WHERE id = ?", wanted.editions,
                     keys(RecordKind::edition));
        insertByText("SELECT key FROM impression WHERE id = ?", wanted.impressions,
                     keys(RecordKind::impression));
        insertByText("SELECT key FROM transfer WHERE id = ?", wanted.transfers,
                     keys(RecordKind::transfer));
        m_editions = keys(RecordKind::edition);
        insertByKey("SELECT key FROM impression WHERE edition = ?", m_editions,
                    keys(RecordKind::impression));
    }

    void addHappenings() {
        HistorySeeds seeds;
        const KeySet& prints = keys(RecordKind::impression);
        KeySet layers;
        KeySet pulls;
        KeySet mixes;
        insertByKey("SELECT key FROM layer WHERE edition = ?", m_editions, layers);
        insertByKey("SELECT key FROM pull WHERE layer = ?", layers, pulls);
        insertByKey("SELECT key FROM mix WHERE edition = ?", m_editions, mixes);
        insertByKey("SELECT mix FROM layer WHERE key = ? AND mix IS NOT NULL", layers, mixes);
        seeds.impressions.assign(prints.begin(), prints.end());
        seeds.pulls.assign(pulls.begin(), pulls.end());
        seeds.mixes.assign(mixes.begin(), mixes.end());
        const HistoryScope scope = scopeOf(m_database, seeds);
        keys(RecordKind::layer) = std::move(layers);
        insertByKey("SELECT key FROM block WHERE edition = ?", m_editions, keys(RecordKind::block));
        insertByKey("SELECT transfer FROM transfer_impressions WHERE impression = ?", prints,
                    keys(RecordKind::transfer));
        add(RecordKind::layer, scope.layers);
        add(RecordKind::edition, scope.editions);
        add(RecordKind::mix, scope.mixes);
        add(RecordKind::weighing, scope.weighings);
        add(RecordKind::pull, scope.pulls);
        add(RecordKind::move, scope.moves);
        add(RecordKind::look, scope.looks);
    }

    void add(RecordKind kind, const std::vector<std::int64_t>& found) {
        keys(kind).insert(found.begin(), found.end());
    }

    void addPictures() {
        KeySet& pictures = keys(RecordKind::attachment);
        insertByKey("SELECT key FROM attachment WHERE edition = ?", m_editions, pictures);
        insertByKey("SELECT key FROM attachment WHERE impression = ?", keys(RecordKind::impression),
                    pictures);
        Statement drawn =
            m_database.prepare("SELECT key FROM attachment WHERE drawdown IS NOT NULL");
        while (drawn.step())
            pictures.insert(drawn.whole(0));
    }

    // Records may name only those of kinds that come before theirs, a layer's reading apart, and
    // all readings are there. So what is named is known once the kinds after it are.
    RecordSet read() {
        std::array<std::function<void()>, recordKinds> namings;
        std::array<std::function<void(RecordSet&)>, recordKinds> readings;
        Ids ids(m_database);
        forEachRecordType([&](auto tag) {
            using R = typename decltype(tag)::Type;
            static constexpr auto at = static_cast<std::size_t>(R::kind);
            if (isOfTheStudio(R::kind)) {
                Statement all = m_database.prepare("SELECT key FROM " + tableOf<R>());
                while (all.step())
                    m_keys[at].insert(all.whole(0));
            }
            namings[at] = [this] {
                const KeySet own = m_keys[at];
                KeysNamed<R>(m_database, m_keys).of(own);
            };
            readings[at] = [this, &ids](RecordSet& records) {
                const std::vector<std::int64_t> own(m_keys[at].begin(), m_keys[at].end());
                for (R& record : readByKeys<R>(m_database, ids, own))
                    records.add(std::move(record));
            };
        });
        for (auto naming = namings.rbegin(); naming != namings.rend(); ++naming)
            (*naming)();
        RecordSet records;
        for (const auto& reading : readings)
            reading(records);
        return records;
    }

    const Database& m_database;
    std::array<KeySet, recordKinds> m_keys;
    KeySet m_editions;  // those asked for
};

}  // namespace

RecordSet recordsAround(const BookFile& book, const AroundWanted& wanted) {
    Database& database = *book.inner().database;
    const Transaction view(database, false);
    return AroundSearch(database).run(wanted);
}

RecordSet recordsOfKinds(const BookFile& book, const std::vector<RecordKind>& kinds) {
    Database& database = *book.inner().database;
    const Transaction view(database, false);
    Ids ids(database);
    RecordSet records;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        if (std::find(kinds.begin(), kinds.end(), R::kind) == kinds.end())
            return;
        Statement rows = database.prepare(selectSql<R>(" ORDER BY key"));
        for (R& record : readRows<R>(database, ids, rows, false))
            records.add(std::move(record));
    });
    return records;
}

std::vector<Pull> pullsSince(const BookFile& book, CivilMinute minute) {
    const Database& database = *book.inner().database;
    Ids ids(database);
    Statement rows = database.prepare(selectSql<Pull>(" WHERE startLatest >= ? ORDER BY key"));
    rows.bind(1, static_cast<std::int64_t>(minute));
    return readRows<Pull>(database, ids, rows, true);
}

std::vector<std::string> mixesInUse(const BookFile& book, CivilMinute since) {
    Statement rows = book.inner().database->prepare(
        "SELECT id FROM mix WHERE (finishedOn IS NULL OR finishedOnLatest > ?1) AND (key IN "
        "(SELECT mix FROM weighing WHERE atLatest >= ?1 "
        "UNION SELECT fromMix FROM weighing WHERE fromMix IS NOT NULL AND atLatest >= ?1 "
        "UNION SELECT portion FROM pull WHERE portion IS NOT NULL AND startLatest >= ?1) "
        "OR NOT EXISTS (SELECT 1 FROM weighing w WHERE w.mix = mix.key)) ORDER BY key");
    rows.bind(1, static_cast<std::int64_t>(since));
    std::vector<std::string> ids;
    while (rows.step())
        ids.push_back(rows.text(0));
    return ids;
}

std::vector<Transfer> transfersThatEnd(const BookFile& book) {
    const Database& database = *book.inner().database;
    Ids ids(database);
    Statement rows = database.prepare(selectSql<Transfer>(" WHERE dueOn IS NOT NULL ORDER BY key"));
    return readRows<Transfer>(database, ids, rows, true);
}

std::optional<std::vector<std::string>> printsOfLatestPulls(const BookFile& book, std::size_t most,
                                                            CivilMinute asOf) {
    const Database& database = *book.inner().database;
    Statement cut = database.prepare(
        "SELECT startEarliest FROM pull WHERE startEarliest <= ? ORDER BY startEarliest DESC LIMIT "
        "2 OFFSET ?");
    cut.bind(1, static_cast<std::int64_t>(asOf));
    cut.bind(2, static_cast<std::int64_t>(most) - 1);
    if (!cut.step())
        return std::nullopt;
    const std::int64_t from = cut.whole(0);
    if (!cut.step())
        return std::nullopt;
    Statement rows = database.prepare(
        "SELECT id FROM impression WHERE key IN (SELECT x.impression FROM pull p JOIN "
        "pull_impressions x ON x.pull = p.key WHERE p.startEarliest BETWEEN ? AND ?)");
    rows.bind(1, from);
    rows.bind(2, static_cast<std::int64_t>(asOf));
    std::vector<std::string> ids;
    while (rows.step())
        ids.push_back(rows.text(0));
    return ids;
}

}  // namespace rackbook
