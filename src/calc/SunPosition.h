// Where the sun stands in the sky of a place, and how strong it is outside the air.
//
// Source: the sun's coordinates of low accuracy in Meeus, Astronomical Algorithms, 2nd ed. 1998,
// chapter 25, with the sidereal time of chapter 12 and the parallax of the sun (8.794″). Limits:
// good to 0.01° in the years 1900 to 2199, most of it in the truncated nutation and planets and in
// taking UTC for UT1 (0.9 s, 0.004°) and 70 s for ΔT. The horizon is flat and at the place's own
// height; hills and houses are the caller's.
#pragma once

namespace rackbook {

// Degrees: north and east are positive.
struct GeoPoint {
    double latitude_deg = 0;   // −90 … 90
    double longitude_deg = 0;  // −180 … 180
};

// An instant: minutes since 1970-01-01T00:00 UTC with fractions, leap seconds not counted. A type
// of its own, so that no CivilMinute, which is wall clock, is taken for one.
struct UtcTime {
    double minutes = 0;
};

struct SunPosition {
    // Of the sun's centre above the horizon, without and with refraction by standard air.
    double elevation_deg = 0;
    double apparentElevation_deg = 0;
    // Clockwise from north, 0 ≤ azimuth < 360. At a pole it is counted from the meridian of the
    // given longitude; with the sun in the zenith it means nothing.
    double azimuth_deg = 0;
    double declination_deg = 0;
    double hourAngle_deg = 0;  // −180 … 180, 0 when the sun crosses the meridian, west positive
    double distance_AU = 1;
};

// Throws InputError where the coordinates are out of range or not finite, and where the time does
// not lie in the years 1900 to 2199.
SunPosition sunAt(const GeoPoint& place, const UtcTime& time);

// What refraction adds to an elevation without it, in degrees, for air of 1010 hPa and 10 °C:
// Sæmundsson 1986 (Meeus, chapter 16), good to 0.002° above 15° and to some tenths of a degree at
// the horizon, where the air decides. Below −0.575° nothing is seen; the value falls off as in the
// public solar calculator of NOAA. Throws InputError where the elevation is not in −90 … 90.
double refraction_deg(double elevation_deg);

}  // namespace rackbook
