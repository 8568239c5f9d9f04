// What the cells of a table say, by the rules of a mapping. Private to exchange/.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/FieldForms.h"
#include "exchange/JsonText.h"
#include "exchange/TableColumns.h"

namespace rackbook {

// Headings that a value comes from, as messages name them: "Code" or "Code" and "Nr".
std::string headingsOf(const ValueRule& rule);
std::string headingsOfPattern(const std::string& pattern);
std::string headingsOfId(const RecordRule& rule);

// Pre for all: columnFindings() has nothing to say.
class TableCells {
public:
    TableCells(const TableMapping& mapping, const TableColumns& columns)
        : m_mapping(mapping), m_columns(columns) {}

    // Without guard and spaces; empty too where it is a word for what is missing.
    std::string cell(const CsvRow& row, const std::string& column) const;
    bool holds(const ConditionRule& rule, const CsvRow& row) const;

    // The numbers of a cell; none where it is empty.
    CellValue<std::vector<int>> numbers(const NumbersRule& rule, const CsvRow& row) const;

    // A pattern with what the row says; cells are made fit for ids where `isId`. Nothing where a
    // cell of it is empty.
    std::optional<std::string> filled(const std::string& pattern, const CsvRow& row,
                                      std::optional<int> number, bool isId) const;

    // What a rule says of a row as text, before it is read as anything. Nothing where it is empty.
    std::optional<std::string> text(const ValueRule& rule, const CsvRow& row,
                                    std::optional<int> number, bool isId) const;

    // Text as a value of a field, one item of it where it is a list. Ids stay as they are.
    CellValue<Json> valueIn(const std::string& text, const KindField& field,
                            const ValueRule& rule) const;

private:
    const TableMapping& m_mapping;
    const TableColumns& m_columns;
};

// The items of a list in a cell.
std::vector<std::string> itemsIn(const std::string& text, const KindField& field);

}  // namespace rackbook
