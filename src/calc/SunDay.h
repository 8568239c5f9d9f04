// Sunrise, sunset, noon and the length of the day.
#pragma once

#include <optional>

#include "calc/SunPosition.h"

namespace rackbook {

// One solar day: from 12 h before noon to 12 h after it.
struct SunDay {
    UtcTime noon;                    // when the sun crosses the meridian
    double noonElevation_deg = 0;    // with refraction
    std::optional<UtcTime> sunrise;  // none where the sun does not come up in this day
    std::optional<UtcTime> sunset;
    double daylight_min = 0;  // 0 … 1440, from sunrise to sunset or what of it is in the day

    bool isPolarDay() const { return !sunrise && !sunset && daylight_min > 0; }
    bool isPolarNight() const { return !sunrise && !sunset && daylight_min <= 0; }
};

// The day by local mean solar time in which `time` falls, which is not the civil day of a zone. The
// sun is up while its upper edge is above a flat horizon that lifts it by 34′ (the usual almanac
// definition, Meeus chapter 15); real air moves sunrise by a minute or so, near the polar circles
// by many. Throws InputError like sunAt.
SunDay sunDayOf(const GeoPoint& place, const UtcTime& time);

}  // namespace rackbook
