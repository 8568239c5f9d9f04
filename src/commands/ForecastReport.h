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

// {"on", "groups": […], "notConcerned", "notKnown" (how many), "houseRules"}. A group has
// "edition", "workingNumbers", "verdict", "sunnyDays" (so far: "low", "best", "high"),
// "returnedChance" (0 … 1; null where there is none to tell) and "returnedChanceWhy" (told,
// foundTrue, datesTooWide, lightNotKnown), "foundTrueOn" ("earliest", "latest" of the last look,
// null but where foundTrue), "looksFoundTrue" and "looksWanted" (how many count, and have to),
// "nextLookFrom" (the day from which another one counts, null where none has yet) and "places". A
// place has "place" (id), "isHere", "interleavedHere" (they are there, under interleaving; its days
// are with that taken off), and the days "early", "likely", "late": null where not within two
// years; all of them where dates leave the light open, and the last two where foundTrue: "early" is
// the day of another look then.
Tree forecastTree(const ForecastFacts& facts);

}  // namespace rackbook
