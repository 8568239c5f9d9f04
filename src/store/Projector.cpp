#include "store/Projector.h"

#include "store/Columns.h"

namespace rackbook {

// One prepared statement for each table and each way of writing it, made when first wanted.
class Projector::Statements {
public:
    // Room for this many statements a record kind: two for its table, two for each field.
    static constexpr std::size_t perKind = 128;

    explicit Statements(Database& database)
        : m_database(database), m_statements(recordKinds * perKind) {}

    template <class Make>
    Statement& get(RecordKind kind, std::size_t slot, Make&& makeSql) {
        std::optional<Statement>& statement =
            m_statements[static_cast<std::size_t>(kind) * perKind + slot];
        if (!statement)
            statement = m_database.prepare(makeSql());
        return *statement;
    }

private:
    Database& m_database;
    std::vector<std::optional<Statement>> m_statements;
};

namespace {

// Looks up every reference of a record before anything is written.
class References {
public:
    References(Keys& keys, std::vector<Dangling>& dangling) : m_keys(keys), m_dangling(dangling) {}

    template <class T>
    void operator()(const char* name, const T& value) {
        if constexpr (IsRef<T>::value) {
            look<typename IsRef<T>::Target>(value.id, [&] { return "/" + std::string(name); });
        } else if constexpr (IsOptional<T>::value) {
            if (value)
                (*this)(name, *value);
        } else if constexpr (IsVector<T>::value) {
            if constexpr (IsRef<typename T::value_type>::value)
                for (std::size_t i = 0; i < value.size(); ++i)
                    look<typename IsRef<typename T::value_type>::Target>(value[i].id, [&] {
                        return "/" + std::string(name) + "/" + std::to_string(i);
                    });
        }
    }

private:
    template <class R, class Pointer>
    void look(const std::string& id, Pointer&& pointer) {
        if (!m_keys.find(R::kind, id))
            m_dangling.push_back({pointer(), R::kind, id});
    }

    Keys& m_keys;
    std::vector<Dangling>& m_dangling;
};

// Binds plain fields to parameters, counting on.
class Binder {
public:
    Binder(Statement& statement, Keys& keys, int next)
        : m_statement(statement), m_keys(keys), m_next(next) {}

    template <class T>
    void operator()(const char*, const T& value) {
        if constexpr (!IsVector<T>::value)
            put(value);
    }

    void put(const std::string& value) { m_statement.bindText(m_next++, value); }
    void put(double value) { m_statement.bind(m_next++, value); }
    void put(int value) { m_statement.bind(m_next++, static_cast<std::int64_t>(value)); }
    void put(bool value) { m_statement.bind(m_next++, static_cast<std::int64_t>(value ? 1 : 0)); }

    void put(const EdtfDate& value) {
        m_statement.bindText(m_next++, value.text());
        m_statement.bind(m_next++, value.earliest());
        m_statement.bind(m_next++, value.latest());
    }

    template <class R>
    void put(const Ref<R>& value) {
        m_statement.bind(m_next++, *m_keys.find(R::kind, value.id));
    }

    template <class T>
    void put(const std::optional<T>& value) {
        if (value) {
            put(*value);
            return;
        }
        constexpr int columns = std::is_same_v<T, EdtfDate> ? 3 : 1;
        for (int i = 0; i < columns; ++i)
            m_statement.bindNull(m_next++);
    }

    template <class E, std::enable_if_t<std::is_enum_v<E>, int> = 0>
    void put(E value) {
        m_statement.bindText(m_next++, textOf(value));
    }

private:
    Statement& m_statement;
    Keys& m_keys;
    int m_next;
};

// Writes the lists of a record, each into its own table.
template <class R, class Statements>
class Lists {
public:
    Lists(Statements& statements, Keys& keys, std::int64_t key, bool isNew)
        : m_statements(statements), m_keys(keys), m_key(key), m_isNew(isNew) {}

