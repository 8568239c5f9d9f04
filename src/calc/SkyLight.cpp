#include "calc/SkyLight.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/ClearSky.h"
#include "calc/EstimateMath.h"

namespace rackbook {

namespace {

constexpr double radiansPerDegree = 3.14159265358979323846 / 180;

// Parts the light on a level plane, for a sun that stands above the horizon.
class Parting {
public:
    explicit Parting(double outside_Wm2) : m_outside_Wm2(outside_Wm2) {}

    double diffuse_Wm2(double global_Wm2, double shareFactor) const {
        return global_Wm2 * share(global_Wm2, shareFactor);
    }
    double direct_Wm2(double global_Wm2, double shareFactor) const {
        return global_Wm2 * (1 - share(global_Wm2, shareFactor));
    }

    // Diffuse light is greatest under some cloud, between the ends.
    Estimate diffuse_Wm2(const Estimate& global) const {
        constexpr int parts = 8;
        Estimate diffuse = Estimate::exactly(global.isKnown() ? diffuse_Wm2(global.best, 1)
                                                              : diffuse_Wm2(global.low, 1));
        if (!global.isKnown())
            diffuse.best = notKnown;
        for (int part = 0; part <= parts; ++part) {
            const double here = global.low + (global.high - global.low) * part / parts;
            diffuse.low = std::min(diffuse.low, diffuse_Wm2(here, 1 - diffuseShareSpread));
            diffuse.high = std::max(diffuse.high, diffuse_Wm2(here, 1 + diffuseShareSpread));
        }
        return diffuse;
    }

    // Direct light rises with the global all the way.
    Estimate direct_Wm2(const Estimate& global) const {
        return {direct_Wm2(global.low, 1 + diffuseShareSpread),
                global.isKnown() ? direct_Wm2(global.best, 1) : notKnown,
                direct_Wm2(global.high, 1 - diffuseShareSpread)};
    }

private:
    double share(double global_Wm2, double factor) const {
        return std::min(1.0, factor * erbsDiffuseShare(global_Wm2 / m_outside_Wm2));
    }

    double m_outside_Wm2;  // outside the air, on a level plane
};

void requirePlane(const UprightPlane& plane) {
    if (!(std::fabs(plane.facing_deg) <= 360))
        throw InputError("window", "it faces " + formatShortest(plane.facing_deg) + "°",
                         "Give the azimuth it looks at, 0 to 360, such as 90 for east.");
    if (!(plane.groundAlbedo >= 0 && plane.groundAlbedo <= 1))
        throw InputError("window",
                         "the ground before it would reflect " +
                             formatShortest(plane.groundAlbedo) + " of the light",
                         "Give 0 to 1, usually 0.2.");
}

}  // namespace

SkyLight skyLightOf(const SunPosition& sun, const Oktas& oktas) {
    requireOktas(oktas);
    SkyLight light;
    light.sun = sun;
    light.oktas = oktas;
    light.global_Wm2 = light.directNormal_Wm2 = light.diffuse_Wm2 = Estimate::exactly(0);
    const Estimate clear = clearSkyGlobal_Wm2(sun.apparentElevation_deg);
    if (clear.high <= 0)
        return light;
    const double height = std::sin(sun.apparentElevation_deg * radiansPerDegree);
    const Parting parting(extraterrestrial_Wm2(sun.distance_AU) * height);
    light.global_Wm2 = productOf(clear, cloudFactor(oktas));
    light.diffuse_Wm2 = parting.diffuse_Wm2(light.global_Wm2);
    light.directNormal_Wm2 = scaled(parting.direct_Wm2(light.global_Wm2), 1 / height);
    return light;
}

PlaneLight onLevel(const SkyLight& light) {
    const double height = std::sin(light.sun.apparentElevation_deg * radiansPerDegree);
    PlaneLight level;
    level.direct_Wm2 = scaled(light.directNormal_Wm2, std::max(0.0, height));
    level.sky_Wm2 = light.diffuse_Wm2;
    level.ground_Wm2 = Estimate::exactly(0);
    level.total_Wm2 = light.global_Wm2;
    return level;
}

PlaneLight onUpright(const SkyLight& light, const UprightPlane& plane) {
    requirePlane(plane);
    const double incidence =
        std::cos(light.sun.apparentElevation_deg * radiansPerDegree) *
        std::cos((light.sun.azimuth_deg - plane.facing_deg) * radiansPerDegree);
    PlaneLight upright;
    upright.direct_Wm2 = scaled(light.directNormal_Wm2, std::max(0.0, incidence));
    upright.sky_Wm2 = scaled(light.diffuse_Wm2, 0.5);
    upright.ground_Wm2 = scaled(light.global_Wm2, 0.5 * plane.groundAlbedo);
    upright.total_Wm2 = sumOf(sumOf(upright.direct_Wm2, upright.sky_Wm2), upright.ground_Wm2);
    return upright;
}

}  // namespace rackbook
