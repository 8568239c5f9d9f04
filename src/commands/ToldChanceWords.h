// What is told of the chance that the colour of a print is back, in reports.
#pragma once

#include <string>

#include "base/Tree.h"
#include "calc/Readiness.h"

namespace rackbook {

// "29 %", "found true on 2026-03-15", "not known: dates", "not known".
std::string toldChanceWords(const ReadinessRow& row, const History& history);

// "The colour was found true on 2026-03-15: 1 of the 2 looks that the studio wants." Pre: it was.
std::string foundTrueWords(const ReadinessRow& row, const History& history);

// "returnedChance" (0 … 1; null where there is none to tell), "returnedChanceWhy" (told, foundTrue,
// datesTooWide, lightNotKnown) and "foundTrueOn" ("earliest" and "latest" of the last look, null
// but where foundTrue).
void setToldChance(Tree& one, const ReadinessRow& row, const History& history);

}  // namespace rackbook
