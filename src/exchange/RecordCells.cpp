#include "exchange/RecordCells.h"

#include <algorithm>
#include <map>
#include <unordered_map>

#include "base/Numbers.h"
#include "exchange/CsvWriter.h"
#include "exchange/FieldForms.h"
#include "records/FieldTraits.h"

namespace rackbook {

namespace {

using Cells = std::unordered_map<std::string, std::string>;  // by path

class CellVisitor {
public:
    CellVisitor(Cells& cells, std::string prefix, char decimal)
        : m_cells(cells), m_prefix(std::move(prefix)), m_decimal(decimal) {}

    template <class T>
    void operator()(const char* name, const T& value) {
        put(m_prefix + name, value);
    }

private:
    template <class T>
    void put(const std::string& path, const T& value) {
        if constexpr (IsOptional<T>::value) {
            if (value)
                put(path, *value);
        } else if constexpr (IsVector<T>::value) {
            putList(path, value);
        } else if constexpr (std::is_same_v<T, double>) {
            m_cells[path] = textOfItem(value);
        } else {
            m_cells[path] = guarded(textOfItem(value));
        }
    }

    template <class T>
    void putList(const std::string& path, const std::vector<T>& items) {
        std::string text;
        std::size_t number = 0;
        for (const T& item : items) {
            ++number;
            if constexpr (isParts<T>()) {
                CellVisitor inner(m_cells, path + "." + std::to_string(number) + ".", m_decimal);
                T::fields(item, inner);
            } else {
                text += (number > 1 ? "; " : "") + textOfItem(item);
            }
        }
        if (!text.empty())
            m_cells[path] = guarded(text);
    }

    template <class T>
    static constexpr bool isParts() {
        return HasFields<T>::value;
    }

    static std::string textOfItem(const std::string& value) { return value; }
    static std::string textOfItem(bool value) { return value ? "yes" : "no"; }
    static std::string textOfItem(int value) { return std::to_string(value); }
    static std::string textOfItem(const EdtfDate& value) { return value.text(); }
    std::string textOfItem(double value) const {
        std::string text = formatShortest(value);
        std::replace(text.begin(), text.end(), '.', m_decimal);
        return text;
    }
    template <class R>
    static std::string textOfItem(const Ref<R>& value) {
        return value.id;
    }
    template <class E, std::enable_if_t<std::is_enum_v<E>, int> = 0>
    static std::string textOfItem(E value) {
        return textOf(value);
    }

    Cells& m_cells;
    std::string m_prefix;
    char m_decimal;
};

// How many parts a list has at most.
std::size_t mostParts(const std::vector<Cells>& rows, const KindField& field) {
    std::size_t most = 0;
    for (const Cells& row : rows)
        for (const KindField& part : field.parts)
            while (row.count(field.name + "." + std::to_string(most + 1) + "." + part.name) != 0)
                ++most;
    return most;
}

std::vector<std::string> headingsFor(RecordKind kind, const std::vector<Cells>& rows) {
    std::vector<std::string> headings;
    for (const KindField& field : fieldsOf(kind)) {
        if (field.form != FieldForm::parts) {
            headings.push_back(field.name);
            continue;
        }
        const std::size_t count = mostParts(rows, field);
        for (std::size_t i = 1; i <= count; ++i)
            for (const KindField& part : field.parts)
                headings.push_back(field.name + "." + std::to_string(i) + "." + part.name);
    }
    return headings;
}

}  // namespace

std::vector<std::vector<std::string>> cellsOf(RecordKind kind, const std::vector<Record>& records,
                                              char decimal) {
    std::vector<Cells> rows(records.size());
    for (std::size_t i = 0; i < records.size(); ++i)
        std::visit(
            [&](const auto& record) {
                CellVisitor visitor(rows[i], {}, decimal);
                std::decay_t<decltype(record)>::fields(record, visitor);
            },
            records[i]);
    std::vector<std::vector<std::string>> table = {headingsFor(kind, rows)};
    for (Cells& row : rows) {
        std::vector<std::string> cells;
        for (const std::string& heading : table.front())
            cells.push_back(std::move(row[heading]));
        table.push_back(std::move(cells));
    }
    return table;
}

}  // namespace rackbook
