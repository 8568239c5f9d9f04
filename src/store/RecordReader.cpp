#include "store/RecordReader.h"

#include "base/Error.h"
#include "store/BookInner.h"
#include "store/Columns.h"
#include "store/Keys.h"

namespace rackbook {

namespace {

// Reads the plain fields of a record from the columns of a row, counting on.
class FieldReader {
public:
    FieldReader(const Statement& row, Ids& ids, int next) : m_row(row), m_ids(ids), m_next(next) {}

    template <class T>
    void operator()(const char*, T& value) {
        if constexpr (!IsVector<T>::value)
            get(value);
    }

    void get(std::string& value) { value = m_row.text(m_next++); }
    void get(double& value) { value = m_row.real(m_next++); }
    void get(int& value) { value = static_cast<int>(m_row.whole(m_next++)); }
    void get(bool& value) { value = m_row.whole(m_next++) != 0; }

    void get(EdtfDate& value) {
        value = EdtfDate::restored(m_row.text(m_next), m_row.whole(m_next + 1),
                                   m_row.whole(m_next + 2));
        m_next += 3;
    }

    template <class R>
    void get(Ref<R>& value) {
        value.id = m_ids.id(R::kind, m_row.whole(m_next++));
    }

    template <class T>
    void get(std::optional<T>& value) {
        if (m_row.isNull(m_next)) {
            value.reset();
            m_next += std::is_same_v<T, EdtfDate> ? 3 : 1;
            return;
        }
        if constexpr (std::is_same_v<T, EdtfDate>)
            value = EdtfDate::ofMinute(0);
        else
            value = T{};
        get(*value);
    }

    template <class E, std::enable_if_t<std::is_enum_v<E>, int> = 0>
    void get(E& value) {
        const std::optional<E> known = enumFrom<E>(m_row.view(m_next));
        if (!known)
            throw StoreError("the book", "it holds the unknown word \"" + m_row.text(m_next) + "\"",
                             "Restore the last backup, or run rackbook verify.");
        value = *known;
        ++m_next;
    }

private:
    const Statement& m_row;
    Ids& m_ids;
    int m_next;
};

// Reads the lists of records that were read already, all records at once or one.
template <class R>
class ListReader {
public:
    // Pre: records[i] has key keys[i], and keys rise.
    ListReader(const Database& database, Ids& ids, std::vector<R>& records,
               const std::vector<std::int64_t>& keys, bool onlyOne)
        : m_database(database), m_ids(ids), m_records(records), m_keys(keys), m_onlyOne(onlyOne) {}

    // Called with the fields of a sample record: the address tells which member is meant.
    template <class T>
    void operator()(const char* name, const T&) {
        ++m_field;
        if constexpr (IsVector<T>::value)
            read<T>(name);
    }

private:
    // Finds the member at the same place in another record.
    template <class T>
    struct MemberAt {
        int wanted;
        std::vector<typename T::value_type>* found = nullptr;
        int field = 0;
        template <class M>
        void operator()(const char*, M& member) {
            if constexpr (std::is_same_v<M, T>)
                if (field == wanted)
                    found = &member;
            ++field;
        }
    };

    template <class T>
    void read(const char* name) {
        using Item = typename T::value_type;
        const std::string owner = quoted(textOf(R::kind));
        Statement rows = m_database.prepare(
            "SELECT " + columnList(listColumns<R, Item>()) + " FROM " + listTableOf<R>(name) +
            (m_onlyOne ? " WHERE " + owner + " = " + std::to_string(m_keys.front()) : "") +
            " ORDER BY " + owner + ", position");
        std::size_t at = 0;
        while (rows.step()) {
            const std::int64_t key = rows.whole(0);
            while (at < m_keys.size() && m_keys[at] < key)
                ++at;
            if (at == m_keys.size() || m_keys[at] != key)
                continue;
            MemberAt<T> member{m_field - 1};
            R::fields(m_records[at], member);
            Item item{};
            FieldReader reader(rows, m_ids, 2);
            if constexpr (HasFields<Item>::value)
                Item::fields(item, reader);
            else
                reader.get(item);
            member.found->push_back(std::move(item));
        }
    }

