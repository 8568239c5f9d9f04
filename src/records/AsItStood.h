// Records as they stood on a day: what ended, was signed or was cut later had not yet.
#pragma once

#include "base/CivilTime.h"
#include "records/RecordSet.h"

namespace rackbook {

// Whether it had not come yet at the end of asOf; what has no date had.
bool isAfter(const std::optional<EdtfDate>& date, CivilMinute asOf);

// Takes out of a record what dates in it say came after asOf. Records of one moment stay as they
// are. What has no date, such as whether an edition is closed, is as it is today.
template <class R>
void standAt(R&, CivilMinute) {}

void standAt(Lot& lot, CivilMinute asOf);
void standAt(Mix& mix, CivilMinute asOf);
void standAt(Block& block, CivilMinute asOf);
void standAt(Impression& impression, CivilMinute asOf);

// Without what happened after asOf, the rest as it stood.
RecordSet recordsAsOf(const RecordSet& records, CivilMinute asOf);

}  // namespace rackbook
