// From the energy of daylight to what the eye makes of it: lm/W.
//
// Source: Littlefair 1985 (Lighting Res. Technol. 17:162, a review) and 1988 (20:177, a year at
// Garston, England), as their abstracts give them. The spreads around single figures are what the
// two differ by, rounded up; haze and water vapour move single hours farther.
#pragma once

#include "calc/SkyLight.h"

namespace rackbook {

// Straight from the sun: 70 at 10° and 95 at 60° (1988), on a straight line between and on to 105,
// the review's upper end; 70 below 10°, where reddened suns have less. Spread 10 %, below 10° down
// to 40 (our guess). Throws InputError where the elevation is not in −90 … 90.
Estimate directEfficacy_lmW(double elevation_deg);

// From the sky: from clear (130 in the review, 144 measured) to overcast (110 and 115) on a
// straight line with cover, as the 1988 abstract has it.
Estimate skyEfficacy_lmW(const Oktas& oktas);

// Sun and sky together, any weather: 105 in the review, 107–109 measured.
Estimate globalEfficacy_lmW();

// lx on the plane. What the ground sends back has the efficacy of sun and sky together.
Estimate illuminance_lx(const SkyLight& light, const PlaneLight& plane);

}  // namespace rackbook
