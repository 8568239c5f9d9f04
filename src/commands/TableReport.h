// What a table holds, and what would become of its rows, for the screen.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "exchange/RecordFiles.h"
#include "exchange/TableProposal.h"
#include "exchange/TableRecords.h"

namespace rackbook {

// How the file was read, and its first rows with a line for each column.
void printTableFile(Console& console, const TableFile& table);

// Which columns a proposal took for what, and what in it is still to be filled in.
void printProposal(Console& console, const TableProposal& proposal, const std::string& file);

// The records of the first rows. Pre: `records` were read from recordsText(made).
void printPreview(Console& console, const MadeFromTable& made,
                  const std::vector<IncomingRecord>& records);

// The same as JSON: how a table was read, and what became of its rows or would.
Tree treeOf(const TableFile& table);
Tree treeOf(const MadeFromTable& made, const std::vector<IncomingRecord>& records);

// Rows that made nothing, and changes that were left out.
void printRowTally(Console& console, const MadeFromTable& made);

}  // namespace rackbook