    template <class T>
    void operator()(const char* name, const T& value) {
        m_slot += 2;
        if constexpr (IsVector<T>::value) {
            if (!m_isNew)
                clear(name);
            if (!value.empty())
                insert(name, value);
        }
    }

private:
    template <class Item>
    void insert(const char* name, const std::vector<Item>& items) {
        Statement& statement = m_statements.get(R::kind, m_slot, [&] {
            return insertInto(listTableOf<R>(name), listColumns<R, Item>());
        });
        std::int64_t position = 0;
        for (const Item& item : items) {
            statement.bind(1, m_key);
            statement.bind(2, position++);
            Binder binder(statement, m_keys, 3);
            if constexpr (HasFields<Item>::value)
                Item::fields(item, binder);
            else
                binder.put(item);
            statement.run();
        }
    }

    void clear(const char* name) {
        Statement& statement = m_statements.get(R::kind, m_slot + 1, [&] {
            return "DELETE FROM " + listTableOf<R>(name) + " WHERE " + quoted(textOf(R::kind)) +
                   " = ?";
        });
        statement.bind(1, m_key);
        statement.run();
    }

    Statements& m_statements;
    Keys& m_keys;
    std::int64_t m_key;
    bool m_isNew;
    std::size_t m_slot = 0;
};

// Empties the lists of a record, for one that goes.
template <class R>
class ListEraser {
public:
    ListEraser(Database& database, std::int64_t key) : m_database(database), m_key(key) {}

    template <class T>
    void operator()(const char* name, const T&) {
        if constexpr (IsVector<T>::value)
            erase(listTableOf<R>(name), quoted(textOf(R::kind)));
    }

    void eraseRow() { erase(tableOf<R>(), "key"); }

private:
    void erase(const std::string& table, const std::string& column) {
        Statement statement =
            m_database.prepare("DELETE FROM " + table + " WHERE " + column + " = ?");
        statement.bind(1, m_key);
        statement.run();
    }

    Database& m_database;
    std::int64_t m_key;
};

template <class R>
std::string insertSql() {
    std::vector<std::string> names = ColumnNames::of<R>();
    names.insert(names.begin(), {"key", "entry"});
    return insertInto(tableOf<R>(), names);
}

template <class R>
std::string updateSql() {
    std::string sets = "\"entry\" = ?2";
    int parameter = 3;
    for (const std::string& name : ColumnNames::of<R>())
        sets += ", " + quoted(name) + " = ?" + std::to_string(parameter++);
    return "UPDATE " + tableOf<R>() + " SET " + sets + " WHERE key = ?1";
}

}  // namespace

Projector::Projector(Database& database, Keys& keys)
    : m_database(database), m_statements(std::make_unique<Statements>(database)), m_keys(keys) {}

Projector::~Projector() = default;

std::vector<Dangling> Projector::write(const Record& record, std::int64_t key, std::int64_t entry,
                                       bool isNew) {
    return std::visit(
        [&](const auto& r) {
            using R = std::decay_t<decltype(r)>;
            std::vector<Dangling> dangling;
            References references(m_keys, dangling);
            R::fields(r, references);
            if (!dangling.empty())
                return dangling;
            Statement& statement = m_statements->get(
                R::kind, isNew ? 0 : 1, [&] { return isNew ? insertSql<R>() : updateSql<R>(); });
            statement.bind(1, key);
            statement.bind(2, entry);
            Binder binder(statement, m_keys, 3);
            R::fields(r, binder);
            statement.run();
            Lists<R, Statements> lists(*m_statements, m_keys, key, isNew);
            R::fields(r, lists);
            return dangling;
        },
        record);
}

void Projector::erase(RecordKind kind, std::int64_t key) {
    withRecordType(kind, [&](auto tag) {
        using R = typename decltype(tag)::Type;
        ListEraser<R> eraser(m_database, key);
        const R sample{};
        R::fields(sample, eraser);
        eraser.eraseRow();
    });
}

}  // namespace rackbook
