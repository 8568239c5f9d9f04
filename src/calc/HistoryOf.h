// The flat history of all impressions in a set of records.
#pragma once

#include "records/History.h"
#include "records/RecordSet.h"

namespace rackbook {

// Editions, layers, lots, pulls, places, moves, looks and weighings keep their positions in the
// record set; impressions are sorted by edition and working number, each with its position in the
// set as its key. References to records that are not in the set become -1; a weighing whose mix is
// missing keeps its position and counts for nothing.
History historyOf(const RecordSet& records);

}  // namespace rackbook
