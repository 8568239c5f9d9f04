// Turns a table into strips.
#pragma once

#include <string>

#include "sheets/SheetTable.h"
#include "sheets/Strip.h"
#include "sheets/Structure.h"
#include "sheets/TypeScale.h"

namespace rackbook {

struct TableStrips {
    StripGroup header;
    StripGroup rows;  // these ask for the header with the number given
};

// Words wrap inside their columns; a decimal column whose figures don't fit is set flush right and
// wraps. Rows of up to a third of body_mm stand on one page; taller ones may break between lines,
// at least two lines on either side. The header keeps with the first row, and where that has less
// than three lines, with the second; so do the last two rows with one another, and the last four of
// a long table. A column that is too narrow for a word of its header takes room from the others.
// The table becomes an element of the structure, with its rows and cells.
// Throws RenderError, naming `where`, for text that cannot be set, for rows that don't have one
// cell a column, for columns too wide for the sheet, and for a header taller than half of body_mm.
TableStrips layOutTable(const SheetTable& table, const TextMeasurer& measurer,
                        const TypeScale& scale, StructureBuilder& structure, double width_mm,
                        double body_mm, int headerNumber, const std::string& where,
                        const std::string& decimalSign = ".");

}  // namespace rackbook
