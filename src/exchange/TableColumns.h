// The columns of a table. Private to exchange/.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "exchange/TableMapping.h"

namespace rackbook {

// The columns of a table by their headings, or by their positions, "1" being the first.
class TableColumns {
public:
    TableColumns(const TableFile& table, const TableMapping& mapping);

    std::size_t count() const { return m_names.size(); }
    const std::string& nameOf(std::size_t column) const { return m_names[column]; }
    const std::vector<std::string>& names() const { return m_names; }
    // Nothing where there is none, or a heading stands twice.
    std::optional<std::size_t> find(const std::string& name) const;
    bool isTwice(const std::string& name) const;
    // The rows below the headings begin here.
    std::size_t firstRow() const { return m_firstRow; }

private:
    std::vector<std::string> m_names;
    std::unordered_map<std::string, std::size_t> m_byName;
    std::vector<std::string> m_twice;
    std::size_t m_firstRow = 0;
};

// Everything in a mapping that names a column which the table does not have.
std::vector<Finding> columnFindings(const TableMapping& mapping, const TableColumns& columns);

}  // namespace rackbook
