// Impressions as sheets may show them.
#pragma once

#include "base/CivilTime.h"
#include "records/Impression.h"

namespace rackbook {

// As it stood at the end of asOf, without holder and note.
Impression publicImpression(Impression impression, CivilMinute asOf);

}  // namespace rackbook
