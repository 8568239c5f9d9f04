// What makes a metering unlikely, in the same words for the audit and for those who have just
// typed it.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <unordered_map>
#include <vector>

#include "base/ZoneShifts.h"
#include "calc/PlaceLightOverTime.h"
#include "calc/SunPosition.h"
#include "records/Book.h"

namespace rackbook {

struct MeteringDoubt {
    std::string pointer;  // the field it is about
    std::string what;
    std::string value;
    std::string remedy;
};

// Whether the two are of the same place from the same minute to the same minute.
inline bool areOfOneTime(const Metering& a, const Metering& b) {
    return a.place == b.place && a.from.earliest() == b.from.earliest() &&
           a.to.latest() == b.to.latest();
}

class MeteringDoubts {
public:
    // The places must outlive it. Without a studio, its latitude and longitude, or a time zone
    // that the system knows, nothing is said of the sun.
    MeteringDoubts(const std::vector<Place>& places, const std::vector<Metering>& meterings,
                   const Book* studio);

    // Light where the place is declared dark: it counts to the dose and brings no days in light.
    std::optional<MeteringDoubt> darkPlace(const Metering& metering) const;

    // More than the sun over the studio and lamps can give at a place lit by day in that very time
    // (MostDaylight.h). Places out of the studio's hands may lie under another sun.
    std::optional<MeteringDoubt> beyondSun(const Metering& metering) const;

    // More near ultraviolet to a lumen than daylight or lamps have, where both were measured in
    // the same time at the same place, by one metering or by two. The second is told of the one
    // with the ultraviolet.
    std::optional<MeteringDoubt> beyondItsLight(const Metering& metering) const;

    // Whether the sun over the studio is known and all light at the place is of it or of lamps.
    bool isUnderStudioSun(const Ref<Place>& place, CivilMinute from, CivilMinute to) const;
    // Pre: the studio's sun is known.
    const GeoPoint& studio() const { return *m_studio; }

private:
    using Span = std::tuple<std::string, CivilMinute, CivilMinute>;

    static Span spanOf(const Metering& metering);
    int positionOf(const Ref<Place>& place) const;
    bool isOutOfHands(int place) const;

    const std::vector<Place>& m_places;
    std::unordered_map<std::string, int> m_positions;
    std::vector<std::vector<LightPeriod>> m_periods;
    std::map<Span, double> m_exposures_lxh;  // of meterings of light alone
    std::optional<GeoPoint> m_studio;
    ZoneShifts m_clocks;
};

}  // namespace rackbook
