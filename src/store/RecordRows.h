// Rows of the tables back into records. Private to store/.
#pragma once

#include <string>
#include <vector>

#include "base/Error.h"
#include "store/Columns.h"
#include "store/Keys.h"

namespace rackbook {

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

// Reads the lists of records that were read already, all records at once or one after another.
template <class R>
class ListReader {
public:
    // Pre: records[i] has key keys[i], and keys rise.
    ListReader(const Database& database, Ids& ids, std::vector<R>& records,
               const std::vector<std::int64_t>& keys, bool onlySome)
        : m_database(database),
          m_ids(ids),
          m_records(records),
          m_keys(keys),
          m_onlySome(onlySome) {}

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
        const std::string select =
            "SELECT " + columnList(listColumns<R, Item>()) + " FROM " + listTableOf<R>(name);
        if (!m_onlySome) {
            Statement rows = m_database.prepare(select + " ORDER BY " + owner + ", position");
            readInto<T>(rows, 0);
            return;
        }
        Statement rows = m_database.prepare(select + " WHERE " + owner + " = ? ORDER BY position");
        for (std::size_t at = 0; at < m_keys.size(); ++at) {
            rows.bind(1, m_keys[at]);
            readInto<T>(rows, at);
            rows.reset();
        }
    }

    // Pre: no row belongs to a record before `at`.
    template <class T>
    void readInto(Statement& rows, std::size_t at) {
        using Item = typename T::value_type;
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
    bool m_onlySome;
    int m_field = 0;
};

template <class R>
std::string selectSql(const std::string& tail) {
    return "SELECT key, " + columnList(ColumnNames::of<R>()) + " FROM " + tableOf<R>() + tail;
}

// Plain fields row by row, then the lists of all of them.
template <class R>
class RowTaker {
public:
    explicit RowTaker(Ids& ids) : m_ids(ids) {}

    void take(const Statement& row) {
        m_keys.push_back(row.whole(0));
        R record{};
        FieldReader reader(row, m_ids, 1);
        R::fields(record, reader);
        m_records.push_back(std::move(record));
    }

    std::vector<R> finish(const Database& database, bool onlySome) {
        if (!m_records.empty()) {
            ListReader<R> lists(database, m_ids, m_records, m_keys, onlySome);
            const R sample{};
            R::fields(sample, lists);
        }
        return std::move(m_records);
    }

private:
    Ids& m_ids;
    std::vector<R> m_records;
    std::vector<std::int64_t> m_keys;
};

template <class R>
std::vector<R> readRows(const Database& database, Ids& ids, Statement& rows, bool onlySome) {
    RowTaker<R> taker(ids);
    while (rows.step())
        taker.take(rows);
    return taker.finish(database, onlySome);
}

// Those of the keys, which rise, that are there.
template <class R>
std::vector<R> readByKeys(const Database& database, Ids& ids,
                          const std::vector<std::int64_t>& keys) {
    Statement rows = database.prepare(selectSql<R>(" WHERE key = ?"));
    RowTaker<R> taker(ids);
    for (const std::int64_t key : keys) {
        rows.bind(1, key);
        while (rows.step())
            taker.take(rows);
        rows.reset();
    }
    return taker.finish(database, true);
}

}  // namespace rackbook
