// The portion of ink that a bench sheet says was taken for its run.
#pragma once

#include <vector>

#include "commands/SheetRun.h"

namespace rackbook {

// A new mix with what was weighed into it before the run began: from the mix of the layer, from the
// base and from the drier. Nothing where no mass was filled in. Missing and contradictory boxes are
// noted in them.
std::vector<RecordFromBoxes> portionOfSheet(const RecordSet& records, FilledBoxes& boxes,
                                            const EdtfDate& start);

}  // namespace rackbook
