#include "store/RecordReader.h"

#include "base/Error.h"
#include "store/BookInner.h"
#include "store/RecordRows.h"

namespace rackbook {

namespace {

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
        else if constexpr (IsVector<T>::value || IsOptional<T>::value)
            load<typename T::value_type>();
    }

    Ids& m_ids;
};

// How the records are found that have a text or name a record in one of their fields.
class FieldCondition {
public:
    FieldCondition(RecordKind kind, const std::string& field) : m_kind(kind), m_field(field) {}

    template <class T>
    void operator()(const char* name, const T&) {
        if (m_field == name)
            m_sql = " WHERE " + of<T>();
    }

    const std::string& sql() const { return m_sql; }

private:
    template <class T>
    std::string of() const {
        if constexpr (IsOptional<T>::value)
            return of<typename T::value_type>();
        else if constexpr (IsRef<T>::value)
            return quoted(m_field) + " = " + keyOf<T>();
        else if constexpr (IsVector<T>::value)
            return inList<typename T::value_type>();
        else
            return quoted(m_field) + " = ?";
    }

    template <class Item>
    std::string inList() const {
        if constexpr (IsRef<Item>::value)
            return "key IN (SELECT " + quoted(textOf(m_kind)) + " FROM " +
                   quoted(std::string(textOf(m_kind)) + "_" + m_field) + " WHERE " +
                   quoted(itemColumn<Item>()) + " = " + keyOf<Item>() + ")";
        return {};
    }

    template <class T>
    static std::string keyOf() {
        return "(SELECT key FROM " + quoted(textOf(IsRef<T>::Target::kind)) + " WHERE id = ?)";
    }

    RecordKind m_kind;
    const std::string& m_field;
    std::string m_sql;
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
std::vector<R> thoseOf(const BookFile& book, const std::string& field, const std::string& value) {
    Database& database = *book.inner().database;
    const Transaction view(database, false);
    Ids ids(database);
    FieldCondition condition(R::kind, field);
    const R sample{};
    R::fields(sample, condition);
    Statement rows = database.prepare(selectSql<R>(condition.sql() + " ORDER BY key"));
    rows.bindText(1, value);
    return readRows<R>(database, ids, rows, true);
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

std::vector<std::string> idsBeginning(const BookFile& book, RecordKind kind,
                                      const std::string& beginning) {
    std::string beyond = beginning;
    beyond.back() = static_cast<char>(beyond.back() + 1);
    Statement rows = book.inner().database->prepare("SELECT id FROM " + quoted(textOf(kind)) +
                                                    " WHERE id >= ? AND id < ?");
    rows.bindText(1, beginning);
    rows.bindText(2, beyond);
    std::vector<std::string> ids;
    while (rows.step())
        ids.push_back(rows.text(0));
    return ids;
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

#define RACKBOOK_READER(R)                                                                       \
    template std::vector<R> allOf<R>(const BookFile&);                                           \
    template std::optional<R> findIn<R>(const BookFile&, const std::string&);                    \
    template std::vector<R> thoseOf<R>(const BookFile&, const std::string&, const std::string&); \
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
