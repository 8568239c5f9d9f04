// The time now. SOURCE_DATE_EPOCH (reproducible-builds.org) fixes it, so that sheets and tests
// can be made again to the byte.
#pragma once

#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "base/ZoneShifts.h"

namespace rackbook {

// Seconds since 1970-01-01T00:00:00Z. Throws UsageError where SOURCE_DATE_EPOCH is not a number or
// lies outside the years 1 to 9999.
std::int64_t nowEpoch_s();

// "2026-03-04T08:30:00Z"
std::string utcText(std::int64_t epoch_s);

// The wall clock at an IANA time zone. Throws InputError for a zone that the system does not know.
CivilMinute civilMinuteAt(std::int64_t epoch_s, const std::string& timeZone);
bool isKnownTimeZone(const std::string& timeZone);

// From 1850 to 2150; beyond, the first and the last hold. Throws as civilMinuteAt.
ZoneShifts zoneShiftsOf(const std::string& timeZone);

// Whether the zone's clocks show that wall-clock minute at that many minutes east of UTC.
bool zoneAllowsOffset(CivilMinute civil, int offset_min, const std::string& timeZone);

// The shifts, in minutes east of UTC, at which the zone's clocks showed that wall-clock minute, in
// the order of time: none where they were put forward over it, two where they were put back and
// showed it twice. Throws InputError for a zone that the system does not know.
std::vector<int> shiftsShowing_min(CivilMinute civil, const std::string& timeZone);

// Whether the zone's clocks ever showed that wall-clock minute: not where they were put forward
// over it.
bool clocksShowed(CivilMinute civil, const std::string& timeZone);

// The zone's shift about that wall-clock minute, as "+01:00".
std::string offsetText(CivilMinute civil, const std::string& timeZone);

}  // namespace rackbook
