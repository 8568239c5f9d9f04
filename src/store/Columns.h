// How the fields of a record lie in the tables of the book: the statements and the binding are
// made from the record's own list of fields, so that a name stands in one place.
// Private to store/.
#pragma once

#include <string>
#include <vector>

#include "records/FieldTraits.h"
#include "records/Record.h"
#include "store/Sqlite.h"

namespace rackbook {

// Names may come from the tables of a book that somebody else made.
inline std::string quoted(std::string_view name) {
    std::string text = "\"";
    for (const char c : name)
        text += c == '"' ? "\"\"" : std::string(1, c);
    return text + "\"";
}

template <class R>
std::string tableOf() {
    return quoted(textOf(R::kind));
}

template <class R>
std::string listTableOf(const char* field) {
    return quoted(std::string(textOf(R::kind)) + "_" + field);
}

// The name of the column that holds one item of a list without fields of its own.
template <class T>
std::string itemColumn() {
    if constexpr (IsRef<T>::value)
        return textOf(IsRef<T>::Target::kind);
    else
        return "value";
}

// Names of the columns that the plain fields of T take, in order.
class ColumnNames {
public:
    template <class T>
    static std::vector<std::string> of() {
        ColumnNames names;
        T record{};
        T::fields(record, names);
        return std::move(names.m_names);
    }

    template <class T>
    void operator()(const char* name, const T&) {
        if constexpr (IsVector<T>::value) {
            return;
        } else {
            m_names.emplace_back(name);
            if constexpr (isDate<T>) {
                m_names.push_back(std::string(name) + "Earliest");
                m_names.push_back(std::string(name) + "Latest");
            }
        }
    }

private:
    template <class T>
    static constexpr bool isDate =
        std::is_same_v<T, EdtfDate> || std::is_same_v<T, std::optional<EdtfDate>>;

    std::vector<std::string> m_names;
};

inline std::string columnList(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names)
        text += (text.empty() ? "" : ", ") + quoted(name);
    return text;
}

// "INSERT INTO table (columns) VALUES (?, ?, …)"
inline std::string insertInto(const std::string& table, const std::vector<std::string>& names) {
    std::string marks;
    for (std::size_t i = 0; i < names.size(); ++i)
        marks += i == 0 ? "?" : ", ?";
    return "INSERT INTO " + table + " (" + columnList(names) + ") VALUES (" + marks + ")";
}

// Columns of a list's table: its owner, the position, then the item.
template <class R, class Item>
std::vector<std::string> listColumns() {
    std::vector<std::string> names = {textOf(R::kind), "position"};
    if constexpr (HasFields<Item>::value) {
        for (std::string& name : ColumnNames::of<Item>())
            names.push_back(std::move(name));
    } else {
        names.push_back(itemColumn<Item>());
    }
    return names;
}

}  // namespace rackbook
