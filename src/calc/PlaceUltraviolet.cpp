#include "calc/PlaceUltraviolet.h"

#include <algorithm>
#include <cmath>

#include "base/CivilTime.h"
#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/EstimateMath.h"
#include "calc/GlassUltraviolet.h"
#include "calc/SunDay.h"

namespace rackbook {

namespace {

constexpr double minutesPerHour = 60;
constexpr double hoursPerDay = 24;

// EN 17037 and BS 8206-2 speak of rooms of 2 to 5 % as daylit; beside a window it is more, in the
// depth of a room less (range ours).
constexpr Estimate usualDaylightFactor{0.003, 0.02, 0.08};
// Of the time that the sun shines on the window, the patch of it lies on the print (our guess).
constexpr Estimate sunPatch{0, 0.03, 0.2};
// Of light straight from the sun, beside as much from the sky, what a room makes of it (our guess).
constexpr Estimate sunInRoom{0.2, 0.5, 1};
// mW of UV-A in a lumen of daylight behind clear glass (from memory).
constexpr Estimate ultravioletOfDaylight_mWlm{0.1, 0.3, 0.6};
// Lamps: LED next to nothing, fluorescent tubes 0.04 to 0.08 (from memory).
constexpr Estimate ultravioletOfLamps_mWlm{0, 0.02, 0.08};
constexpr Estimate usualLamps_lx{50, 200, 500};
constexpr Estimate usualMetered_lx{50, 300, 3000};
constexpr Estimate lampHours_h{2, 8, 14};

Estimate hullOf(const Estimate& a, const Estimate& b) {
    return {std::min(a.low, b.low), (a.best + b.best) / 2, std::max(a.high, b.high)};
}

void requireShares(const SkyShares& skies) {
    if (!(skies.sunny >= 0 && skies.overcast >= 0 && skies.sunny + skies.overcast <= 1 + 1e-9))
        throw InputError("skies",
                         "the shares are " + formatShortest(skies.sunny) + " sunny and " +
                             formatShortest(skies.overcast) + " overcast",
                         "Give shares of 0 or more that come to no more than 1 together.");
}

std::size_t monthOf(std::int64_t day) {
    return static_cast<std::size_t>(civilFromDays(day).month - 1);
}

const Estimate& on(const ByPlane<Estimate>& sums, DayPlane plane) {
    return sums[static_cast<std::size_t>(plane)];
}

// Which two of the four facings an azimuth lies between, and how far from the first to the second.
struct Between {
    std::size_t first;
    std::size_t second;
    double part;
};

Between facingsAround(double azimuth_deg) {
    const double turned = std::fmod(std::fmod(azimuth_deg, 360) + 360, 360) / 90;
    const auto quarter = static_cast<std::size_t>(turned) % 4;
    return {1 + quarter, 1 + (quarter + 1) % 4, turned - std::floor(turned)};
}

// Without a facing, any of them.
Estimate facing(const ByPlane<Estimate>& sums, const std::optional<double>& azimuth_deg) {
    if (azimuth_deg) {
        const Between at = facingsAround(*azimuth_deg);
        return sumOf(scaled(sums[at.first], 1 - at.part), scaled(sums[at.second], at.part));
    }
    Estimate any{on(sums, DayPlane::north).low, 0, on(sums, DayPlane::north).high};
    for (std::size_t plane = 1; plane < dayPlanes; ++plane)
        any = {std::min(any.low, sums[plane].low), any.best + sums[plane].best / 4,
               std::max(any.high, sums[plane].high)};
    return any;
}

// What falls on the face of a window: from the sky and the ground, and straight from the sun. Of
// the four faces, the one that has least has hardly any of the sun.
struct OnFace {
    Estimate sky;
    Estimate sun;
};

OnFace onFace(const ByPlane<Estimate>& sums, const std::optional<double>& azimuth_deg) {
    const Estimate all = facing(sums, azimuth_deg);
    double least = all.best;
    for (std::size_t plane = 1; plane < dayPlanes; ++plane)
        least = std::min(least, sums[plane].best);
    const double share = all.best > 0 ? least / all.best : 1;
    return {scaled(all, share), scaled(all, 1 - share)};
}

// The daylight factor tells what reaches the print of what falls on open ground under an overcast
// sky, when all faces have alike, `overcastFace` of it; of what falls on the window's own face it
// is as much more. Light straight from the sun reaches most of the room by way of floor and walls.
Estimate behindGlass(const Light& light, const ByPlane<Estimate>& sums, double overcastFace) {
    const Estimate factor = light.daylightFactor_pct
                                ? scaled({0.7, 1, 1.3}, *light.daylightFactor_pct / 100)
                                : usualDaylightFactor;
    const OnFace face = onFace(sums, light.windowAzimuth_deg);
    const Estimate window =
        scaled(sumOf(face.sky, productOf(face.sun, sunInRoom)), 1 / overcastFace);
    Estimate dose =
        independentProductOf(window, independentProductOf(factor, ultravioletInRoom(light)));
    const Estimate sun =
        productOf(independentProductOf(face.sun, ultravioletThroughGlass(light)), sunPatch);
    if (light.directSun.value_or(false))
        dose = sumOf(dose, sun);
    else if (!light.directSun)
        dose.high += sun.high;
    return dose;
}

Estimate ofDaylight_mWlm(const std::optional<Light>& light) {
    return scaled(ultravioletOfDaylight_mWlm, light ? ultravioletBesideClearGlass(*light) : 1);
}

Estimate byDaylight(const std::optional<Light>& light, const ByPlane<Estimate>& sums,
                    double overcastFace) {
    if (light && light->lightKind == LightKind::daylight)
        return behindGlass(*light, sums, overcastFace);
    if (light)
        return facing(sums, light->windowAzimuth_deg);
    Estimate any = hullOf(facing(sums, std::nullopt), on(sums, DayPlane::level));
    any.low = 0;
    any.best = notKnown;
    return any;
}

}  // namespace

PlaceUltraviolet::PlaceUltraviolet(const GeoPoint& studio, Skies skies)
    : m_studio(studio), m_skies(std::move(skies)), m_table(studio) {
    requireShares(m_skies.usual);
    for (const std::optional<SkyShares>& month : m_skies.ofMonth)
        if (month)
            requireShares(*month);
    const std::int64_t equinox = daysFromCivil({2023, 3, 20});
    DaylightTable reference({std::clamp(studio.latitude_deg, -60.0, 60.0), studio.longitude_deg});
    const PlaneSums& sums = reference.under(oktasOf(Sky::sunny), equinox).nearUltraviolet_Whm2;
    m_sunnyDay_Whm2 = Estimate::exactly(0);
    for (std::size_t plane = 1; plane < dayPlanes; ++plane)
        m_sunnyDay_Whm2 = sumOf(m_sunnyDay_Whm2, scaled(sums[plane], 0.25));
    const PlaneSums& grey = reference.under(oktasOf(Sky::overcast), equinox).nearUltraviolet_Whm2;
    m_overcastFace = on(grey, DayPlane::north).best / on(grey, DayPlane::level).best;
}

DayLight PlaceUltraviolet::mixedDay(const SkyShares& skies, std::int64_t day) {
    const std::pair<Sky, double> kinds[] = {
        {Sky::sunny, skies.sunny},
        {Sky::broken, std::max(0.0, 1 - skies.sunny - skies.overcast)},
        {Sky::overcast, skies.overcast}};
    DayLight mixed;
    mixed.nearUltraviolet_Whm2.fill(Estimate::exactly(0));
    for (auto& hours : mixed.fallenBy)
        hours.fill(0);
    ByPlane<double> fallen = {};
    for (const auto& [word, share] : kinds) {
        if (share <= 0)
            continue;
        const DayLight& one = m_table.under(oktasOf(word), day);
        for (std::size_t plane = 0; plane < dayPlanes; ++plane) {
            const Estimate part = scaled(one.nearUltraviolet_Whm2[plane], share);
            mixed.nearUltraviolet_Whm2[plane] = sumOf(mixed.nearUltraviolet_Whm2[plane], part);
            fallen[plane] += part.best;
            for (std::size_t hour = 0; hour < DayLight::hours; ++hour)
                mixed.fallenBy[plane][hour] +=
                    static_cast<float>(part.best) * one.fallenBy[plane][hour];
        }
    }
    for (std::size_t plane = 0; plane < dayPlanes; ++plane) {
        for (float& share : mixed.fallenBy[plane])
            share =
                fallen[plane] > 0 ? std::min(1.0F, share / static_cast<float>(fallen[plane])) : 1;
        mixed.fallenBy[plane].back() = 1;
    }
    return mixed;
}

const DayLight& PlaceUltraviolet::onDay(std::int64_t day) {
    if (!m_latest || m_latestDay != day) {
        m_latest = &lookUp(day);
        m_latestDay = day;
    }
    return *m_latest;
}

const DayLight& PlaceUltraviolet::lookUp(std::int64_t day) {
    const auto noted = m_skies.ofDay.find(day);
    if (noted != m_skies.ofDay.end())
        return m_table.under(noted->second, day);
    // The reference year has no 29 February: from then on its days lie in another month's.
    const std::int64_t reference = DaylightTable::referenceDay(day);
    const std::size_t month = monthOf(day);
    const std::int64_t key = reference * 12 + static_cast<std::int64_t>(month);
    const auto found = m_mixed.find(key);
    if (found != m_mixed.end())
        return found->second;
    const SkyShares skies = m_skies.ofMonth[month].value_or(m_skies.usual);
    return m_mixed.emplace(key, mixedDay(skies, reference)).first->second;
}

// Bounds against bounds: the same air and the same share of ultraviolet in both.
PlaceUltraviolet::PlaneSums PlaceUltraviolet::inSunnyDays(const PlaneSums& sums_Whm2) const {
    PlaneSums sums = sums_Whm2;
    for (Estimate& sum : sums) {
        const double low = sum.low / m_sunnyDay_Whm2.low;
        const double best = sum.best / m_sunnyDay_Whm2.best;
        const double high = sum.high / m_sunnyDay_Whm2.high;
        sum = {std::min({low, best, high}), best, std::max({low, best, high})};
    }
    return sums;
}

// Of light that has nothing to do with the sky of the sunny day.
LightDose PlaceUltraviolet::againstSunnyDay(const Estimate& dose_Whm2) const {
    return {dose_Whm2, quotientOf(dose_Whm2, m_sunnyDay_Whm2)};
}

double PlaceUltraviolet::daylight_h(std::int64_t day) const {
    const double noon = static_cast<double>(DaylightTable::referenceDay(day) * minutesPerDay) +
                        minutesPerDay / 2.0 - 4 * m_studio.longitude_deg;
    return sunDayOf(m_studio, {noon}).daylight_min / minutesPerHour;
}

LightDose PlaceUltraviolet::ofMetered(const Estimate& nearUltraviolet_Whm2) {
    return againstSunnyDay(nearUltraviolet_Whm2);
}

LightDose PlaceUltraviolet::ofExposure(const std::optional<Light>& light, double exposure_lxh) {
    const bool lamps = light && light->lightKind == LightKind::artificial;
    const Estimate perLumen_mWlm = lamps ? ultravioletOfLamps_mWlm : ofDaylight_mWlm(light);
    return againstSunnyDay(scaled(perLumen_mWlm, exposure_lxh * 1e-3));
}

LightDose PlaceUltraviolet::ofDay(const std::optional<Light>& light, std::int64_t day) {
    if (light && light->lightKind == LightKind::dark)
        return {};
    const auto at = [&](const Estimate& usual_lx) {
        return light->illuminance_lx ? Estimate::exactly(*light->illuminance_lx) : usual_lx;
    };
    if (light && light->lightKind == LightKind::artificial)
        return againstSunnyDay(
            scaled(independentProductOf(productOf(at(usualLamps_lx), lampHours_h),
                                        ultravioletOfLamps_mWlm),
                   1e-3));
    if (light && light->lightKind == LightKind::metered)
        return againstSunnyDay(
            scaled(independentProductOf(scaled(at(usualMetered_lx), daylight_h(day)),
                                        ofDaylight_mWlm(light)),
                   1e-3));
    const PlaneSums& sums = onDay(day).nearUltraviolet_Whm2;
    return {byDaylight(light, sums, m_overcastFace),
            byDaylight(light, inSunnyDays(sums), m_overcastFace)};
}

double PlaceUltraviolet::fallenBy(const std::optional<Light>& light, std::int64_t day,
                                  double solarMinute) {
    const double hour = std::clamp(solarMinute / minutesPerHour, 0.0, hoursPerDay);
    if (light && light->lightKind == LightKind::artificial)
        return hour / hoursPerDay;
    const DayLight& sums = onDay(day);
    const auto whole = static_cast<std::size_t>(hour);
    const auto on = [&](std::size_t plane) {
        const auto& fallen = sums.fallenBy[plane];
        const double before = whole == 0 ? 0 : static_cast<double>(fallen[whole - 1]);
        const double after = whole >= DayLight::hours ? before : static_cast<double>(fallen[whole]);
        return before + (after - before) * (hour - static_cast<double>(whole));
    };
    const bool hasFace = light && (light->lightKind == LightKind::outdoors ||
                                   light->lightKind == LightKind::daylight);
    if (!hasFace || !light->windowAzimuth_deg)
        return on(static_cast<std::size_t>(DayPlane::level));
    const Between at = facingsAround(*light->windowAzimuth_deg);
    return on(at.first) * (1 - at.part) + on(at.second) * at.part;
}

}  // namespace rackbook
