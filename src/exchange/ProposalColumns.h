// Which columns of a table mean which fields of a kind, and how their cells are written. Private to
// exchange/.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "base/Tree.h"
#include "exchange/TableColumns.h"

namespace rackbook {

class ProposalColumns {
public:
    ProposalColumns(const TableFile& table, RecordKind kind);

    // Rows before that of the headings: the first that is nearly as full as the fullest.
    std::size_t skippedRows() const { return m_mapping.skipRows; }
    // Whether every heading is the path of a field, as cellsOf() writes them.
    bool areOwn() const { return m_areOwn; }
    // Heading and field. imageSize and sheetSize stand for height and width in one cell, and
    // edition, where a transfer has none, for that of its sheets.
    const std::vector<std::pair<std::string, std::string>>& matched() const { return m_matched; }
    const std::vector<std::string>& passedOver() const { return m_passedOver; }

    bool has(const std::string& field) const { return m_columnOf.count(field) != 0; }
    const std::string& headingOf(const std::string& field) const {
        return m_columns.nameOf(m_columnOf.at(field));
    }
    std::string braced(const std::string& field) const { return "{" + headingOf(field) + "}"; }
    std::vector<std::string> cellsOf(const std::string& field) const {
        return cellsOf(m_columnOf.at(field));
    }

    // A pattern of the first columns that tell all rows apart, beginning with `beginning`.
    std::string tellingApart(const std::string& beginning) const;
    // Words beside the numbers of a column.
    std::set<std::string> unitsIn(const std::string& field) const;
    // The unit of the heading, else the one that all cells have; empty where there is none.
    std::string unitOf(const std::string& field) const;
    // Adds decimal and thousands as the cells of these fields have them.
    void addNumberForm(const std::vector<std::string>& fields, Tree& mapping) const;
    // Adds the order of dates where some can be read one way alone.
    void addDateOrder(const std::vector<std::string>& fields, Tree& mapping) const;

private:
    std::vector<std::string> cellsOf(std::size_t column) const;
    bool isField(const std::string& path) const;
    std::optional<std::string> fieldFor(const std::string& heading) const;
    void match(std::size_t column);

    const TableFile& m_table;
    RecordKind m_kind;
    TableMapping m_mapping;
    TableColumns m_columns;
    bool m_areOwn = false;
    std::map<std::string, std::size_t> m_columnOf;  // by field
    std::vector<std::pair<std::string, std::string>> m_matched;
    std::vector<std::string> m_passedOver;
};

}  // namespace rackbook
