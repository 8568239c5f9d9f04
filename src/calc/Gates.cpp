#include "calc/Gates.h"

namespace rackbook {

namespace {

// Days are sums of minutes divided; a hair below the whole is the whole.
constexpr double hair_days = 1e-9;

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

bool looksSettle(const ColourLooks& looks) {
    if (!looks.any || looks.last != LookColour::trueColour)
        return false;
    return looks.foundTrue >= looks.wanted || (looks.foundTrue > 0 && looks.readingAgrees);
}

GateResult judgeColour(const GateFacts& facts) {
    if (!facts.colour.any)
        return {GateState::open, GateNeed::look};
    if (facts.colour.last != LookColour::trueColour) {
        const bool mayBeBack = facts.asksDose && facts.returnedChance >= facts.lookChance &&
                               facts.daysLow + hair_days >= facts.daysNeeded;
        return {GateState::failed, mayBeBack ? GateNeed::look : GateNeed::light};
    }
    if (looksSettle(facts.colour))
        return {GateState::passed, GateNeed::nothing};
    return {GateState::open, GateNeed::look};
}

// The estimate says when looks are worth making; what they find goes before it, but for two things
// that are not believed where next to no light had come: a colour that was never seen to turn,
// which may turn yet, and one that came back in the dark.
GateResult judgeDose(const GateFacts& facts) {
    if (!facts.asksDose || facts.returnedChance >= facts.enoughChance)
        return {GateState::passed, GateNeed::nothing};
    const bool settled = looksSettle(facts.colour);
    const bool surelyTooLittle = facts.returnedChance < facts.lookChance;
    const bool cameBack =
        facts.colour.sawTurned && facts.lightSinceTurned_sunnyDays >= nextToNoLight_sunnyDays;
    if (settled && (!surelyTooLittle || cameBack))
        return {GateState::passed, GateNeed::nothing};
    if (surelyTooLittle)
        return {GateState::failed, GateNeed::light};
    return {GateState::open, GateNeed::look};
}

}  // namespace

const std::array<Gate, gateCount>& gates() {
    static const std::array<Gate, gateCount> all = {{{GateKind::light, judgeLight},
                                                     {GateKind::dose, judgeDose},
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