    const Database& m_database;
    Ids& m_ids;
    std::vector<R>& m_records;
    const std::vector<std::int64_t>& m_keys;
    bool m_onlyOne;
    int m_field = 0;
};

template <class R>
std::string selectSql(const std::string& tail) {
    return "SELECT key, " + columnList(ColumnNames::of<R>()) + " FROM " + tableOf<R>() + tail;
}

template <class R>
std::vector<R> readRows(const Database& database, Ids& ids, Statement& rows, bool onlyOne) {
    std::vector<R> records;
    std::vector<std::int64_t> keys;
    while (rows.step()) {
        keys.push_back(rows.whole(0));
        R record{};
        FieldReader reader(rows, ids, 1);
        R::fields(record, reader);
        records.push_back(std::move(record));
    }
    if (!records.empty()) {
        ListReader<R> lists(database, ids, records, keys, onlyOne);
        const R sample{};
        R::fields(sample, lists);
    }
    return records;
}

// Notes which kinds the references of a record type lead to.
class Targets {
public:
    explicit Targets(Ids& ids) : m_ids(ids) {}
    template <class T>
    void operator()(const char*, const T&) {
        load<T>();
    }

private:
    template <class T>
    void load() {
        if constexpr (IsRef<T>::value)
            m_ids.load(IsRef<T>::Target::kind);
        else if constexpr (IsVector<T>::value)
            load<typename T::value_type>();
        else if constexpr (IsOptional<T>::value)
            load<typename T::value_type>();
    }

    Ids& m_ids;
};

template <class R>
std::vector<R> readAll(const Database& database, Ids& ids) {
    Statement rows = database.prepare(selectSql<R>(" ORDER BY key"));
    return readRows<R>(database, ids, rows, false);
}

}  // namespace

template <class R>
std::vector<R> allOf(const BookFile& book) {
    Database& database = *book.inner().database;
    const Transaction view(database, false);
    Ids ids(database);
    Targets targets(ids);
    const R sample{};
    R::fields(sample, targets);
    return readAll<R>(database, ids);
}

template <class R>
std::optional<R> findIn(const BookFile& book, const std::string& id) {
    Database& database = *book.inner().database;
    const Transaction view(database, false);
    Ids ids(database);
    Statement rows = database.prepare(selectSql<R>(" WHERE id = ?"));
    rows.bindText(1, id);
    std::vector<R> found = readRows<R>(database, ids, rows, true);
    return found.empty() ? std::nullopt : std::optional<R>(std::move(found.front()));
}

template <class R>
std::optional<R> latestOf(const BookFile& book, const std::string& field) {
    Database& database = *book.inner().database;
    const Transaction view(database, false);
    Ids ids(database);
    Statement rows = database.prepare(
        selectSql<R>(" ORDER BY " + quoted(field + "Earliest") + " DESC, key DESC LIMIT 1"));
    std::vector<R> found = readRows<R>(database, ids, rows, true);
    return found.empty() ? std::nullopt : std::optional<R>(std::move(found.front()));
}

RecordSet everythingIn(const BookFile& book) {
    Database& database = *book.inner().database;
    Transaction transaction(database, false);
    Ids ids(database);
    RecordSet records;
    forEachRecordType([&](auto tag) { ids.load(decltype(tag)::Type::kind); });
    forEachRecordType([&](auto tag) {
        for (auto& record : readAll<typename decltype(tag)::Type>(database, ids))
            records.add(std::move(record));
    });
    return records;
}

std::int64_t countOf(const BookFile& book, RecordKind kind) {
    return book.inner().database->wholeOf("SELECT count(*) FROM " + quoted(textOf(kind)));
}

bool wasStruck(const BookFile& book, RecordKind kind, const std::string& id) {
    Statement lookup = book.inner().database->prepare(
        "SELECT 1 FROM journal WHERE action = 'strike' AND kind = ? AND id = ?");
    lookup.bindText(1, textOf(kind));
    lookup.bindText(2, id);
    return lookup.step();
}

Book bookRecordOf(const BookFile& book) {
    std::vector<Book> records = allOf<Book>(book);
    if (records.empty())
        throw StoreError(book.path(), "it holds no book record yet",
                         "Take in a record of kind book, with studio and timeZone.");
    return std::move(records.front());
}

#define RACKBOOK_READER(R)                                                    \
    template std::vector<R> allOf<R>(const BookFile&);                        \
    template std::optional<R> findIn<R>(const BookFile&, const std::string&); \
    template std::optional<R> latestOf<R>(const BookFile&, const std::string&);
RACKBOOK_READER(Book)
RACKBOOK_READER(Party)
RACKBOOK_READER(Place)
RACKBOOK_READER(Edition)
RACKBOOK_READER(Block)
RACKBOOK_READER(Lot)
RACKBOOK_READER(Balance)
RACKBOOK_READER(Mix)
RACKBOOK_READER(Weighing)
RACKBOOK_READER(Layer)
RACKBOOK_READER(Impression)
RACKBOOK_READER(Pull)
RACKBOOK_READER(Drawdown)
RACKBOOK_READER(Reading)
RACKBOOK_READER(Transfer)
RACKBOOK_READER(Issue)
RACKBOOK_READER(Move)
RACKBOOK_READER(Look)
RACKBOOK_READER(Attachment)
RACKBOOK_READER(StockTake)
RACKBOOK_READER(Weather)
RACKBOOK_READER(Metering)
#undef RACKBOOK_READER

}  // namespace rackbook
