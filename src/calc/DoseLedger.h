// The near ultraviolet that a print had since a pull, stay by stay.
#pragma once

#include <cstdint>
#include <vector>

#include "base/ZoneShifts.h"
#include "calc/PlaceLightOverTime.h"
#include "calc/PlaceUltraviolet.h"
#include "calc/Stays.h"

namespace rackbook {

struct StayDose {
    int place = -1;  // -1: not known where it was
    TimeSpan from;
    TimeSpan to;  // no later than what was asked for
    bool interleaved = false;
    LightDose dose;
};

struct DoseSince {
    LightDose dose;
    std::vector<StayDose> stays;  // those after the pull, in order
};

// What is recorded of the places, by position, and how the studio's clocks go.
struct PlaceRecords {
    std::vector<std::vector<LightPeriod>> periods;
    std::vector<std::vector<MeteredSpan>> metered;  // empty: nothing was metered anywhere
    ZoneShifts clocks;
};

// Sums over days are kept for every place that is asked for, so that a question costs the same
// however long the time is.
class DoseLedger {
public:
    // The ultraviolet must outlive the ledger.
    DoseLedger(PlaceUltraviolet& ultraviolet, PlaceRecords records);

    // Low takes what was certainly there, high what can have been, best the middle of badly known
    // moments. A print that lies interleaved gets nothing. Time of which no move says where it was
    // lies between nothing and the open air, and is as long as its dates allow for high. Where the
    // beginning is open, high is infinite unless all of it was dark.
    DoseSince since(const std::vector<Stay>& stays, const TimeSpan& pulled, CivilMinute asOf);
    // The same without the stays.
    LightDose sumSince(const std::vector<Stay>& stays, const TimeSpan& pulled, CivilMinute asOf);

    // At one place (-1: nobody knows where) over a time. What was metered there goes before the
    // estimate; within a day, light is counted as the sun goes.
    LightDose at(int place, CivilMinute from, CivilMinute to);

    PlaceUltraviolet& ultraviolet() { return m_ultraviolet; }
    // What is recorded of the light there on a day, and whether any of it was metered.
    std::optional<Light> lightAt(int place, std::int64_t day) const;
    bool wasMetered(int place, std::int64_t day) const;

private:
    // All days from the first kept one to before this one.
    struct DaySum {
        LightDose dose;  // best values without the days of which they are not known
        int unknownDays = 0;
    };
    struct PlaceSums {
        std::int64_t firstDay = 0;
        std::vector<DaySum> upTo;  // empty: not asked for yet
    };

    const PlaceSums& sumsOf(int place, std::int64_t first, std::int64_t last);
    LightDose ofDay(int place, std::int64_t day);
    LightDose ofMeteredDay(int place, std::int64_t day, const std::optional<Light>& light);
    LightDose ofSpan(const MeteredSpan& span, const std::optional<Light>& light, double part);
    DaySum sumUpTo(int place, const PlaceSums& sums, CivilMinute minute);
    double fallenBy(const std::optional<Light>& light, std::int64_t day, CivilMinute minute);
    bool isAlwaysDark(int place) const;
    LightDose ofStay(const Stay& stay, const TimeSpan& from, const TimeSpan& to, CivilMinute asOf);
    template <class Visit>
    LightDose passStays(const std::vector<Stay>& stays, const TimeSpan& pulled, CivilMinute asOf,
                        Visit&& visit);

    PlaceUltraviolet& m_ultraviolet;
    PlaceRecords m_records;
    std::vector<PlaceSums> m_sums;  // by place; the last is that of nobody-knows-where
};

}  // namespace rackbook
