// The most light that can be measured at a place lit by day, against which readings are held: what
// lies above it has a wrong unit, a wrong time or a wrong place.
#pragma once

#include "calc/SkyLight.h"

namespace rackbook {

struct LightRate {
    double illuminance_lx = 0;
    double ultravioletA_Wm2 = 0;
};

// At an instant, on a plane out of doors that faces the sun and has the whole of a clear sky before
// it: the upper bounds of SkyLight, LuminousEfficacy and UltravioletShare, times 1.5 for clouds
// that are bright beside the sun (a quarter and more for minutes), snow, and the errors of
// instruments; no more than full sun with bright clouds, 150,000 lx and 90 W/m²; and 2,000 lx and 1
// W/m² of lamps in the room beside it, also at night. The factor, full sun and lamps are from
// memory, no source. Throws as sunAt.
LightRate mostLightAt(const GeoPoint& studio, const UtcTime& time);

// What a room's lamps give, at any hour: where less was measured, the sun need not be asked.
constexpr LightRate mostLamps{2'000, 1};

struct LightSum {
    double exposure_lxh = 0;
    double nearUltraviolet_Whm2 = 0;
};

// Summed in steps of at most 10 min; where an instrument saw only `covered_h` of the time, no more
// than as many hours of its brightest instant. Throws InputError where `until` is before `from`,
// and as mostLightAt.
LightSum mostLightBetween(const GeoPoint& studio, const UtcTime& from, const UtcTime& until,
                          double covered_h);

// How much near ultraviolet (UV-A) comes with light, in mW/lm. A clear blue sky has about 1 (13.5 %
// of its energy, see UltravioletShare.h, at 130 lm/W), or 1.4 by the upper bounds of both; daylight
// behind clear glass 0.3, lamps of rooms up to some 0.5 (from memory). Twice the bluest sky is
// taken for the most. All sunlight together has 9 mW to a lumen.
constexpr double mostUltraviolet_mWlm = 3;

}  // namespace rackbook
