// What the estimate of light adds to the reasons of a verdict. Part of Readiness.
#pragma once

#include <string>
#include <vector>

#include "calc/Readiness.h"

namespace rackbook {

// Nothing where no dose was asked for, or the row has no extender-rich pull. Whole sentences.
std::vector<std::string> doseReasons(const ReadinessRow& row, const History& history,
                                     const HouseRules& rules);

// "a look is worth making from 2026-04-03 on, …", without a capital and a full stop.
std::string forecastWords(const LightForecast& forecast);

// What the colour looks leave to be done: that they came too early to tell, or that another one is
// due, and from when on. Nothing where they settle it, or there are none.
std::vector<std::string> colourLookReasons(const ReadinessRow& row, const History& history,
                                           const HouseRules& rules);

}  // namespace rackbook
