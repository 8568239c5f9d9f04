#include "calc/DaylightDose.h"

#include <cmath>
#include <functional>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/EstimateMath.h"
#include "calc/LuminousEfficacy.h"
#include "calc/UltravioletShare.h"

namespace rackbook {

namespace {

constexpr double usualStep_min = 5;
constexpr double minutesPerHour = 60;

void addTo(DaylightDose& dose, const SkyLight& light, const PlaneLight& plane, double hours) {
    const auto add = [hours](Estimate& sum, const Estimate& rate) {
        sum = sumOf(sum, productOf(rate, Estimate::exactly(hours)));
    };
    add(dose.irradiation_Whm2, plane.total_Wm2);
    add(dose.exposure_lxh, illuminance_lx(light, plane));
    add(dose.nearUltraviolet_Whm2, nearUltraviolet_Wm2(light, plane));
}

void requireSpan(const UtcTime& from, const UtcTime& until, double step_min) {
    if (until.minutes < from.minutes)
        throw InputError("daylight", "the time ends before it begins",
                         "Give the earlier instant first.");
    if (!(step_min > 0))
        throw InputError("daylight", "the step is " + formatShortest(step_min) + " min",
                         "Give one above 0.");
}

using PlaneOf = std::function<PlaneLight(const SkyLight&)>;

DaylightDose doseOn(const PlaneOf& planeOf, const GeoPoint& place, const UtcTime& from,
                    const UtcTime& until, const Oktas& oktas, double step_min) {
    const auto lightAt = [&](double minutes) { return skyLightOf(sunAt(place, {minutes}), oktas); };
    requireSpan(from, until, step_min);
    // Both ends first, so that wrong ones are refused before anything is summed.
    const SkyLight first = lightAt(from.minutes);
    const SkyLight last = lightAt(until.minutes);
    const double span = until.minutes - from.minutes;
    const auto pairs = static_cast<long>(std::ceil(span / (2 * step_min)));
    const double hours = pairs > 0 ? span / static_cast<double>(2 * pairs) / minutesPerHour : 0;

    DaylightDose dose;
    addTo(dose, first, planeOf(first), hours / 3);
    addTo(dose, last, planeOf(last), hours / 3);
    for (long i = 1; i < 2 * pairs; ++i) {
        const SkyLight light =
            lightAt(from.minutes + static_cast<double>(i) * hours * minutesPerHour);
        if (light.global_Wm2.high > 0)
            addTo(dose, light, planeOf(light), hours * (i % 2 == 1 ? 4 : 2) / 3);
    }
    return dose;
}

}  // namespace

DaylightDose doseOnLevel(const GeoPoint& place, const UtcTime& from, const UtcTime& until,
                         const Oktas& oktas, double step_min) {
    return doseOn(onLevel, place, from, until, oktas, step_min);
}

DaylightDose doseOnUpright(const GeoPoint& place, const UprightPlane& plane, const UtcTime& from,
                           const UtcTime& until, const Oktas& oktas, double step_min) {
    const auto onPlane = [&plane](const SkyLight& light) { return onUpright(light, plane); };
    return doseOn(onPlane, place, from, until, oktas, step_min);
}

DaylightDose doseOnLevel(const GeoPoint& place, const UtcTime& from, const UtcTime& until,
                         const Oktas& oktas) {
    return doseOnLevel(place, from, until, oktas, usualStep_min);
}

DaylightDose doseOnUpright(const GeoPoint& place, const UprightPlane& plane, const UtcTime& from,
                           const UtcTime& until, const Oktas& oktas) {
    return doseOnUpright(place, plane, from, until, oktas, usualStep_min);
}

}  // namespace rackbook
