// Whether readings taken at looks are the colour of the record. Part of readiness.
#pragma once

#include <vector>

#include "records/History.h"
#include "records/HouseRules.h"
#include "records/Impression.h"
#include "records/Look.h"
#include "records/Reading.h"

namespace rackbook {

// Sets readingAgrees of looks in the history, whose looks are those given, in their order. The
// record is the reading of the bon à tirer of the same edition, the latest where there are several,
// and never the look's own. They agree where they were taken under like conditions and differ by no
// more than the house rule colourTolerance_dE00, under D50 and for the 2° observer. Readings that
// hold no colour agree with nothing.
void markReadingAgreement(History& history, const std::vector<Look>& looks,
                          const std::vector<Reading>& readings,
                          const std::vector<Impression>& impressions, const HouseRules& rules);

}  // namespace rackbook
