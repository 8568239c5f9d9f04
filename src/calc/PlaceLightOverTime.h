// What is recorded of the light at places over time, with the place tree resolved, for doses.
#pragma once

#include <vector>

#include "records/Metering.h"
#include "records/Place.h"

namespace rackbook {

struct LightPeriod {
    CivilMinute from = beginningOfTime;
    Light light;
};

// By position of the place, each in the order of time: the entries of its own record, else those of
// the place around it; a drawer or a box without any is dark.
std::vector<std::vector<LightPeriod>> lightPeriodsOf(const std::vector<Place>& places);

// Whether the place was dark through all of the time, as far as its entries say.
bool isDarkThroughout(const std::vector<LightPeriod>& periods, CivilMinute from, CivilMinute to);
// The same, lit by day: through a window or out of doors. Metered light may be that of any lamp.
bool isDaylitThroughout(const std::vector<LightPeriod>& periods, CivilMinute from, CivilMinute to);

// What an instrument saw at a place between two moments.
struct MeteredSpan {
    CivilMinute from = 0;
    CivilMinute to = 0;
    double seen = 1;  // of that time, the share that it saw, above 0 … 1
    std::optional<double> nearUltraviolet_Whm2;
    std::optional<double> exposure_lxh;
};

// By position of the place, each in the order of time: its own meterings, else those of the nearest
// place around it from which its light comes.
std::vector<std::vector<MeteredSpan>> meteredSpansOf(const std::vector<Place>& places,
                                                     const std::vector<Metering>& meterings);

}  // namespace rackbook
