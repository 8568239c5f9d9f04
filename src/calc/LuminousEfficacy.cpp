#include "calc/LuminousEfficacy.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/EstimateMath.h"
#include "calc/WithCover.h"

namespace rackbook {

Estimate directEfficacy_lmW(double elevation_deg) {
    if (!(std::fabs(elevation_deg) <= 90))
        throw InputError("daylight",
                         "the sun's elevation is " + formatShortest(elevation_deg) + "°",
                         "Give -90 to 90.");
    constexpr double spread = 0.10;
    constexpr double lowSun_deg = 10;
    constexpr double reddenedSun_lmW = 40;
    const double best =
        std::clamp(70 + (elevation_deg - lowSun_deg) * (95.0 - 70) / 50, 70.0, 105.0);
    const double low = elevation_deg < lowSun_deg ? reddenedSun_lmW : (1 - spread) * best;
    return {low, best, (1 + spread) * best};
}

Estimate skyEfficacy_lmW(const Oktas& oktas) {
    return withCover(oktas, {120, 130, 145}, {105, 110, 120});
}

Estimate globalEfficacy_lmW() {
    return {95, 107, 115};
}

Estimate illuminance_lx(const SkyLight& light, const PlaneLight& plane) {
    const double elevation = light.sun.apparentElevation_deg;
    const Estimate sun = productOf(plane.direct_Wm2, directEfficacy_lmW(elevation));
    const Estimate sky = productOf(plane.sky_Wm2, skyEfficacy_lmW(light.oktas));
    const Estimate ground = productOf(plane.ground_Wm2, globalEfficacy_lmW());
    return sumOf(sumOf(sun, sky), ground);
}

}  // namespace rackbook
