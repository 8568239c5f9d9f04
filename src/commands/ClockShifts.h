// Clock times with a zone shift, against the clocks of the studio.
#pragma once

#include <string>
#include <vector>

#include "records/Invariants.h"

namespace rackbook {

// Records are kept on the studio's wall clock. A time written with a shift that the studio's
// clocks do not show at that minute would silently mean another hour, so it is complained about.
std::vector<Complaint> clockShiftComplaints(const Record& record, const std::string& timeZone);

}  // namespace rackbook
