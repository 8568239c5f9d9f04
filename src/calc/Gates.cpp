#include "calc/Gates.h"

namespace rackbook {

namespace {

// Days are sums of minutes divided; a hair below the whole is the whole.
constexpr double hair_days = 1e-9;
// Looks are often dated to the day: one made on the last day counts.
constexpr double leeway_days = 1;

GateResult judgeLight(const GateFacts& facts) {
    if (facts.daysLow + hair_days >= facts.daysNeeded)
        return {GateState::passed, GateNeed::nothing};
    const bool possible = facts.daysHigh + hair_days >= facts.daysNeeded;
    return {possible ? GateState::open : GateState::failed, GateNeed::light};
}

GateResult judgeTouch(const GateFacts& facts) {
    if (!facts.hasTouch)
        return {GateState::open, GateNeed::look};
    if (facts.touch == Touch::dry)
        return {GateState::passed, GateNeed::nothing};
    return {GateState::failed, GateNeed::look};
}

GateResult judgeColour(const GateFacts& facts) {
    if (!facts.hasColour)
        return {GateState::open, GateNeed::look};
    if (facts.colour != LookColour::trueColour)
        return {GateState::failed, GateNeed::light};
    // Fresh ink looks true before it turns, so an early look proves nothing.
    if (facts.daysAtColourLook + leeway_days < facts.daysNeeded)
        return {GateState::open, GateNeed::look};
    return {GateState::passed, GateNeed::nothing};
}

}  // namespace

const std::array<Gate, gateCount>& gates() {
    static const std::array<Gate, gateCount> all = {{{GateKind::light, judgeLight},
                                                     {GateKind::touch, judgeTouch},
                                                     {GateKind::colour, judgeColour}}};
    return all;
}

GateResults judgeGates(const GateFacts& facts) {
    GateResults results;
    for (const Gate& gate : gates())
        results[static_cast<std::size_t>(gate.kind)] = gate.judge(facts);
    return results;
}

bool allPassed(const GateResults& results) {
    for (const GateResult& result : results)
        if (result.state != GateState::passed)
            return false;
    return true;
}

}  // namespace rackbook
