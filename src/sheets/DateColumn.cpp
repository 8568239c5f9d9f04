#include "sheets/DateColumn.h"

#include "base/Text.h"

namespace rackbook {

namespace {

constexpr std::size_t plainDay = 10;  // characters of "2026-03-20"
constexpr double ofDays_mm = 20;
constexpr double ofWords_mm = 29;

bool hasLongLine(const std::string& text) {
    std::size_t length = 0;
    for (const char32_t c : codePoints(text)) {
        length = c == U'\n' ? 0 : length + 1;
        if (length > plainDay)
            return true;
    }
    return false;
}

}  // namespace

double dateWidth_mm(const SheetTable& table, std::size_t column) {
    for (const TableRow& row : table.rows)
        if (column < row.cells.size() && hasLongLine(row.cells[column].text))
            return ofWords_mm;
    return ofDays_mm;
}

}  // namespace rackbook
