// What the sheet of the ink stock says, reckoned as rackbook stock reckons it.
#pragma once

#include "records/RecordSet.h"
#include "sheets/StockSheetFacts.h"

namespace rackbook {

// What came after asOf is left out. Pre: the studio's own record is among them.
StockSheetFacts stockSheetFactsOf(const RecordSet& records, CivilMinute asOf);

}  // namespace rackbook
