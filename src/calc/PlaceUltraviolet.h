// How much near ultraviolet (UV-A, 315–400 nm) falls on a print at a place in a day: an estimate,
// from the sun's course, the skies, and what is recorded of the place.
//
// Indoors the daylight factor, which holds for what the eye sees, is taken for ultraviolet too,
// less what glass and walls take away. All spreads are ours or from memory where no source is
// named. Spreads of things that have nothing to do with one another (skies, daylight factor, glass)
// are put together as the roots of sums of squares of their logarithms.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <unordered_map>

#include "calc/DaylightTable.h"
#include "calc/Estimate.h"
#include "records/Place.h"

namespace rackbook {

// How often each kind of sky comes; the rest of 1 is broken cloud.
struct SkyShares {
    double sunny = 0;     // 0 … 1
    double overcast = 0;  // 0 … 1, no more than 1 with the sunny
};

struct Skies {
    SkyShares usual;
    std::array<std::optional<SkyShares>, 12> ofMonth = {};  // January first, where known
    std::unordered_map<std::int64_t, Oktas> ofDay;          // by day from 1970-01-01, where noted
};

// Of the same light twice: by energy, and beside a sunny day hung up. The second is known better:
// what is wrong with the air or the share of ultraviolet is wrong with both days alike.
struct LightDose {
    Estimate nearUltraviolet_Whm2 = Estimate::exactly(0);
    Estimate sunnyDays = Estimate::exactly(0);
};

class PlaceUltraviolet {
public:
    // Throws InputError where the coordinates or shares are out of range.
    PlaceUltraviolet(const GeoPoint& studio, Skies skies);

    // On the face of a print in one day, counted from 1970-01-01. Dark is nothing; light that is
    // not stated (nothing given) lies between nothing and the brightest place out of doors. Of
    // metered and artificial light without a reading, a usual range is taken. Throws as sunAt.
    LightDose ofDay(const std::optional<Light>& light, std::int64_t day);

    // What was metered there: Wh/m² of near ultraviolet over any time.
    LightDose ofMetered(const Estimate& nearUltraviolet_Whm2);
    // lx·h, at a place with that light: lamps and daylight hold different shares of ultraviolet.
    LightDose ofExposure(const std::optional<Light>& light, double exposure_lxh);

    // The share of that day's light that has fallen by a minute of the day in mean solar time.
    double fallenBy(const std::optional<Light>& light, std::int64_t day, double solarMinute);

    // A sunny day of twelve hours, hung up out of doors: the day of the equinox, upright, the mean
    // of four facings; nearer to a pole than 60°, that of 60°. What doses are compared with in
    // words.
    double sunnyDay_Whm2() const { return m_sunnyDay_Whm2.best; }

    const GeoPoint& studio() const { return m_studio; }

private:
    // Of one day, in one of the two measures.
    using PlaneSums = ByPlane<Estimate>;

    const DayLight& onDay(std::int64_t day);
    const DayLight& lookUp(std::int64_t day);
    DayLight mixedDay(const SkyShares& skies, std::int64_t day);
    PlaneSums inSunnyDays(const PlaneSums& sums_Whm2) const;
    LightDose againstSunnyDay(const Estimate& dose_Whm2) const;
    double daylight_h(std::int64_t day) const;

    GeoPoint m_studio;
    Skies m_skies;
    DaylightTable m_table;
    std::unordered_map<std::int64_t, DayLight> m_mixed;  // by day of the reference year and month
    // Prints of a batch ask for the same days one after the other.
    const DayLight* m_latest = nullptr;
    std::int64_t m_latestDay = 0;
    Estimate m_sunnyDay_Whm2;
    double m_overcastFace =
        1;  // on an upright face under an overcast sky, over that on level ground
};

}  // namespace rackbook
