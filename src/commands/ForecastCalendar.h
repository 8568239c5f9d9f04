// The forecast as reminders in a calendar.
#pragma once

#include <vector>

#include "commands/ForecastPlan.h"
#include "exchange/CalendarFile.h"

namespace rackbook {

// For each group one reminder at what is to be done next: a look where one is due, or from the day
// on which one is worth making at the place where they hang; bringing out where they lie in the
// dark too early. None where no day can be told.
std::vector<CalendarEntry> remindersOf(const ForecastPlan& plan, const Readiness& readiness,
                                       const History& history, const HouseRules& rules);

}  // namespace rackbook
