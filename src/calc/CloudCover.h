// How much light clouds let through.
#pragma once

#include "calc/Estimate.h"
#include "records/Weather.h"

namespace rackbook {

// Eighths of the sky that are covered, 0 … 8; a sky hidden by fog counts as 8.
using Oktas = Estimate;

// Our guess, no source: sunny 0–2 (best 1), broken 3–7 (5), overcast 7–8 (8). Observers call 5–7
// oktas broken; in a studio the word is said of any sky in which sun and cloud take turns.
Oktas oktasOf(Sky word);

// Throws InputError unless 0 ≤ low ≤ high ≤ 8 and best, where it is known, lies between.
void requireOktas(const Oktas& oktas);

// Of the light on a level plane under a cloudless sky, the share that comes through:
// 1 − 0.75·(N/8)^3.4, Kasten, Czeplak 1980 (Solar Energy 24:177), from ten years of hours in
// Hamburg; said not to depend on the sun's elevation. A mean over all kinds of cloud.
double kastenCzeplakFactor(double oktas);

// The same with what kinds of cloud differ by. The paper's overcast skies let through 0.61
// (cirrus) to 0.16 (nimbostratus) where 0.25 is the mean (from memory); what is taken away is
// scaled accordingly at every cover. Single hours lie farther off, and broken clouds beside the
// sun can add light: both even out over a day.
Estimate cloudFactor(const Oktas& oktas);

}  // namespace rackbook
