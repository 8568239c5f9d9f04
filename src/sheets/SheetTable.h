// A table as a builder of sheets writes it down.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheets/PageModel.h"

namespace rackbook {

enum class Alignment {
    left,
    right,
    decimal  // on the decimal point, or after the last digit of the first number
};

struct TableColumn {
    std::string header;
    Alignment alignment = Alignment::left;
    double share = 1;     // of the width that fixed columns leave over
    double fixed_mm = 0;  // where greater than 0, the width; share is not read
};

struct TableCell {
    TableCell() = default;
    TableCell(std::string words) : text(std::move(words)) {}
    TableCell(const char* words) : text(words) {}
    TableCell(LabColour colour, std::string words) : text(std::move(words)), swatch(colour) {}

    std::string text;
    std::optional<LabColour> swatch;  // drawn left of the text
};

struct TableRow {
    std::vector<TableCell> cells;
    bool strong = false;     // a total, for instance
    bool ruleAbove = false;  // a rule instead of a hairline over it
    // One cell across all columns, set strong; stays with the row that follows.
    bool heading = false;
    bool keepsWithNext = false;  // stands on the same page as the row that follows
    double least_mm = 0;         // its height, at least: room to write in
};

struct SheetTable {
    std::vector<TableColumn> columns;
    std::vector<TableRow> rows;
};

}  // namespace rackbook
