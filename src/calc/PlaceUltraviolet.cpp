#include "calc/PlaceUltraviolet.h"

#include <algorithm>
#include <cmath>

#include "base/CivilTime.h"
#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/EstimateMath.h"
#include "calc/SunDay.h"

namespace rackbook {

namespace {

constexpr double minutesPerHour = 60;
constexpr std::int64_t referenceYear = 2023;

// EN 17037 and BS 8206-2 speak of rooms of 2 to 5 % as daylit; beside a window it is more, in the
// depth of a room less (range ours).
constexpr Estimate usualDaylightFactor{0.003, 0.02, 0.08};
// Of ultraviolet behind glass, beside what the eye sees there: clear float glass lets through about
// 0.65 of UV-A and 0.88 of light, and walls send back little ultraviolet (from memory). Laminated
// and coated glass let through next to none, and are not told apart here.
constexpr Estimate ultravioletBehindGlass{0.25, 0.55, 0.75};
// Of the time that the sun shines on the window, the patch of it lies on the print (our guess).
constexpr Estimate sunPatch{0, 0.03, 0.2};
// mW of UV-A in a lumen: daylight behind clear glass 0.3, filtered 0.01 (from memory).
constexpr Estimate ultravioletOfDaylight_mWlm{0.01, 0.3, 0.6};
// Lamps: LED next to nothing, fluorescent tubes 0.04 to 0.08 (from memory).
constexpr Estimate ultravioletOfLamps_mWlm{0, 0.02, 0.08};
constexpr Estimate usualLamps_lx{50, 200, 500};
constexpr Estimate usualMetered_lx{50, 300, 3000};
constexpr Estimate lampHours_h{2, 8, 14};

Estimate hullOf(const Estimate& a, const Estimate& b) {
    return {std::min(a.low, b.low), (a.best + b.best) / 2, std::max(a.high, b.high)};
}

// The day of the year of the reference that stands for a day.
std::int64_t referenceDay(std::int64_t day) {
    const std::int64_t ofYear = day - daysFromCivil({civilFromDays(day).year, 1, 1});
    return daysFromCivil({referenceYear, 1, 1}) + std::min<std::int64_t>(364, ofYear);
}

void requireShares(const SkyShares& skies) {
    if (!(skies.sunny >= 0 && skies.overcast >= 0 && skies.sunny + skies.overcast <= 1))
        throw InputError("skies",
                         "the shares are " + formatShortest(skies.sunny) + " sunny and " +
                             formatShortest(skies.overcast) + " overcast",
                         "Give shares of 0 or more that come to no more than 1 together.");
}

}  // namespace

PlaceUltraviolet::PlaceUltraviolet(const GeoPoint& studio, const SkyShares& skies)
    : m_studio(studio), m_skies(skies) {
    requireShares(skies);
    sunAt(studio, {0});
}

// From one solar midnight to the next, so that no time zone is needed.
PlaceUltraviolet::DaySums PlaceUltraviolet::sumsOf(std::int64_t day, const SkyShares& skies) const {
    const double midnight = static_cast<double>(day * minutesPerDay) - 4 * m_studio.longitude_deg;
    const UtcTime from{midnight};
    const UtcTime until{midnight + static_cast<double>(minutesPerDay)};
    const std::pair<SkyWord, double> mixed[] = {{SkyWord::sunny, skies.sunny},
                                                {SkyWord::broken, 1 - skies.sunny - skies.overcast},
                                                {SkyWord::overcast, skies.overcast}};
    DaySums sums;
    sums.fill(Estimate::exactly(0));
    for (const auto& [word, share] : mixed) {
        if (share <= 0)
            continue;
        const Oktas oktas = oktasOf(word);
        sums[level] =
            sumOf(sums[level],
                  scaled(doseOnLevel(m_studio, from, until, oktas).nearUltraviolet_Whm2, share));
        for (int plane = north; plane < planes; ++plane)
            sums[static_cast<std::size_t>(plane)] =
                sumOf(sums[static_cast<std::size_t>(plane)],
                      scaled(doseOnUpright(m_studio, {90.0 * (plane - north)}, from, until, oktas)
                                 .nearUltraviolet_Whm2,
                             share));
    }
    return sums;
}

const PlaceUltraviolet::DaySums& PlaceUltraviolet::onDay(std::int64_t day) {
    const std::int64_t reference = referenceDay(day);
    const auto found = m_ofDay.find(reference);
    if (found != m_ofDay.end())
        return found->second;
    return m_ofDay.emplace(reference, sumsOf(reference, m_skies)).first->second;
}

double PlaceUltraviolet::daylight_h(std::int64_t day) const {
    const double noon = static_cast<double>(referenceDay(day) * minutesPerDay) +
                        minutesPerDay / 2.0 - 4 * m_studio.longitude_deg;
    return sunDayOf(m_studio, {noon}).daylight_min / minutesPerHour;
}

// Between the two of the four facings that it lies between; without a facing, any of them.
Estimate PlaceUltraviolet::facing(const DaySums& sums,
                                  const std::optional<double>& azimuth_deg) const {
    if (!azimuth_deg) {
        Estimate any{sums[north].low, 0, sums[north].high};
        for (int plane = north; plane < planes; ++plane) {
            const Estimate& one = sums[static_cast<std::size_t>(plane)];
            any = {std::min(any.low, one.low), any.best + one.best / 4,
                   std::max(any.high, one.high)};
        }
        return any;
    }
    const double turned = std::fmod(std::fmod(*azimuth_deg, 360) + 360, 360) / 90;
    const int first = static_cast<int>(turned) % 4;
    const double part = turned - std::floor(turned);
    const Estimate& a = sums[static_cast<std::size_t>(north + first)];
    const Estimate& b = sums[static_cast<std::size_t>(north + (first + 1) % 4)];
    return sumOf(scaled(a, 1 - part), scaled(b, part));
}

Estimate PlaceUltraviolet::behindGlass(const Light& light, const DaySums& sums) const {
    const Estimate factor = light.daylightFactor_pct
                                ? scaled({0.7, 1, 1.3}, *light.daylightFactor_pct / 100)
                                : usualDaylightFactor;
    Estimate dose = productOf(productOf(sums[level], factor), ultravioletBehindGlass);
    const Estimate sun = productOf(
        productOf(facing(sums, light.windowAzimuth_deg), ultravioletBehindGlass), sunPatch);
    if (light.directSun.value_or(false))
        dose = sumOf(dose, sun);
    else if (!light.directSun)
        dose.high += sun.high;
    return dose;
}

Estimate PlaceUltraviolet::ofDay_Whm2(const std::optional<Light>& light, std::int64_t day) {
    if (light && light->lightKind == LightKind::dark)
        return Estimate::exactly(0);
    if (light && light->lightKind == LightKind::artificial) {
        const Estimate lamps =
            light->illuminance_lx ? Estimate::exactly(*light->illuminance_lx) : usualLamps_lx;
        return scaled(productOf(productOf(lamps, lampHours_h), ultravioletOfLamps_mWlm), 1e-3);
    }
    if (light && light->lightKind == LightKind::metered) {
        const Estimate metered =
            light->illuminance_lx ? Estimate::exactly(*light->illuminance_lx) : usualMetered_lx;
        return scaled(productOf(scaled(metered, daylight_h(day)), ultravioletOfDaylight_mWlm),
                      1e-3);
    }
    const DaySums& sums = onDay(day);
    if (light && light->lightKind == LightKind::daylight)
        return behindGlass(*light, sums);
    if (light)
        return facing(sums, light->windowAzimuth_deg);
    Estimate any = hullOf(facing(sums, std::nullopt), sums[level]);
    any.low = 0;
    any.best = notKnown;
    return any;
}

double PlaceUltraviolet::sunnyDay_Whm2() {
    return facing(sumsOf(daysFromCivil({referenceYear, 3, 20}), {1, 0}), std::nullopt).best;
}

}  // namespace rackbook
