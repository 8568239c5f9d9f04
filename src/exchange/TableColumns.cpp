#include "exchange/TableColumns.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Text.h"
#include "exchange/TablePattern.h"

namespace rackbook {

TableColumns::TableColumns(const TableFile& table, const TableMapping& mapping) {
    m_firstRow = mapping.skipRows + (mapping.hasHeadings ? 1 : 0);
    if (mapping.hasHeadings && mapping.skipRows < table.rows.size()) {
        for (const std::string& field : table.rows[mapping.skipRows].fields)
            m_names.push_back(normalised(cellText(field, false)));
        // Spreadsheets write empty columns at the right end.
        while (!m_names.empty() && m_names.back().empty())
            m_names.pop_back();
    } else if (!mapping.hasHeadings) {
        std::size_t most = 0;
        for (std::size_t i = m_firstRow; i < table.rows.size(); ++i)
            most = std::max(most, table.rows[i].fields.size());
        for (std::size_t i = 1; i <= most; ++i)
            m_names.push_back(std::to_string(i));
    }
    for (std::size_t i = 0; i < m_names.size(); ++i)
        if (!m_names[i].empty() && !m_byName.emplace(m_names[i], i).second)
            m_twice.push_back(m_names[i]);
}

std::optional<std::size_t> TableColumns::find(const std::string& name) const {
    const std::string wanted = normalised(trimmed(name));
    if (isTwice(wanted))
        return std::nullopt;
    if (const auto found = m_byName.find(wanted); found != m_byName.end())
        return found->second;
    const std::optional<long long> position = parseWhole(wanted);
    if (position && *position >= 1 && static_cast<std::size_t>(*position) <= m_names.size())
        return static_cast<std::size_t>(*position) - 1;
    return std::nullopt;
}

bool TableColumns::isTwice(const std::string& name) const {
    return std::find(m_twice.begin(), m_twice.end(), name) != m_twice.end();
}

namespace {

class ColumnCheck {
public:
    ColumnCheck(const TableMapping& mapping, const TableColumns& columns)
        : m_mapping(mapping), m_columns(columns) {}

    std::vector<Finding> run() {
        for (const ConditionRule& rule : m_mapping.leaveOut)
            require(rule.column, rule.pointer + "/column");
        for (const RecordRule& rule : m_mapping.records) {
            requirePattern(rule.id, rule.pointer + "/id");
            if (rule.when)
                require(rule.when->column, rule.when->pointer + "/column");
            if (rule.numbers)
                require(rule.numbers->column, rule.numbers->pointer + "/column");
            if (rule.changedOn)
                requireValue(*rule.changedOn);
            for (const FieldRule& field : rule.fields)
                requireValue(field.value);
        }
        return std::move(m_findings);
    }

private:
    void require(const std::string& name, const std::string& pointer) {
        if (m_columns.find(name))
            return;
        const bool isTwice = m_columns.isTwice(normalised(trimmed(name)));
        const std::optional<std::string> nearest = nearestName(name, m_columns.names());
        const std::string remedy = isTwice   ? "Name it by its position, counted from \"1\"."
                                   : nearest ? "Did you mean \"" + *nearest + "\"?"
                                             : "Its columns are " + joined(m_columns.names()) + ".";
        m_findings.push_back(mappingFinding(m_mapping, pointer,
                                            isTwice
                                                ? "more than one column of the table is headed so"
                                                : "the table has no column that is headed so",
                                            name, remedy));
    }

    void requirePattern(const std::string& pattern, const std::string& pointer) {
        for (const PatternPiece& piece : soundPieces(pattern))
            if (piece.kind == PatternPiece::Kind::column)
                require(piece.text, pointer);
    }

    void requireValue(const ValueRule& rule) {
        if (rule.source == ValueRule::Source::column)
            require(rule.text, rule.pointer + "/column");
        if (rule.source == ValueRule::Source::pattern)
            requirePattern(rule.text, rule.pointer + "/pattern");
        if (rule.numbers)
            require(rule.numbers->column, rule.numbers->pointer + "/column");
    }

    const TableMapping& m_mapping;
    const TableColumns& m_columns;
    std::vector<Finding> m_findings;
};

}  // namespace

std::vector<Finding> columnFindings(const TableMapping& mapping, const TableColumns& columns) {
    return ColumnCheck(mapping, columns).run();
}

}  // namespace rackbook
