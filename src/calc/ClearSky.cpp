#include "calc/ClearSky.h"

#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

double extraterrestrial_Wm2(double distance_AU) {
    constexpr double solarConstant_Wm2 = 1361;
    if (!(distance_AU > 0) || !std::isfinite(distance_AU))
        throw InputError("sun", "the distance is " + formatShortest(distance_AU) + " AU",
                         "Give one above 0, such as 1.");
    return solarConstant_Wm2 / (distance_AU * distance_AU);
}

double haurwitzGlobal_Wm2(double elevation_deg) {
    constexpr double radiansPerDegree = 3.14159265358979323846 / 180;
    if (!(std::fabs(elevation_deg) <= 90))
        throw InputError("clear sky",
                         "the sun's elevation is " + formatShortest(elevation_deg) + "°",
                         "Give -90 to 90.");
    if (elevation_deg <= 0)
        return 0;
    const double height = std::sin(elevation_deg * radiansPerDegree);
    return 1098 * height * std::exp(-0.059 / height);
}

Estimate clearSkyGlobal_Wm2(double elevation_deg) {
    const double global = haurwitzGlobal_Wm2(elevation_deg);
    return {0.85 * global, global, 1.10 * global};
}

double erbsDiffuseShare(double clearnessIndex) {
    const double k = clearnessIndex;
    if (!(k >= 0) || !std::isfinite(k))
        throw InputError("sky", "the clearness index is " + formatShortest(k),
                         "Give 0 or more, usually below 1.");
    if (k <= 0.22)
        return 1 - 0.09 * k;
    if (k <= 0.80)
        return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
    return 0.165;
}

}  // namespace rackbook
