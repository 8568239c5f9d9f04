// How much near ultraviolet (UV-A, 315–400 nm) falls on a print at a place in a day: an estimate,
// from the sun's course, the studio's skies and what is recorded of the place.
//
// Indoors the daylight factor, which holds for what the eye sees, is taken for ultraviolet too,
// less what glass and walls take away. All spreads are ours or from memory where no source is
// named.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>

#include "calc/DaylightDose.h"
#include "calc/Estimate.h"
#include "records/Place.h"

namespace rackbook {

// How often each kind of sky comes; the rest of 1 is broken cloud.
struct SkyShares {
    double sunny = 0;     // 0 … 1
    double overcast = 0;  // 0 … 1, no more than 1 with the sunny
};

// Days of the year are reckoned once and kept, as those of 2023 (and the last of a leap year as the
// one before): the sun's course repeats to a fraction of a degree.
class PlaceUltraviolet {
public:
    // Throws InputError where the coordinates or shares are out of range.
    PlaceUltraviolet(const GeoPoint& studio, const SkyShares& skies);

    // Wh/m² on the face of a print in one day, counted from 1970-01-01. Dark is nothing; light that
    // is not stated (nothing given) lies between nothing and the brightest place out of doors. Of
    // metered and artificial light without a reading, a usual range is taken. Throws as sunAt.
    Estimate ofDay_Whm2(const std::optional<Light>& light, std::int64_t day);

    // A sunny day of twelve hours, hung up out of doors: the day of the equinox, upright, the mean
    // of four facings. What doses are compared with in words.
    double sunnyDay_Whm2();

private:
    enum Plane { level, north, east, south, west, planes };
    using DaySums = std::array<Estimate, planes>;

    const DaySums& onDay(std::int64_t day);
    DaySums sumsOf(std::int64_t day, const SkyShares& skies) const;
    double daylight_h(std::int64_t day) const;
    Estimate facing(const DaySums& sums, const std::optional<double>& azimuth_deg) const;
    Estimate behindGlass(const Light& light, const DaySums& sums) const;

    GeoPoint m_studio;
    SkyShares m_skies;
    std::map<std::int64_t, DaySums> m_ofDay;  // by day of the reference year
};

}  // namespace rackbook
