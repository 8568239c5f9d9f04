// Whether there is a chance to tell that the colour of a print is back, and why not.
#pragma once

#include <cstdint>

#include "calc/Readiness.h"
#include "records/EnumText.h"

namespace rackbook {

enum class ToldChance : std::uint8_t {
    told,          // ReadinessRow::returnedChance
    foundTrue,     // the last look found the colour true, and counts: nothing is left to chance
    datesTooWide,  // dates of pulls or moves leave the dose open by more than light ever does
    lightNotKnown  // the dose has no best value
};
template <>
struct EnumText<ToldChance> {
    static constexpr const char* names[] = {"told", "foundTrue", "datesTooWide", "lightNotKnown"};
};

// Of a row that has an extender-rich pull. A look that came too early to tell, before the colour
// can have turned, leaves the chance as it is.
ToldChance toldChanceOf(const ReadinessRow& row);

}  // namespace rackbook
