#include "calc/SunPosition.h"

#include <cmath>
#include <string>

#include "base/CivilTime.h"
#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double daysToJ2000 = 10957.5;  // 1970-01-01T00:00 to 2000-01-01T12:00
constexpr double daysPerCentury = 36525;
constexpr double deltaT_min = 70.0 / 60;  // dynamical time less UTC; about 69 s in 2026
constexpr double sunParallax_deg = 8.794 / 3600;

double radians(double degrees) {
    return degrees * (pi / 180);
}

double degrees(double radians) {
    return radians * (180 / pi);
}

double sine(double angle_deg) {
    return std::sin(radians(angle_deg));
}

double cosine(double angle_deg) {
    return std::cos(radians(angle_deg));
}

void requirePlace(const GeoPoint& place) {
    if (!(std::fabs(place.latitude_deg) <= 90))
        throw InputError("place on Earth",
                         "the latitude is " + formatShortest(place.latitude_deg) + "°",
                         "Give -90 (South Pole) to 90 (North Pole).");
    if (!(std::fabs(place.longitude_deg) <= 180))
        throw InputError("place on Earth",
                         "the longitude is " + formatShortest(place.longitude_deg) + "°",
                         "Give -180 to 180, east of Greenwich positive.");
}

void requireTime(const UtcTime& time) {
    static const auto first =
        static_cast<double>(daysFromCivil({1900, 1, 1})) * static_cast<double>(minutesPerDay);
    static const auto end =
        static_cast<double>(daysFromCivil({2200, 1, 1})) * static_cast<double>(minutesPerDay);
    if (!(time.minutes >= first && time.minutes < end))
        throw InputError("sun",
                         "the time, " + formatShortest(time.minutes) +
                             " min from 1970, is not in the years 1900 to 2199",
                         "Check the date.");
}

// Seen from the Earth's centre; equator and equinox of the date, aberration and the largest term
// of nutation included.
struct ApparentSun {
    double rightAscension_deg = 0;
    double declination_deg = 0;
    double distance_AU = 1;
    double equinoxes_deg = 0;  // nutation in right ascension
};

struct EclipticSun {
    double longitude_deg = 0;  // true, of the mean equinox
    double distance_AU = 1;
};

// t: centuries of dynamical time from 2000-01-01T12:00
EclipticSun eclipticSun(double t) {
    const double meanLongitude = 280.46646 + t * (36000.76983 + t * 0.0003032);
    const double anomaly = 357.52911 + t * (35999.05029 - t * 0.0001537);
    const double eccentricity = 0.016708634 - t * (0.000042037 + t * 0.0000001267);
    const double centre = (1.914602 - t * (0.004817 + t * 0.000014)) * sine(anomaly) +
                          (0.019993 - t * 0.000101) * sine(2 * anomaly) +
                          0.000289 * sine(3 * anomaly);
    const double distance = 1.000001018 * (1 - eccentricity * eccentricity) /
                            (1 + eccentricity * cosine(anomaly + centre));
    return {meanLongitude + centre, distance};
}

ApparentSun apparentSun(double t) {
    constexpr double aberration_deg = 0.00569;
    const EclipticSun sun = eclipticSun(t);
    const double moonNode = 125.04 - 1934.136 * t;
    const double nutation = -0.00478 * sine(moonNode);
    const double longitude = sun.longitude_deg - aberration_deg + nutation;
    const double obliquity = 23.4392911 - 0.0130042 * t + 0.00256 * cosine(moonNode);
    ApparentSun apparent;
    apparent.rightAscension_deg =
        degrees(std::atan2(cosine(obliquity) * sine(longitude), cosine(longitude)));
    apparent.declination_deg = degrees(std::asin(sine(obliquity) * sine(longitude)));
    apparent.distance_AU = sun.distance_AU;
    apparent.equinoxes_deg = nutation * cosine(obliquity);
    return apparent;
}

double meanSiderealTime_deg(double daysFromJ2000) {
    const double t = daysFromJ2000 / daysPerCentury;
    return 280.46061837 + 360.98564736629 * daysFromJ2000 + 0.000387933 * t * t;
}

}  // namespace

double refraction_deg(double elevation_deg) {
    if (!(std::fabs(elevation_deg) <= 90))
        throw InputError("sun", "the elevation is " + formatShortest(elevation_deg) + "°",
                         "Give -90 to 90.");
    constexpr double lowestSeen_deg = -0.575;
    if (elevation_deg < lowestSeen_deg)
        return -20.774 / 3600 * cosine(elevation_deg) / sine(elevation_deg);
    const double angle = elevation_deg + 10.3 / (elevation_deg + 5.11);
    return (1.02 * cosine(angle) / sine(angle) + 0.0019279) / 60;
}

SunPosition sunAt(const GeoPoint& place, const UtcTime& time) {
    requirePlace(place);
    requireTime(time);
    const double day_min = static_cast<double>(minutesPerDay);
    const double days = time.minutes / day_min - daysToJ2000;
    const ApparentSun sun = apparentSun((days + deltaT_min / day_min) / daysPerCentury);
    const double hourAngle = std::remainder(meanSiderealTime_deg(days) + sun.equinoxes_deg +
                                                place.longitude_deg - sun.rightAscension_deg,
                                            360);
    // The direction to the sun on the axes of the place.
    const double equatorial = cosine(sun.declination_deg) * cosine(hourAngle);
    const double polar = sine(sun.declination_deg);
    const double east = -cosine(sun.declination_deg) * sine(hourAngle);
    const double north = cosine(place.latitude_deg) * polar - sine(place.latitude_deg) * equatorial;
    const double up = sine(place.latitude_deg) * polar + cosine(place.latitude_deg) * equatorial;

    SunPosition position;
    const double fromCentre = degrees(std::atan2(up, std::hypot(east, north)));
    position.elevation_deg = fromCentre - sunParallax_deg / sun.distance_AU * cosine(fromCentre);
    position.apparentElevation_deg =
        position.elevation_deg + refraction_deg(position.elevation_deg);
    const double azimuth = degrees(std::atan2(east, north));
    position.azimuth_deg = azimuth < 0 ? std::fmod(azimuth + 360, 360) : azimuth;
    position.declination_deg = sun.declination_deg;
    position.hourAngle_deg = hourAngle;
    position.distance_AU = sun.distance_AU;
    return position;
}

}  // namespace rackbook
