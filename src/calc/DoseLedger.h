// The near ultraviolet that a print had since a pull, stay by stay.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <vector>

#include "calc/Estimate.h"
#include "calc/PlaceUltraviolet.h"
#include "calc/Stays.h"
#include "records/Place.h"

namespace rackbook {

// The light of a place over time: the entries of its own record, else those of the place around
// it; a drawer or a box without any is dark. By position of the place, each in the order of time.
struct LightPeriod {
    CivilMinute from = beginningOfTime;
    Light light;
};
std::vector<std::vector<LightPeriod>> lightPeriodsOf(const std::vector<Place>& places);

struct StayDose {
    int place = -1;  // -1: not known where it was
    TimeSpan from;
    TimeSpan to;  // no later than what was asked for
    bool interleaved = false;
    Estimate dose_Whm2 = Estimate::exactly(0);
};

struct DoseSince {
    Estimate dose_Whm2 = Estimate::exactly(0);
    std::vector<StayDose> stays;  // those after the pull, in order
};

class DoseLedger {
public:
    // All must outlive the ledger.
    DoseLedger(PlaceUltraviolet& ultraviolet, const std::vector<std::vector<LightPeriod>>& periods)
        : m_ultraviolet(ultraviolet), m_periods(periods) {}

    // Low takes what was certainly there, high what can have been, best the middle of badly known
    // moments. A print that lies interleaved gets nothing. Time of which no move says where it was
    // lies between nothing and the open air. Within a day, light counts evenly over its hours.
    DoseSince since(const std::vector<Stay>& stays, const TimeSpan& pulled, CivilMinute asOf);

    // At one place over a time without an end in it that is not known.
    Estimate at(int place, CivilMinute from, CivilMinute to);

private:
    Estimate ofDay(int place, std::int64_t day);
    StayDose ofStay(const Stay& stay, const TimeSpan& pulled, CivilMinute asOf);

    PlaceUltraviolet& m_ultraviolet;
    const std::vector<std::vector<LightPeriod>>& m_periods;
    std::map<std::pair<int, std::int64_t>, Estimate> m_days;  // by place and day
};

}  // namespace rackbook
