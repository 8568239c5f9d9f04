#include "calc/MostDaylight.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "calc/EstimateMath.h"
#include "calc/LuminousEfficacy.h"
#include "calc/UltravioletShare.h"

namespace rackbook {

namespace {

constexpr double minutesPerHour = 60;
constexpr double longestStep_min = 10;

constexpr double beyondClearSky = 1.5;
constexpr LightRate fullSun{150'000, 90};

// Nothing stands between the plane and the sun, and all of the sky lies before it.
PlaneLight facingTheSun(const SkyLight& light) {
    PlaneLight plane;
    plane.direct_Wm2 = light.directNormal_Wm2;
    plane.sky_Wm2 = light.diffuse_Wm2;
    plane.ground_Wm2 = Estimate::exactly(0);
    plane.total_Wm2 = sumOf(plane.direct_Wm2, plane.sky_Wm2);
    return plane;
}

}  // namespace

LightRate mostLightAt(const GeoPoint& studio, const UtcTime& time) {
    const SkyLight light = skyLightOf(sunAt(studio, time), Oktas::exactly(0));
    const PlaneLight plane = facingTheSun(light);
    const auto most = [](const Estimate& clear, double inFullSun) {
        return std::min(beyondClearSky * clear.high, inFullSun);
    };
    return {most(illuminance_lx(light, plane), fullSun.illuminance_lx) + mostLamps.illuminance_lx,
            most(nearUltraviolet_Wm2(light, plane), fullSun.ultravioletA_Wm2) +
                mostLamps.ultravioletA_Wm2};
}

LightSum mostLightBetween(const GeoPoint& studio, const UtcTime& from, const UtcTime& until,
                          double covered_h) {
    const double span_min = until.minutes - from.minutes;
    if (!(span_min >= 0))
        throw InputError("daylight", "the time ends before it begins",
                         "Give the earlier instant first.");
    const long steps = std::max(1L, std::lround(std::ceil(span_min / longestStep_min)));
    const double step_min = span_min / static_cast<double>(steps);
    LightSum sum;
    LightRate brightest;
    LightRate first = mostLightAt(studio, from);
    for (long i = 1; i <= steps; ++i) {
        const LightRate last =
            mostLightAt(studio, {from.minutes + static_cast<double>(i) * step_min});
        // The brighter end of each step, so that a sun that comes up within it counts.
        const LightRate rate{std::max(first.illuminance_lx, last.illuminance_lx),
                             std::max(first.ultravioletA_Wm2, last.ultravioletA_Wm2)};
        sum.exposure_lxh += rate.illuminance_lx * step_min / minutesPerHour;
        sum.nearUltraviolet_Whm2 += rate.ultravioletA_Wm2 * step_min / minutesPerHour;
        brightest.illuminance_lx = std::max(brightest.illuminance_lx, rate.illuminance_lx);
        brightest.ultravioletA_Wm2 = std::max(brightest.ultravioletA_Wm2, rate.ultravioletA_Wm2);
        first = last;
    }
    return {std::min(sum.exposure_lxh, covered_h * brightest.illuminance_lx),
            std::min(sum.nearUltraviolet_Whm2, covered_h * brightest.ultravioletA_Wm2)};
}

}  // namespace rackbook
