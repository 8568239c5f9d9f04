// Tables of text for a terminal.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

// `decimal` lines numbers up at the end of their whole part, units behind them included; a cell
// that does not begin with a number stands to the right.
enum class Align { left, right, decimal };

struct Column {
    std::string heading;
    Align align = Align::left;
};

class Table {
public:
    // Pre: columns is not empty.
    explicit Table(std::vector<Column> columns);

    // Cells go through printable(), so a record can neither steer the terminal nor break a line.
    // Throws std::invalid_argument where there are not as many cells as columns.
    void addRow(const std::vector<std::string>& cells);

    bool isEmpty() const { return m_rows.empty(); }

    // Heading row, a rule of hyphens, the rows; two spaces between columns, none at the ends of
    // lines. Where that is wider than `width` columns, the widest left-aligned columns wrap. No
    // datum is cut: where whole words do not fit, the table becomes wider than `width`. A table
    // without rows is the sentence alone.
    std::string text(int width, const std::string& emptySentence) const;

private:
    std::vector<int> naturalWidths() const;
    std::vector<int> fittedWidths(int width) const;
    std::string headingText(const std::vector<int>& widths) const;

    std::vector<Column> m_columns;
    std::vector<std::vector<std::string>> m_rows;
};

}  // namespace rackbook
