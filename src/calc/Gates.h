// What an impression must pass before it may be put away. Each gate is a function of its own; a
// new one is a function and a row in gates().
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "calc/Estimate.h"
#include "records/Look.h"

namespace rackbook {

enum class GateKind : std::uint8_t { light, touch, colour };
constexpr std::size_t gateCount = 3;

// open: what was recorded does not decide it.
enum class GateState : std::uint8_t { passed, open, failed };

// What is called for where a gate is not passed.
enum class GateNeed : std::uint8_t { nothing, look, light };

struct GateResult {
    GateState state = GateState::open;
    GateNeed need = GateNeed::nothing;
};

// The state of an impression at one moment, as far as the gates ask for it.
struct GateFacts {
    double daysLow = 0;   // days in light since the last extender-rich pull
    double daysHigh = 0;  // ≥ daysLow
    double daysNeeded = 0;
    bool hasTouch = false;  // a look since the last pull of all says how it feels
    Touch touch = Touch::wet;
    bool hasColour = false;  // a look since the last extender-rich pull says how it looks
    LookColour colour = LookColour::turned;
    double daysAtColourLook = 0;  // days in light when that look was made, high bound
};

struct Gate {
    GateKind kind;
    GateResult (*judge)(const GateFacts& facts);
};

const std::array<Gate, gateCount>& gates();

using GateResults = std::array<GateResult, gateCount>;  // by GateKind

GateResults judgeGates(const GateFacts& facts);
bool allPassed(const GateResults& results);

}  // namespace rackbook
