// When impressions that want light should have had it, here and at the studio's other places.
#pragma once

#include <string>
#include <vector>

#include "calc/LightForecast.h"
#include "calc/Readiness.h"
#include "store/HistoryQuery.h"

namespace rackbook {

struct PlaceForecast {
    int place = -1;
    bool isHere = false;             // where they are now, face open
    bool isInterleavedHere = false;  // where they are now; days with the interleaving taken off
    LightForecast days;              // none where dates leave the light open
};

// Impressions of one edition that stand alike: same verdict, same place, same light so far.
struct ForecastGroup {
    std::string edition;
    std::vector<int> numbers;
    std::size_t sample = 0;         // a row of the readiness that stands for the others
    bool isInterleaved = false;     // where they are
    bool isPlaceLit = false;        // for prints that show their face there
    std::vector<PlaceForecast> at;  // the present place first, then the others by their names
};

struct ForecastPlan {
    std::vector<ForecastGroup> groups;
    std::vector<int> places;       // lit places in the studio that were tried
    std::size_t notConcerned = 0;  // ready, or not affected
    std::size_t notKnown = 0;      // no extender-rich pull is known, but there may be one
};

// `onlyPlace`: -1 for all racks, walls and the like in the studio's hands that are lit on that day
// and not given up.
ForecastPlan forecastPlanOf(const History& history, const std::vector<ImpressionLabel>& labels,
                            const Readiness& readiness, const LightModel& model,
                            const HouseRules& rules, int onlyPlace);

}  // namespace rackbook
