// Parts of a book that stand by themselves.
#pragma once

#include <string>
#include <vector>

#include "records/RecordSet.h"

namespace rackbook {

// The records of the set, each kind after those it may name.
std::vector<Record> allRecords(const RecordSet& records);

// An edition with all that belongs to it (blocks, layers, impressions, their pulls, moves, looks,
// transfers, sheets handed out, readings and photographs; the mixes of its pulls and layers down
// to the lots, and drawdowns of these) and everything that any of those name, so that the part can
// be taken into an empty book. A move or a transfer that other editions share brings their sheets
// along. In the order of allRecords. Throws std::out_of_range where the set
// holds no edition of that id.
std::vector<Record> editionWithAll(const RecordSet& records, const std::string& editionId);

}  // namespace rackbook
