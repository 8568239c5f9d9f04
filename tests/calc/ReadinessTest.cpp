#include "ReadinessFixture.h"

namespace rackbook {
namespace {

TEST_F(ReadinessTest, WantsMoreLightBeforeTheDaysAreOver) {
    pulledAndHung();
    const ReadinessRow row = rowAsOf("2026-03-13T10:00");
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_DOUBLE_EQ(row.daysLow, 9);
    EXPECT_NEAR(row.daysHigh, 9 + 1.0 / 24, 1e-9);
    EXPECT_DOUBLE_EQ(row.daysNeeded, 21);
    EXPECT_EQ(row.lightNow, LightState::lit);
    EXPECT_EQ(reasonsAsOf("2026-03-13T10:00"),
              "Layer 1 (97 % extender as remembered, drier not known) was pulled on 2026-03-04; it "
              "has hung in light for 9 days of the 21 that the studio wants; no look since. "
              "21 days are wanted where the ink is not known to hold drier: common practice, no "
              "source. It is at rack, in light.");
}

TEST_F(ReadinessTest, IsNeverReadyWithoutALook) {
    pulledAndHung();
    EXPECT_EQ(verdictAsOf("2026-03-25T09:59"), Verdict::moreLight);
    EXPECT_EQ(verdictAsOf("2026-03-25T10:00"), Verdict::lookDue);
    EXPECT_EQ(verdictAsOf("2027-03-25"), Verdict::lookDue);
}

TEST_F(ReadinessTest, IsReadyOnceItHadItsDaysAndALookFoundItTrueAndDry) {
    pulledAndHung();
    lookAt("2026-03-26", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-26"), Verdict::ready);
    EXPECT_EQ(reasonsAsOf("2026-03-26T12:00"),
              "Layer 1 (97 % extender as remembered, drier not known) was pulled on 2026-03-04; it "
              "has hung in light for 22 days; the studio wants 21. 21 days are wanted where the "
              "ink is not known to hold drier: common practice, no source. The look on 2026-03-26 "
              "found it dry to the touch and the colour true. It is at rack, in light.");
}

TEST_F(ReadinessTest, ALookBeforeTheDaysAreOverIsTooEarlyToTell) {
    pulledAndHung();
    lookAt("2026-03-10", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-13"), Verdict::moreLight);
    EXPECT_EQ(verdictAsOf("2026-03-26"), Verdict::lookDue);
    EXPECT_NE(reasonsAsOf("2026-03-26")
                  .find("That was too early to tell: fresh ink looks true "
                        "before it turns. Look again after its days in "
                        "light."),
              std::string::npos);
    lookAt("2026-03-26", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-26"), Verdict::ready);
}

TEST_F(ReadinessTest, ADrawerIsDarkUnlessItSaysOtherwise) {
    book.place("chest", PlaceKind::room, LightKind::daylight);
    book.place("unlit-drawer", PlaceKind::drawer,
               [](Place& place) { place.within = Ref<Place>{"chest"}; });
    pulledAndHung();
    move("unlit-drawer", "2026-03-06T10:00");
    EXPECT_EQ(verdictAsOf("2026-04-30"), Verdict::bringOut);
}

TEST_F(ReadinessTest, ALaterLookThatFindsItTurnedOverridesAnEarlierOne) {
    pulledAndHung();
    lookAt("2026-03-26", Touch::dry, LookColour::trueColour);
    lookAt("2026-03-28", Touch::dry, LookColour::returning);
    EXPECT_EQ(verdictAsOf("2026-03-27"), Verdict::ready);
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::moreLight);
}

TEST_F(ReadinessTest, ALookOnTheDayOfThePullMayHaveBeenBeforeIt) {
    pulledAndHung();
    lookAt("2026-03-04", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(rowAsOf("2026-03-26").colourLook, -1);
    EXPECT_EQ(verdictAsOf("2026-03-26"), Verdict::lookDue);
}

TEST_F(ReadinessTest, ALookThatMayHaveBeenBeforeABadlyDatedPullDoesNotCount) {
    move("rack", "2026-02-01");
    pull(1, "2026-03");
    lookAt("2026-03-20", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(rowAsOf("2026-06-01").colourLook, -1);
    EXPECT_EQ(rowAsOf("2026-06-01").touchLook, -1);
    EXPECT_EQ(verdictAsOf("2026-06-01"), Verdict::lookDue);
}

TEST_F(ReadinessTest, ATackyPrintIsDueForAnotherLook) {
    pulledAndHung();
    lookAt("2026-03-26", Touch::tacky, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-26"), Verdict::lookDue);
    lookAt("2026-03-27", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-27"), Verdict::ready);
}

TEST_F(ReadinessTest, ALaterOpaqueLayerMustBeDryToo) {
    pulledAndHung();
    lookAt("2026-03-26", Touch::dry, LookColour::trueColour);
    pull(2, "2026-03-27T09:00");
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::lookDue);
    EXPECT_EQ(rowAsOf("2026-03-28").pull, 0);
    EXPECT_EQ(rowAsOf("2026-03-28").lastPull, 1);
    lookAt("2026-03-29", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-29"), Verdict::ready);
}

TEST_F(ReadinessTest, DaysCountFromTheLastExtenderRichLayer) {
    pulledAndHung();
    pull(1, "2026-03-10T10:00");
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-13T10:00").daysLow, 3);
    EXPECT_EQ(rowAsOf("2026-03-13T10:00").pull, 1);
}

TEST_F(ReadinessTest, BringsOutWhatWasPutAwayTooEarly) {
    pulledAndHung();
    move("drawer", "2026-03-13T10:00");
    const ReadinessRow row = rowAsOf("2026-06-01");
    EXPECT_EQ(row.verdict, Verdict::bringOut);
    EXPECT_TRUE(row.putAwayEarly);
    EXPECT_EQ(formatMinute(row.putAwayEarlyOn.earliest), "2026-03-13T10:00");
    EXPECT_EQ(formatMinute(row.darkSince.earliest), "2026-03-13T10:00");
    EXPECT_DOUBLE_EQ(row.daysLow, 9);
    EXPECT_EQ(reasonsAsOf("2026-06-01"),
              "Layer 1 (97 % extender as remembered, drier not known) was pulled on 2026-03-04; it "
              "has hung in light for 9 days of the 21 that the studio wants; no look since. "
              "21 days are wanted where the ink is not known to hold drier: common practice, no "
              "source. It was put away too early, on 2026-03-13 into drawer; bring it out into "
              "light. It is at drawer, in the dark since 2026-03-13.");
}

TEST_F(ReadinessTest, PuttingAwayWithoutALookIsTooEarly) {
    pulledAndHung();
    move("drawer", "2026-03-30");
    EXPECT_EQ(verdictAsOf("2026-04-01"), Verdict::bringOut);
    EXPECT_NE(
        reasonsAsOf("2026-04-01").find("into drawer; bring it out into light and look at it."),
        std::string::npos);
    lookAt("2026-04-02", Touch::dry, LookColour::trueColour);
    const ReadinessRow row = rowAsOf("2026-04-02");
    EXPECT_EQ(row.verdict, Verdict::ready);
    EXPECT_TRUE(row.putAwayEarly);
}

TEST_F(ReadinessTest, PuttingAwayOnTheDayOfTheLookIsNotTooEarly) {
    pulledAndHung();
    lookAt("2026-03-30", Touch::dry, LookColour::trueColour);
    move("drawer", "2026-03-30");
    const ReadinessRow row = rowAsOf("2026-04-01");
    EXPECT_EQ(row.verdict, Verdict::ready);
    EXPECT_FALSE(row.putAwayEarly);
    EXPECT_EQ(row.lightNow, LightState::dark);
}

TEST_F(ReadinessTest, WhatWasBroughtOutAgainWantsTheRestOfItsDays) {
    pulledAndHung();
    move("drawer", "2026-03-13T10:00");
    move("rack", "2026-04-01T10:00");
    const ReadinessRow row = rowAsOf("2026-04-05T10:00");
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_DOUBLE_EQ(row.daysLow, 13);
    EXPECT_TRUE(row.putAwayEarly);
}

TEST_F(ReadinessTest, WithoutPullsNothingIsKnown) {
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::unknown);
    EXPECT_EQ(reasonsAsOf("2026-03-28"), "No pull of it is recorded.");
}

TEST_F(ReadinessTest, WhatHappensLaterIsLeftOut) {
    pulledAndHung();
    lookAt("2026-04-10", Touch::dry, LookColour::trueColour);
    move("drawer", "2026-04-11");
    EXPECT_EQ(verdictAsOf("2026-04-01"), Verdict::lookDue);
    EXPECT_EQ(rowAsOf("2026-04-01").lightNow, LightState::lit);
}

TEST_F(ReadinessTest, LooksThatStandForItCount) {
    book.impressions("e", 2, 2, [](Impression& r) { r.fate = ImpressionFate::spoiled; });
    pulledAndHung();
    book.look("2026-03-26", {"e-2"}, Touch::dry, LookColour::trueColour,
              [](Look& r) { r.standsFor = {{"e-1"}}; });
    EXPECT_EQ(verdictAsOf("2026-03-26"), Verdict::ready);
}

TEST_F(ReadinessTest, SpoiledAndDestroyedImpressionsAreLeftOutAndCounted) {
    book.impressions("e", 2, 3, [](Impression& r) { r.fate = ImpressionFate::spoiled; });
    book.impressions("e", 4, 4, [](Impression& r) { r.fate = ImpressionFate::destroyed; });
    const Readiness readiness = readinessOf(historyOf(book.records), rules, 0);
    EXPECT_EQ(readiness.leftOut, 3U);
    EXPECT_EQ(readiness.rows.size(), 1U);
}

TEST(Verdicts, HaveWords) {
    EXPECT_STREQ(textOf(Verdict::lookDue), "lookDue");
    EXPECT_STREQ(verdictWords(Verdict::bringOut), "bring it out");
    EXPECT_EQ(enumNames<Verdict>().size(), 6U);
}

}  // namespace
}  // namespace rackbook
