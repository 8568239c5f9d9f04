#include "calc/SunDay.h"

#include <cmath>

#include "base/CivilTime.h"

namespace rackbook {

namespace {

constexpr double minutesPerDegree = 4;
constexpr double halfDay_min = 12 * 60;

// How far the sun's upper edge stands above the horizon that is seen; 0 at sunrise and sunset.
double edge_deg(const GeoPoint& place, double minutes) {
    constexpr double refractionAtHorizon_deg = 34.0 / 60;
    constexpr double radiusAt1AU_deg = 959.63 / 3600;
    const SunPosition sun = sunAt(place, {minutes});
    return sun.elevation_deg + refractionAtHorizon_deg + radiusAt1AU_deg / sun.distance_AU;
}

UtcTime noonOf(const GeoPoint& place, const UtcTime& time) {
    // Asked first, so that a wrong place or time is refused before anything is computed from it.
    sunAt(place, time);
    const double day_min = 2 * halfDay_min;
    const double longitude_min = minutesPerDegree * place.longitude_deg;
    const double day = std::floor((time.minutes + longitude_min) / day_min);
    double noon = day * day_min + halfDay_min - longitude_min;
    // The hour angle runs almost evenly; each step leaves less than a thousandth of the one before.
    for (int step = 0; step < 3; ++step)
        noon -= minutesPerDegree * sunAt(place, {noon}).hourAngle_deg;
    return {noon};
}

// Pre: the sun is up at one end and not at the other.
UtcTime crossing(const GeoPoint& place, double from, double to) {
    constexpr double precise_min = 0.001;
    const bool upAtFrom = edge_deg(place, from) > 0;
    while (to - from > precise_min) {
        const double middle = (from + to) / 2;
        if ((edge_deg(place, middle) > 0) == upAtFrom)
            from = middle;
        else
            to = middle;
    }
    return {(from + to) / 2};
}

// Half a day has one crossing at most: between midnight and noon the sun climbs all the time, or,
// within 0.1° of a pole, moves one way.
void addHalf(SunDay& day, const GeoPoint& place, double from, double to) {
    const bool upBefore = edge_deg(place, from) > 0;
    const bool upAfter = edge_deg(place, to) > 0;
    if (upBefore == upAfter) {
        day.daylight_min += upBefore ? to - from : 0;
        return;
    }
    const UtcTime at = crossing(place, from, to);
    if (upAfter) {
        day.sunrise = at;
        day.daylight_min += to - at.minutes;
    } else {
        day.sunset = at;
        day.daylight_min += at.minutes - from;
    }
}

}  // namespace

SunDay sunDayOf(const GeoPoint& place, const UtcTime& time) {
    SunDay day;
    day.noon = noonOf(place, time);
    day.noonElevation_deg = sunAt(place, day.noon).apparentElevation_deg;
    addHalf(day, place, day.noon.minutes - halfDay_min, day.noon.minutes);
    addHalf(day, place, day.noon.minutes, day.noon.minutes + halfDay_min);
    return day;
}

}  // namespace rackbook
