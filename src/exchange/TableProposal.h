// A mapping to begin from, for a table that nobody has mapped yet.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "base/Tree.h"
#include "exchange/TableFile.h"
#include "records/RecordKind.h"

namespace rackbook {

struct TableProposal {
    Tree mapping;
    std::vector<std::pair<std::string, std::string>> matched;  // heading and field
    std::vector<std::string> passedOver;                       // headings that mean nothing here
    std::vector<std::string> toFillIn;  // JSON pointers of what holds "?" and wants an answer
};

// Headings that are paths of fields, as cellsOf() writes them, are taken for those fields; others
// by plain words in English and German. What a record cannot do without (`needed`) and no column
// gives is left as "?", and so are words of cells whose meaning is not plain. A list of editions
// also makes their impressions, a list of lots stock-takes where it says what is left, a list of
// sales the parties and who has the sheets. Pre: the table has a row of headings.
TableProposal proposedMapping(const TableFile& table, RecordKind kind,
                              const std::vector<std::string>& needed);

}  // namespace rackbook
