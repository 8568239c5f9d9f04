// What rackbook forecast says.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "commands/ForecastPlan.h"

namespace rackbook {

struct ForecastFacts {
    const History& history;
    const HouseRules& rules;
    const Readiness& readiness;
    const ForecastPlan& plan;
    bool givesRules = false;
};

void printForecast(Console& console, const ForecastFacts& facts);

Tree forecastTree(const ForecastFacts& facts);

}  // namespace rackbook
