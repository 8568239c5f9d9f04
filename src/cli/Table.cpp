#include "cli/Table.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>
#include <utility>

#include "base/Text.h"
#include "cli/Wrap.h"

namespace rackbook {

namespace {

constexpr int gap = 2;

std::string spaces(int count) {
    return std::string(static_cast<std::size_t>(std::max(0, count)), ' ');
}

// The bytes up to the end of the whole part, or nothing where the cell begins with no number.
std::size_t wholePartLength(const std::string& cell) {
    const std::size_t digit = cell.find_first_of("0123456789");
    if (digit == std::string::npos)
        return 0;
    // Before the digits stand a sign or a mark such as "about" in symbols, never words.
    const bool words = std::any_of(cell.begin(), cell.begin() + static_cast<std::ptrdiff_t>(digit),
                                   [](char c) { return (c | 0x20) >= 'a' && (c | 0x20) <= 'z'; });
    if (words)
        return 0;
    return std::min(cell.find_first_not_of("0123456789", digit), cell.size());
}

// Columns that the whole part and what follows it take in a decimal column.
struct DecimalWidths {
    int whole = 0;
    int rest = 0;
};

DecimalWidths decimalWidths(const std::string& cell) {
    const std::size_t split = wholePartLength(cell);
    if (split == 0)
        return {};
    return {displayWidth(cell.substr(0, split)), displayWidth(cell.substr(split))};
}

int indentOf(const std::string& cell) {
    const std::size_t indent = cell.find_first_not_of(' ');
    return indent == std::string::npos ? 0 : static_cast<int>(indent);
}

// Leading spaces may show a place in a tree, so every line keeps them.
std::vector<std::string> wrappedCell(const std::string& cell, int width) {
    if (displayWidth(cell) <= width)
        return {cell};
    const int indent = indentOf(cell);
    std::vector<std::string> lines = wrapped(cell, width - indent);
    for (std::string& line : lines)
        line.insert(0, spaces(indent));
    return lines;
}

std::string rightAligned(const std::string& text, int width) {
    return spaces(width - displayWidth(text)) + text;
}

std::string decimalAligned(const std::string& cell, int width, int rest) {
    const std::size_t split = wholePartLength(cell);
    if (split == 0)
        return rightAligned(cell, width);
    const std::string tail = cell.substr(split);
    return spaces(width - rest - displayWidth(cell.substr(0, split))) + cell.substr(0, split) +
           tail + spaces(rest - displayWidth(tail));
}

// One row as lines; `cells` holds each cell's lines, all of them padded.
std::string rowText(const std::vector<std::vector<std::string>>& cells,
                    const std::vector<int>& widths) {
    std::size_t height = 1;
    for (const auto& cell : cells)
        height = std::max(height, cell.size());
    std::string text;
    for (std::size_t line = 0; line < height; ++line) {
        std::string made;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const std::string part = line < cells[i].size() ? cells[i][line] : std::string();
            made += part + spaces(widths[i] - displayWidth(part) + gap);
        }
        made.erase(made.find_last_not_of(' ') + 1);
        text += made + "\n";
    }
    return text;
}

}  // namespace

Table::Table(std::vector<Column> columns) : m_columns(std::move(columns)) {
    for (Column& column : m_columns)
        column.heading = printable(column.heading);
}

void Table::addRow(const std::vector<std::string>& cells) {
    if (cells.size() != m_columns.size())
        throw std::invalid_argument("Table: a row has " + std::to_string(cells.size()) +
                                    " cells for " + std::to_string(m_columns.size()) + " columns.");
    std::vector<std::string> row;
    std::transform(cells.begin(), cells.end(), std::back_inserter(row),
                   [](const std::string& cell) { return printable(cell); });
    m_rows.push_back(std::move(row));
}

std::vector<int> Table::naturalWidths() const {
    std::vector<int> widths;
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        int width = displayWidth(m_columns[i].heading);
        DecimalWidths most;
        for (const auto& row : m_rows) {
            width = std::max(width, displayWidth(row[i]));
            const DecimalWidths one = decimalWidths(row[i]);
            most = {std::max(most.whole, one.whole), std::max(most.rest, one.rest)};
        }
        if (m_columns[i].align == Align::decimal)
            width = std::max(width, most.whole + most.rest);
        widths.push_back(width);
    }
    return widths;
}

std::vector<int> Table::fittedWidths(int width) const {
    std::vector<int> widths = naturalWidths();
    std::vector<int> least = widths;
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        if (m_columns[i].align != Align::left)
            continue;
        least[i] = widestPiece(m_columns[i].heading);
        for (const auto& row : m_rows)
            least[i] = std::max(least[i], indentOf(row[i]) + widestPiece(row[i]));
    }
    int excess = std::accumulate(widths.begin(), widths.end(), 0) +
                 gap * (static_cast<int>(widths.size()) - 1) - width;
    for (; excess > 0; --excess) {
        std::size_t widest = widths.size();
        for (std::size_t i = 0; i < widths.size(); ++i)
            if (widths[i] > least[i] && (widest == widths.size() || widths[i] > widths[widest]))
                widest = i;
        if (widest == widths.size())
            break;
        --widths[widest];
    }
    return widths;
}

std::string Table::headingText(const std::vector<int>& widths) const {
    std::vector<std::vector<std::string>> heading;
    std::vector<std::vector<std::string>> rule;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const std::string& words = m_columns[i].heading;
        if (m_columns[i].align == Align::left)
            heading.push_back(wrappedCell(words, widths[i]));
        else
            heading.push_back({rightAligned(words, widths[i])});
        rule.push_back({std::string(static_cast<std::size_t>(widths[i]), '-')});
    }
    return rowText(heading, widths) + rowText(rule, widths);
}

std::string Table::text(int width, const std::string& emptySentence) const {
    if (m_rows.empty())
        return emptySentence + "\n";
    const std::vector<int> widths = fittedWidths(width);
    std::vector<int> rests(widths.size());
    for (std::size_t i = 0; i < widths.size(); ++i)
        for (const auto& row : m_rows)
            rests[i] = std::max(rests[i], decimalWidths(row[i]).rest);

    std::string result = headingText(widths);
    for (const auto& row : m_rows) {
        std::vector<std::vector<std::string>> cells;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            const Align align = m_columns[i].align;
            if (align == Align::left)
                cells.push_back(wrappedCell(row[i], widths[i]));
            else if (align == Align::right)
                cells.push_back({rightAligned(row[i], widths[i])});
            else
                cells.push_back({decimalAligned(row[i], widths[i], rests[i])});
        }
        result += rowText(cells, widths);
    }
    return result;
}

}  // namespace rackbook
