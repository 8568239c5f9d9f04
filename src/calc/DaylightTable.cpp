#include "calc/DaylightTable.h"

#include <algorithm>
#include <cmath>

#include "base/CivilTime.h"
#include "calc/EstimateMath.h"
#include "calc/SkyLight.h"
#include "calc/UltravioletShare.h"

namespace rackbook {

namespace {

constexpr std::int64_t referenceYear = 2023;
constexpr int stepsAnHour = 6;
constexpr double step_min = 10;

std::uint64_t quarters(double oktas) {
    return static_cast<std::uint64_t>(std::lround(oktas * 4));
}

PlaneLight onPlane(const SkyLight& light, std::size_t plane) {
    if (plane == static_cast<std::size_t>(DayPlane::level))
        return onLevel(light);
    return onUpright(light, {90.0 * static_cast<double>(plane - 1)});
}

}  // namespace

DaylightTable::DaylightTable(const GeoPoint& place) : m_place(place) {
    sunAt(place, {0});
}

std::int64_t DaylightTable::referenceDay(std::int64_t day) {
    const std::int64_t ofYear = day - daysFromCivil({civilFromDays(day).year, 1, 1});
    return daysFromCivil({referenceYear, 1, 1}) + std::min<std::int64_t>(364, ofYear);
}

const DayLight& DaylightTable::under(const Oktas& oktas, std::int64_t day) {
    requireOktas(oktas);
    const std::int64_t reference = referenceDay(day);
    const std::uint64_t key =
        ((static_cast<std::uint64_t>(reference) * 64 + quarters(oktas.low)) * 64 +
         quarters(oktas.best)) *
            64 +
        quarters(oktas.high);
    const auto found = m_days.find(key);
    if (found != m_days.end())
        return found->second;
    return m_days.emplace(key, reckon(oktas, reference)).first->second;
}

DayLight DaylightTable::reckon(const Oktas& oktas, std::int64_t day) const {
    DayLight sums;
    sums.nearUltraviolet_Whm2.fill(Estimate::exactly(0));
    ByPlane<std::array<double, DayLight::hours>> ofHour = {};
    const double midnight = static_cast<double>(day * minutesPerDay) - 4 * m_place.longitude_deg;
    for (std::size_t step = 0; step < DayLight::hours * stepsAnHour; ++step) {
        const double middle = midnight + (static_cast<double>(step) + 0.5) * step_min;
        const SunPosition sun = sunAt(m_place, {middle});
        if (sun.apparentElevation_deg <= 0)
            continue;
        const SkyLight light = skyLightOf(sun, oktas);
        for (std::size_t plane = 0; plane < dayPlanes; ++plane) {
            const Estimate part =
                scaled(nearUltraviolet_Wm2(light, onPlane(light, plane)), 1.0 / stepsAnHour);
            sums.nearUltraviolet_Whm2[plane] = sumOf(sums.nearUltraviolet_Whm2[plane], part);
            ofHour[plane][step / stepsAnHour] += part.best;
        }
    }
    for (std::size_t plane = 0; plane < dayPlanes; ++plane) {
        const double whole = sums.nearUltraviolet_Whm2[plane].best;
        double fallen = 0;
        for (std::size_t hour = 0; hour < DayLight::hours; ++hour) {
            fallen += ofHour[plane][hour];
            sums.fallenBy[plane][hour] =
                static_cast<float>(whole > 0 ? std::min(1.0, fallen / whole) : 1);
        }
        sums.fallenBy[plane].back() = 1;
    }
    return sums;
}

}  // namespace rackbook
