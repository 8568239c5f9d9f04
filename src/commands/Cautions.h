// Hazard words of the verbs that go with ink, driers and solvents.
#pragma once

#include "base/Translated.h"

namespace rackbook {

// Self-heating of oily rags: common practice, no source; rules differ from place to place.
constexpr const char* inkCaution = toTranslate(
    "caution",
    "Driers and solvents: keep them off the skin and work with fresh air. Rags with oil, ink or "
    "drier on them can heat up and catch fire by themselves within hours: put them in a lidded "
    "metal bin, in water, or flat to dry, as local rules say. The safety data sheet of each "
    "product and the rules where you work come before anything said here.");

}  // namespace rackbook
