// Daylight out of doors summed over time.
#pragma once

#include "calc/SkyLight.h"

namespace rackbook {

struct DaylightDose {
    Estimate irradiation_Whm2 = Estimate::exactly(0);      // all wavelengths
    Estimate exposure_lxh = Estimate::exactly(0);          // as the eye weighs it
    Estimate nearUltraviolet_Whm2 = Estimate::exactly(0);  // 315–400 nm
};

// Between two instants under one kind of sky. A civil day is from one local midnight to the next,
// both turned to UTC by whoever knows the zone; it may have 23 or 25 hours. Summed by Simpson's
// rule in steps of at most 5 min; halving them changes a day by less than 2e-5 of it on a level
// plane, and by less than 2e-4 on an upright one, where the sun comes around the wall (the worst of
// 1,500 days tried). Each bound is that of skies that are dim, or bright, from beginning to end. A
// changing weather is the mean of the doses of its skies: the mean of its cover gives too much
// light, since the last oktas take most of it. Throw InputError where `until` is before `from`, and
// as sunAt, requireOktas and onUpright.
DaylightDose doseOnLevel(const GeoPoint& place, const UtcTime& from, const UtcTime& until,
                         const Oktas& oktas);
DaylightDose doseOnUpright(const GeoPoint& place, const UprightPlane& plane, const UtcTime& from,
                           const UtcTime& until, const Oktas& oktas);

// The same in steps of at most `step_min`, for those who need the error.
DaylightDose doseOnLevel(const GeoPoint& place, const UtcTime& from, const UtcTime& until,
                         const Oktas& oktas, double step_min);
DaylightDose doseOnUpright(const GeoPoint& place, const UprightPlane& plane, const UtcTime& from,
                           const UtcTime& until, const Oktas& oktas, double step_min);

}  // namespace rackbook
