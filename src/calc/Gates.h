// What an impression must pass before it may be put away. Each gate is a function of its own; a
// new one is a function and a row in gates().
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>

#include "calc/Estimate.h"
#include "records/Look.h"

namespace rackbook {

// light: days in light, counted. dose: the light itself, estimated.
enum class GateKind : std::uint8_t { light, dose, touch, colour };
constexpr std::size_t gateCount = 4;

// open: what was recorded does not decide it.
enum class GateState : std::uint8_t { passed, open, failed };

// What is called for where a gate is not passed.
enum class GateNeed : std::uint8_t { nothing, look, light };

struct GateResult {
    GateState state = GateState::open;
    GateNeed need = GateNeed::nothing;
};

// What the looks since the last extender-rich pull say of the colour.
struct ColourLooks {
    bool any = false;
    LookColour last = LookColour::turned;
    // Found true one after the other, far enough apart, when that could be told: after the days in
    // light, or after the colour had been seen to turn.
    int foundTrue = 0;
    int wanted = 1;              // of them
    bool sawTurned = false;      // it had turned before it was found true
    bool readingAgrees = false;  // the last look came with a reading that is the record's colour
};

// From which chance on a look is worth making: by the rule, or, where the last look did not find it
// true, when it is likelier than not that another one will (our reading, no source).
inline double lookChanceFor(const ColourLooks& looks, double byRule) {
    const bool wasNotTrue = looks.any && looks.last != LookColour::trueColour;
    return wasNotTrue ? std::max(byRule, 0.5) : byRule;
}

// The state of an impression at one moment, as far as the gates ask for it.
struct GateFacts {
    double daysLow = 0;   // days in light since the last extender-rich pull
    double daysHigh = 0;  // ≥ daysLow
    double daysNeeded = 0;
    bool asksDose = false;             // there is an estimate of doses at all
    double returnedChance = notKnown;  // that the colour has returned, by the dose
    double lookChance = 0;             // as lookChanceFor gives it
    double enoughChance = 0;           // from which chance on the dose counts as enough
    // That came to it since it was last found not true, where it was found true since: at most.
    double lightSinceTurned_sunnyDays = std::numeric_limits<double>::infinity();
    bool hasTouch = false;  // a look since the last pull of all says how it feels
    Touch touch = Touch::wet;
    ColourLooks colour;
};

struct Gate {
    GateKind kind;
    GateResult (*judge)(const GateFacts& facts);
};

// Less light than this is next to none, in which no colour comes back.
constexpr double nextToNoLight_sunnyDays = 0.001;

const std::array<Gate, gateCount>& gates();

using GateResults = std::array<GateResult, gateCount>;  // by GateKind

GateResults judgeGates(const GateFacts& facts);
bool allPassed(const GateResults& results);

}  // namespace rackbook
