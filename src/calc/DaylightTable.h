// The near ultraviolet of whole days under given skies at one place on the earth, on a level plane
// and on upright ones: reckoned once a day of the year and sky, and kept.
#pragma once

#include <array>
#include <cstdint>
#include <unordered_map>

#include "calc/CloudCover.h"
#include "calc/SunPosition.h"

namespace rackbook {

enum class DayPlane : std::uint8_t { level, north, east, south, west };
constexpr std::size_t dayPlanes = 5;

template <class T>
using ByPlane = std::array<T, dayPlanes>;

// Days go from one solar midnight to the next, so that no time zone is needed.
struct DayLight {
    static constexpr std::size_t hours = 24;
    ByPlane<Estimate> nearUltraviolet_Whm2;
    // What had fallen by the end of each hour of mean solar time, as a share of the best value.
    // All 1 on a day without light.
    ByPlane<std::array<float, hours>> fallenBy;
};

class DaylightTable {
public:
    // Throws InputError where the coordinates are out of range.
    explicit DaylightTable(const GeoPoint& place);

    // The day is counted from 1970-01-01. Days are reckoned as those of 2023, and the last of a
    // leap year as the one before: the sun's course repeats to a fraction of a degree. Summed over
    // the middles of ten minutes, within 0.005 of DaylightDose. Skies are taken to the nearest
    // quarter of an okta. Throws InputError as requireOktas. A reference holds as long as the
    // table.
    const DayLight& under(const Oktas& oktas, std::int64_t day);

    // The day of 2023 that stands for a day.
    static std::int64_t referenceDay(std::int64_t day);

private:
    DayLight reckon(const Oktas& oktas, std::int64_t day) const;

    GeoPoint m_place;
    std::unordered_map<std::uint64_t, DayLight> m_days;
};

}  // namespace rackbook
