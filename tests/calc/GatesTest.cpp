#include "calc/Gates.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

GateFacts goodFacts() {
    GateFacts facts;
    facts.daysLow = facts.daysHigh = facts.daysNeeded = 14;
    facts.hasTouch = facts.hasColour = true;
    facts.touch = Touch::dry;
    facts.colour = LookColour::trueColour;
    facts.daysAtColourLook = 14;
    return facts;
}

GateResult judge(GateKind kind, const GateFacts& facts) {
    return judgeGates(facts)[static_cast<std::size_t>(kind)];
}

TEST(Gates, AllPassWhereNothingIsMissing) {
    EXPECT_TRUE(allPassed(judgeGates(goodFacts())));
}

// Fresh ink looks true before it turns (common practice, no source).
TEST(Gates, ATrueColourSeenBeforeItsDaysInLightAsksForAnotherLook) {
    GateFacts facts = goodFacts();
    facts.daysAtColourLook = 12.9;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::open);
    EXPECT_EQ(judge(GateKind::colour, facts).need, GateNeed::look);
    facts.daysAtColourLook = 13;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::passed);
}

TEST(Gates, EachKindHasOneGate) {
    for (std::size_t i = 0; i < gateCount; ++i)
        EXPECT_EQ(static_cast<std::size_t>(gates()[i].kind), i);
}

TEST(Gates, LightIsJudgedOnTheLowBound) {
    GateFacts facts = goodFacts();
    facts.daysLow = 13.9;
    EXPECT_EQ(judge(GateKind::light, facts).state, GateState::open);
    EXPECT_EQ(judge(GateKind::light, facts).need, GateNeed::light);
    facts.daysHigh = 13.95;
    EXPECT_EQ(judge(GateKind::light, facts).state, GateState::failed);
    EXPECT_FALSE(allPassed(judgeGates(facts)));
}

TEST(Gates, ATouchThatIsNotDryWantsALook) {
    GateFacts facts = goodFacts();
    facts.touch = Touch::tacky;
    EXPECT_EQ(judge(GateKind::touch, facts).state, GateState::failed);
    EXPECT_EQ(judge(GateKind::touch, facts).need, GateNeed::look);
    facts.hasTouch = false;
    EXPECT_EQ(judge(GateKind::touch, facts).state, GateState::open);
}

TEST(Gates, AColourThatIsNotTrueWantsLight) {
    GateFacts facts = goodFacts();
    facts.colour = LookColour::returning;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::failed);
    EXPECT_EQ(judge(GateKind::colour, facts).need, GateNeed::light);
    facts.hasColour = false;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::open);
    EXPECT_EQ(judge(GateKind::colour, facts).need, GateNeed::look);
}

}  // namespace
}  // namespace rackbook
