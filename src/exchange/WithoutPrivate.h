// Records for eyes outside the studio.
#pragma once

#include "records/RecordSet.h"

namespace rackbook {

struct PrivacyChoice {
    bool namesHolders = false;  // keep who holds what, and where that is
    bool tellsPrices = false;   // of transfers
};

// A copy without contacts, notes, what was paid for ink and to whom, the studio's coordinates, and
// documents that were handed out. Places out of the studio's hands are called withheld-1,
// withheld-2 … wherever they are named, unless holders are to be named; who holds an impression and
// what was paid for it is left out likewise.
RecordSet withoutPrivate(const RecordSet& records, const PrivacyChoice& choice);

}  // namespace rackbook
