// What a sheet says of designations that cannot stand beside what the edition declares.
#pragma once

#include <vector>

#include "records/Impression.h"
#include "sheets/Flow.h"
#include "sheets/SheetWords.h"

namespace rackbook {

// A caution for each kind of fault, with the designations as they are written; none where all fit.
void addDesignationNotes(Flow& flow, const Edition& edition,
                         const std::vector<const Impression*>& impressions,
                         const SheetWords& words);

}  // namespace rackbook
