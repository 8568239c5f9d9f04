// When a print that hangs at a place should have had its light.
#pragma once

#include <cstdint>
#include <optional>

#include "calc/LightModel.h"

namespace rackbook {

struct ReadinessRow;

// Days from 1970-01-01 on the studio's calendar; nothing: not within two years. Where looks found
// the colour true, early is from when on another look counts, and the chances are not asked.
struct LightForecast {
    std::optional<std::int64_t> early;   // from here on a look may be worth making
    std::optional<std::int64_t> likely;  // half of such prints have their colour back
    std::optional<std::int64_t> late;    // the dose counts as enough, and the days are counted out
};

// Chances of the house rules lookChance and returnedChance.
struct ForecastChances {
    double early = 0.1;
    double late = 0.8;
    CivilMinute nextLook = beginningOfTime;  // as nextLookFrom has it
};

ForecastChances forecastChancesOf(const ReadinessRow& row, const HouseRules& rules);

// Whether places are lit decides nothing here: a dark place never brings the dose, and the caller
// says whether days there count. From `from` on, through the season's sun and usual skies. Without
// a best value of the dose so far there is no forecast.
LightForecast forecastAt(const LightModel& model, const ReadinessRow& row, int place,
                         CivilMinute from, const ForecastChances& chances);

// At the place where it is, of a row that has a forecast. It costs many times what the row did, so
// it is made only for what is shown.
LightForecast forecastOf(const ReadinessRow& row, const HouseRules& rules);

}  // namespace rackbook
