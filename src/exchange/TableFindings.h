// What is wrong with the rows of a table, told with row and column.
#pragma once

#include <vector>

#include "exchange/TableRecords.h"

namespace rackbook {

// Everything against the grammar of CSV, then `made.findings` and those of `others` (of readers of
// record files and of the book, about the array of made.records under the table's name), in the
// order of rows. What follows from a cell that could not be read is left out. Where many rows have
// the same wrong in a column, the first are told and the others counted.
std::vector<Finding> tableFindings(const TableFile& table, const TableMapping& mapping,
                                   const MadeFromTable& made, const std::vector<Finding>& others);

// The made records as the text of a record file: an array.
std::string recordsText(const MadeFromTable& made);

}  // namespace rackbook
