#include "store/TableComparison.h"

#include <cstdio>
#include <vector>

#include "base/Finding.h"
#include "store/Columns.h"

namespace rackbook {

namespace {

constexpr int mostTold = 20;

std::vector<std::string> columnsOf(const Database& database, const std::string& table) {
    std::vector<std::string> names;
    Statement rows = database.prepare("SELECT name FROM pragma_table_info(?) ORDER BY cid");
    rows.bindText(1, table);
    while (rows.step())
        names.push_back(rows.text(0));
    return names;
}

class Comparison {
public:
    Comparison(const Database& mine, const Database& made, const std::string& table,
               const std::function<void(const std::string&, const std::string&)>& tell)
        : m_database(mine),
          m_table(table),
          m_tell(tell),
          m_columns(columnsOf(made, table)),
          m_mine(mine.prepare(select())),
          m_made(made.prepare(select())) {}

    // Both in the same order, row by row.
    void run() {
        bool hasMine = m_mine.step();
        bool hasMade = m_made.step();
        while (hasMine || hasMade) {
            const int order = !hasMine ? 1 : !hasMade ? -1 : orderOfKeys();
            if (order < 0)
                complain(m_mine, "the journal knows of no such row");
            else if (order > 0)
                complain(m_made, "the journal has it, the table does not");
            else
                compareColumns();
            hasMine = order <= 0 ? m_mine.step() : hasMine;
            hasMade = order >= 0 ? m_made.step() : hasMade;
        }
        if (m_told > mostTold)
            m_tell("table " + m_table, std::to_string(m_told - mostTold) +
                                           " more of its rows are not as they should be");
    }

private:
    std::string select() const {
        std::string names;
        for (const std::string& column : m_columns)
            names += (names.empty() ? "" : ", ") + quoted(column);
        return "SELECT " + names + " FROM " + quoted(m_table) + " ORDER BY 1, 2";
    }

    bool isList() const { return m_table.find('_') != std::string::npos; }

    // Tables of lists have two columns as their key.
    int orderOfKeys() const {
        for (int column = 0; column < (isList() ? 2 : 1); ++column)
            if (m_mine.whole(column) != m_made.whole(column))
                return m_mine.whole(column) < m_made.whole(column) ? -1 : 1;
        return 0;
    }

    void compareColumns() {
        for (int column = 0; column < static_cast<int>(m_columns.size()); ++column) {
            // The text of a real number leaves its last bits out.
            if (m_mine.isNull(column) == m_made.isNull(column) &&
                m_mine.real(column) == m_made.real(column) &&
                m_mine.text(column) == m_made.text(column))
                continue;
            // Numbers may differ in digits that their text leaves out.
            const bool isExact = m_mine.text(column) == m_made.text(column);
            complain(m_mine, "its column " + m_columns[static_cast<std::size_t>(column)] +
                                 " says " + said(m_mine, column, isExact) + ", the journal " +
                                 said(m_made, column, isExact));
            return;
        }
    }

    static std::string said(const Statement& row, int column, bool isExact) {
        if (row.isNull(column))
            return "nothing";
        if (!isExact)
            return "\"" + excerpt(row.text(column)) + "\"";
        char digits[32];
        std::snprintf(digits, sizeof digits, "%.17g", row.real(column));
        return digits;
    }

    void complain(const Statement& row, const std::string& what) {
        if (++m_told <= mostTold)
            m_tell(m_table + " row " + std::to_string(row.whole(0)) + recordOf(row), what);
    }

    // " (mix m2)": of the row itself, or of the one that its list belongs to.
    std::string recordOf(const Statement& row) const {
        if (!isList())
            return " (" + m_table + " " + excerpt(row.text(1)) + ")";
        const std::string kind = m_table.substr(0, m_table.find('_'));
        Statement lookup = m_database.prepare("SELECT id FROM " + quoted(kind) + " WHERE key = ?");
        lookup.bind(1, row.whole(0));
        return lookup.step() ? " (" + kind + " " + excerpt(lookup.text(0)) + ")" : std::string();
    }

    const Database& m_database;
    const std::string& m_table;
    const std::function<void(const std::string&, const std::string&)>& m_tell;
    std::vector<std::string> m_columns;
    Statement m_mine;
    Statement m_made;
    int m_told = 0;
};

}  // namespace

void compareTables(const Database& mine, const Database& made, const std::string& table,
                   const std::function<void(const std::string&, const std::string&)>& tell) {
    Comparison(mine, made, table, tell).run();
}

}  // namespace rackbook
