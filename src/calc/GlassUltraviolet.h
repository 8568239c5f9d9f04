// How much of the near ultraviolet of daylight gets through the glass of a window and about a room.
#pragma once

#include "calc/Estimate.h"
#include "records/Place.h"

namespace rackbook {

// Of the near ultraviolet outside, the share behind the glass: as recorded of the place, else what
// its kind of glass lets through, else any clear glass. Of 3 to 6 mm at right angles.
Estimate ultravioletThroughGlass(const Light& light);

// Near ultraviolet beside what the eye sees, in a room: what a daylight factor of light has to be
// taken times to be one of ultraviolet. A daylight factor knows of the glass already, for what the
// eye sees; walls and ceilings send back less ultraviolet than light.
Estimate ultravioletInRoom(const Light& light);

// Near ultraviolet beside what the eye sees, of daylight that was measured there: times that of
// daylight behind clear single glass.
double ultravioletBesideClearGlass(const Light& light);

}  // namespace rackbook
