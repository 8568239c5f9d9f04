#include "calc/Gates.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

// Without a model of the light; one look is asked for.
GateFacts goodFacts() {
    GateFacts facts;
    facts.daysLow = facts.daysHigh = facts.daysNeeded = 14;
    facts.hasTouch = true;
    facts.touch = Touch::dry;
    facts.colour.any = true;
    facts.colour.last = LookColour::trueColour;
    facts.colour.foundTrue = 1;
    return facts;
}

// With one: a look is worth making from a chance of 0.1 on, and 0.8 is enough.
GateFacts withChance(double chance) {
    GateFacts facts = goodFacts();
    facts.asksDose = true;
    facts.lookChance = 0.1;
    facts.enoughChance = 0.8;
    facts.returnedChance = chance;
    return facts;
}

GateResult judge(GateKind kind, const GateFacts& facts) {
    return judgeGates(facts)[static_cast<std::size_t>(kind)];
}

TEST(Gates, AllPassWhereNothingIsMissing) {
    EXPECT_TRUE(allPassed(judgeGates(goodFacts())));
}

// Fresh ink looks true before it turns (common practice, no source): what came too early to tell is
// not counted among the looks that found it true.
TEST(Gates, ATrueColourSeenBeforeItsDaysInLightAsksForAnotherLook) {
    GateFacts facts = goodFacts();
    facts.colour.foundTrue = 0;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::open);
    EXPECT_EQ(judge(GateKind::colour, facts).need, GateNeed::look);
    facts.colour.foundTrue = 1;
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
    facts.colour.last = LookColour::returning;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::failed);
    EXPECT_EQ(judge(GateKind::colour, facts).need, GateNeed::light);
    facts.colour = {};
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::open);
    EXPECT_EQ(judge(GateKind::colour, facts).need, GateNeed::look);
}

TEST(Gates, TheColourWantsAsManyLooksAsTheStudio) {
    GateFacts facts = goodFacts();
    facts.colour.wanted = 2;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::open);
    EXPECT_EQ(judge(GateKind::colour, facts).need, GateNeed::look);
    facts.colour.foundTrue = 2;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::passed);
}

// A reading that agrees with the record's colour takes the place of the second look, not of the
// first.
TEST(Gates, AReadingThatAgreesIsWorthTheLooksThatAreMissing) {
    GateFacts facts = goodFacts();
    facts.colour.wanted = 2;
    facts.colour.readingAgrees = true;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::passed);
    facts.colour.foundTrue = 0;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::open);
    facts.colour.foundTrue = 1;
    facts.colour.last = LookColour::returning;
    EXPECT_EQ(judge(GateKind::colour, facts).state, GateState::failed);
}

TEST(Gates, WithoutAModelTheDoseIsNotAskedFor) {
    EXPECT_EQ(judge(GateKind::dose, goodFacts()).state, GateState::passed);
}

TEST(Gates, ADoseThatIsEnoughPassesWithoutLooks) {
    GateFacts facts = withChance(0.8);
    facts.colour = {};
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::passed);
    EXPECT_FALSE(allPassed(judgeGates(facts)));
}

TEST(Gates, ADoseThatIsTooSmallForALookWantsLight) {
    const GateFacts facts = withChance(0.099);
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::failed);
    EXPECT_EQ(judge(GateKind::dose, facts).need, GateNeed::light);
}

// Who sees the colour turn and then true has seen it return, whatever the estimate says.
TEST(Gates, LooksThatSawItTurnAndReturnGoBeforeTheDose) {
    GateFacts facts = withChance(0.001);
    facts.colour.sawTurned = true;
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::passed);
    facts.colour.wanted = 2;
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::failed);
}

TEST(Gates, LooksSettleAChanceInBetween) {
    GateFacts facts = withChance(0.1);
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::passed);
    facts.colour.wanted = 2;
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::open);
    EXPECT_EQ(judge(GateKind::dose, facts).need, GateNeed::look);
    facts.colour = {};
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::open);
}

// Of a dose without a best value there is no chance: only looks can tell.
TEST(Gates, AChanceThatIsNotKnownIsOpenUntilLooksSettleIt) {
    GateFacts facts = withChance(notKnown);
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::passed);
    facts.colour = {};
    EXPECT_EQ(judge(GateKind::dose, facts).state, GateState::open);
    EXPECT_EQ(judge(GateKind::dose, facts).need, GateNeed::look);
}

}  // namespace
}  // namespace rackbook
