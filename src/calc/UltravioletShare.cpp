#include "calc/UltravioletShare.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/EstimateMath.h"
#include "calc/WithCover.h"

namespace rackbook {

namespace {

void requireElevation(double elevation_deg) {
    if (!(std::fabs(elevation_deg) <= 90))
        throw InputError("ultraviolet",
                         "the sun's elevation is " + formatShortest(elevation_deg) + "°",
                         "Give -90 to 90.");
}

double sineOf(double angle_deg) {
    return std::sin(angle_deg * (3.14159265358979323846 / 180));
}

}  // namespace

double airMass(double elevation_deg) {
    requireElevation(elevation_deg);
    const double h = std::max(0.0, elevation_deg);
    return 1 / (sineOf(h) + 0.50572 * std::pow(h + 6.07995, -1.6364));
}

Estimate directUltravioletShare(double elevation_deg) {
    requireElevation(elevation_deg);
    if (elevation_deg <= 0)
        return Estimate::exactly(0);
    const double mass = airMass(elevation_deg);
    // The spread is a fifth more or less of what the air takes away.
    const auto share = [mass](double attenuation) {
        return 0.0634 * std::exp(-attenuation * mass);
    };
    return {share(1.2 * 0.426), share(0.426), share(0.8 * 0.426)};
}

Estimate skyUltravioletShare(const Oktas& oktas) {
    return withCover(oktas, {0.09, 0.135, 0.17}, {0.045, 0.065, 0.09});
}

Estimate clearGlobalUltravioletShare() {
    return {0.035, 0.045, 0.06};
}

Estimate nearUltraviolet_Wm2(const SkyLight& light, const PlaneLight& plane) {
    // What ground sends back of ultraviolet, over what it sends back of all light.
    constexpr Estimate groundOfUltraviolet{0.1, 0.4, 1.2};
    const Estimate sun =
        productOf(plane.direct_Wm2, directUltravioletShare(light.sun.apparentElevation_deg));
    const Estimate sky = productOf(plane.sky_Wm2, skyUltravioletShare(light.oktas));
    const Estimate sentBack = productOf(clearGlobalUltravioletShare(), groundOfUltraviolet);
    const Estimate ground = productOf(plane.ground_Wm2, sentBack);
    return sumOf(sumOf(sun, sky), ground);
}

double clearSkyUvIndex(double elevation_deg, double ozone_DU) {
    requireElevation(elevation_deg);
    if (!(ozone_DU >= 100 && ozone_DU <= 600))
        throw InputError("ultraviolet",
                         "the ozone column is " + formatShortest(ozone_DU) + " Dobson units",
                         "Give 100 to 600, usually 300.");
    if (elevation_deg <= 0)
        return 0;
    return 12.5 * std::pow(sineOf(elevation_deg), 2.42) * std::pow(ozone_DU / 300, -1.23);
}

double erythemal_Wm2(double uvIndex) {
    if (!(uvIndex >= 0) || !std::isfinite(uvIndex))
        throw InputError("ultraviolet", "the UV index is " + formatShortest(uvIndex),
                         "Give 0 or more.");
    return uvIndex / 40;
}

}  // namespace rackbook
