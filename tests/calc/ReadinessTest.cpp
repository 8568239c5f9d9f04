#include "calc/Readiness.h"

#include <gtest/gtest.h>

#include "calc/HistoryOf.h"
#include "support/Build.h"

namespace rackbook {
namespace {

using build::Book;

// An impression e-1 of one layer, remembered as 97 % extender, pulled at nine on 4 March and hung
// in daylight an hour later. The studio wants 21 days where drier is not known.
class ReadinessTest : public testing::Test {
protected:
    ReadinessTest() {
        book.place("rack", PlaceKind::rack, LightKind::daylight);
        book.place("drawer", PlaceKind::drawer, LightKind::dark);
        book.place("lamp wall", PlaceKind::wall, LightKind::artificial);
        book.place("corridor", PlaceKind::wall);
        book.place("gallery", PlaceKind::gallery);
        book.edition("e").layer("e", 1, [](Layer& r) { r.extenderShare = 0.97; });
        book.layer("e", 2, [](Layer& r) { r.extenderShare = 0.2; });
        book.layer("e", 3);
        book.impressions("e", 1, 1);
    }

    void pull(int layer, const std::string& at) {
        book.pull("e-layer" + std::to_string(layer), at, {"e-1"});
    }
    void move(const std::string& place, const std::string& at) { book.move(place, at, {"e-1"}); }
    void lookAt(const std::string& at, Touch touch, LookColour colour) {
        book.look(at, {"e-1"}, touch, colour);
    }
    void pulledAndHung() {
        pull(1, "2026-03-04T09:00");
        move("rack", "2026-03-04T10:00");
    }

    ReadinessRow rowAsOf(const std::string& asOf) {
        history = historyOf(book.records);
        const Readiness readiness = readinessOf(history, rules, build::on(asOf).latest());
        EXPECT_EQ(readiness.rows.size(), 1U);
        return readiness.rows.at(0);
    }
    Verdict verdictAsOf(const std::string& asOf) { return rowAsOf(asOf).verdict; }
    std::string reasonsAsOf(const std::string& asOf) {
        const ReadinessRow row = rowAsOf(asOf);
        std::string all;
        for (const std::string& sentence : reasonsFor(row, history, rules))
            all += (all.empty() ? "" : " ") + sentence;
        return all;
    }

    Book book;
    HouseRules rules;
    History history;
};

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
              "found the colour true. The look on 2026-03-26 found it dry to the touch. It is at "
              "rack, in light.");
}

TEST_F(ReadinessTest, ALookBeforeTheDaysAreOverCountsAsALook) {
    pulledAndHung();
    lookAt("2026-03-10", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-13"), Verdict::moreLight);
    EXPECT_EQ(verdictAsOf("2026-03-26"), Verdict::ready);
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

TEST_F(ReadinessTest, ArtificialLightCountsAsDark) {
    pull(1, "2026-03-04T09:00");
    move("lamp wall", "2026-03-04T10:00");
    const ReadinessRow row = rowAsOf("2026-05-01");
    EXPECT_DOUBLE_EQ(row.daysHigh, 1.0 / 24);
    EXPECT_TRUE(row.artificialLight);
    EXPECT_EQ(row.verdict, Verdict::bringOut);
    EXPECT_NE(reasonsAsOf("2026-05-01").find("Time in artificial light counts as dark."),
              std::string::npos);
    EXPECT_NE(reasonsAsOf("2026-05-01").find("It is at lamp wall, in artificial light since "),
              std::string::npos);
}

TEST_F(ReadinessTest, InterleavedSheetsSeeNoLight) {
    pull(1, "2026-03-04T09:00");
    book.move("rack", "2026-03-04T09:00", {"e-1"}, [](Move& r) { r.interleaved = true; });
    const ReadinessRow row = rowAsOf("2026-05-01");
    EXPECT_DOUBLE_EQ(row.daysHigh, 0);
    EXPECT_EQ(row.lightNow, LightState::dark);
    EXPECT_EQ(row.verdict, Verdict::bringOut);
    EXPECT_NE(reasonsAsOf("2026-05-01")
                  .find("it has not hung in light since, and the studio wants 21 days"),
              std::string::npos);
}

TEST_F(ReadinessTest, LightThatIsNotKnownCountsToTheHighBoundOnly) {
    pull(1, "2026-03-04T10:00");
    move("corridor", "2026-03-04T10:00");
    EXPECT_EQ(verdictAsOf("2026-03-10T10:00"), Verdict::moreLight);
    const ReadinessRow row = rowAsOf("2026-05-01T10:00");
    EXPECT_DOUBLE_EQ(row.daysLow, 0);
    EXPECT_DOUBLE_EQ(row.daysHigh, 58);
    EXPECT_EQ(row.verdict, Verdict::unknown);
    EXPECT_TRUE(row.gaps.lightAtPlace);
    EXPECT_FALSE(row.gaps.whereabouts);
    EXPECT_NE(reasonsAsOf("2026-05-01T10:00").find("The light at corridor is not known."),
              std::string::npos);
    EXPECT_NE(reasonsAsOf("2026-05-01T10:00").find("hung in light for 0 to 58 days of the 21"),
              std::string::npos);
}

TEST_F(ReadinessTest, APlaceHasTheLightOfThePlaceAroundIt) {
    book.place("hook", PlaceKind::other, [](Place& r) { r.within = Ref<Place>{"rack"}; });
    pull(1, "2026-03-04T10:00");
    move("hook", "2026-03-04T10:00");
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-10T10:00").daysLow, 6);
}

TEST_F(ReadinessTest, LightOfAPlaceChangesOverTime) {
    book.place("wall", PlaceKind::wall, [](Place& r) {
        r.light.resize(2);
        r.light[0].lightKind = LightKind::dark;
        r.light[1].lightKind = LightKind::daylight;
        r.light[1].from = build::on("2026-03-10T00:00");
    });
    pull(1, "2026-03-04T10:00");
    move("wall", "2026-03-04T10:00");
    const ReadinessRow row = rowAsOf("2026-03-15T00:00");
    EXPECT_DOUBLE_EQ(row.daysLow, 5);
    EXPECT_DOUBLE_EQ(row.daysHigh, 5);
}

TEST_F(ReadinessTest, WhereItWasBeforeTheFirstMoveIsNotKnown) {
    pull(1, "2026-03-04T10:00");
    move("rack", "2026-03-20T10:00");
    const ReadinessRow row = rowAsOf("2026-03-30T10:00");
    EXPECT_DOUBLE_EQ(row.daysLow, 10);
    EXPECT_DOUBLE_EQ(row.daysHigh, 26);
    EXPECT_EQ(row.verdict, Verdict::unknown);
    EXPECT_TRUE(row.gaps.whereabouts);
    EXPECT_NE(reasonsAsOf("2026-03-30T10:00")
                  .find("For some of the time since, nothing says where it was."),
              std::string::npos);
}

TEST_F(ReadinessTest, AnEarlierStayGoesOnPastThePull) {
    move("rack", "2026-03-01");
    pull(1, "2026-03-04T10:00");
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-10T10:00").daysLow, 6);
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-10T10:00").daysHigh, 6);
}

TEST_F(ReadinessTest, UntilEndsAStay) {
    pull(1, "2026-03-04T10:00");
    book.move("rack", "2026-03-04T10:00", {"e-1"},
              [](Move& r) { r.until = build::on("2026-03-10T10:00"); });
    const ReadinessRow row = rowAsOf("2026-03-30T10:00");
    EXPECT_DOUBLE_EQ(row.daysLow, 6);
    EXPECT_DOUBLE_EQ(row.daysHigh, 26);
    EXPECT_EQ(row.place, -1);
    EXPECT_EQ(row.verdict, Verdict::unknown);
}

TEST_F(ReadinessTest, BadlyKnownDatesGiveLowAndHighDays) {
    pull(1, "2026-03");
    move("rack", "2026-04-01T00:00");
    const ReadinessRow row = rowAsOf("2026-04-11T00:00");
    EXPECT_DOUBLE_EQ(row.daysLow, 10);
    EXPECT_DOUBLE_EQ(row.daysHigh, 41);
    EXPECT_EQ(row.verdict, Verdict::unknown);
    EXPECT_TRUE(row.gaps.dates);
    EXPECT_NE(reasonsAsOf("2026-04-11T00:00")
                  .find("was pulled between 2026-03-01 and 2026-03-31; it has hung in light for 10 "
                        "to 41 days of the 21"),
              std::string::npos);
    EXPECT_NE(
        reasonsAsOf("2026-04-11T00:00").find("The dates are known too badly to count its days."),
        std::string::npos);
}

TEST_F(ReadinessTest, DatesKnownToTheDayAreJudgedOnTheLowBound) {
    pull(1, "2026-03-04");
    move("rack", "2026-03-04");
    lookAt("2026-03-20", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-25T23:58"), Verdict::moreLight);
    EXPECT_EQ(verdictAsOf("2026-03-25T23:59"), Verdict::ready);
}

TEST_F(ReadinessTest, ABadlyDatedMoveFromLightToLightLosesNoTime) {
    book.place("window", PlaceKind::wall, LightKind::daylight);
    pull(1, "2026-03-04T10:00");
    move("rack", "2026-03-04T10:00");
    move("window", "2026-03-10");
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-14T10:00").daysLow, 10);
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-14T10:00").daysHigh, 10);
}

TEST_F(ReadinessTest, OutOfTheStudiosHandsItsLightIsNotKnown) {
    pulledAndHung();
    move("gallery", "2026-03-10T10:00");
    const ReadinessRow row = rowAsOf("2026-03-12T10:00");
    EXPECT_EQ(row.verdict, Verdict::unknown);
    EXPECT_TRUE(row.outOfHands);
    EXPECT_TRUE(row.putAwayEarly);
    EXPECT_TRUE(row.gaps.lightAtHolder);
    const std::string reasons = reasonsAsOf("2026-03-12T10:00");
    EXPECT_NE(reasons.find("It is out of the studio's hands, and its light there is not known."),
              std::string::npos);
    EXPECT_NE(reasons.find("It was put away on 2026-03-10 (gallery) before all that the studio "
                           "wants was recorded."),
              std::string::npos);
}

TEST_F(ReadinessTest, AGalleryThatStatesItsLightCounts) {
    book.place("bright gallery", PlaceKind::gallery, LightKind::daylight);
    pulledAndHung();
    move("bright gallery", "2026-03-10T10:00");
    EXPECT_EQ(verdictAsOf("2026-03-12T10:00"), Verdict::moreLight);
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-12T10:00").daysLow, 8);
}

TEST_F(ReadinessTest, LayersWithLittleExtenderAreNotAffected) {
    pull(2, "2026-03-04T09:00");
    EXPECT_EQ(verdictAsOf("2026-03-05"), Verdict::notAffected);
    EXPECT_FALSE(rowAsOf("2026-03-05").touchDry);
    EXPECT_EQ(reasonsAsOf("2026-03-05"),
              "No layer of it is extender-rich. No look since the last pull says how it feels.");
    lookAt("2026-03-09", Touch::dry, LookColour::trueColour);
    EXPECT_TRUE(rowAsOf("2026-03-09").touchDry);
    EXPECT_EQ(reasonsAsOf("2026-03-09"),
              "No layer of it is extender-rich. The look on 2026-03-09 found it dry to the touch.");
}

TEST_F(ReadinessTest, AShareThatIsNotKnownLeavesItOpen) {
    pull(3, "2026-03-04T09:00");
    move("rack", "2026-03-04T10:00");
    const ReadinessRow row = rowAsOf("2026-04-30");
    EXPECT_EQ(row.verdict, Verdict::unknown);
    EXPECT_TRUE(row.gaps.extenderShare);
    EXPECT_EQ(row.doubtfulPull, 0);
    EXPECT_NE(reasonsAsOf("2026-04-30")
                  .find("Layer 3 may be extender-rich: nothing recorded says whether its ink held "
                        "80 % extender or more."),
              std::string::npos);
}

TEST_F(ReadinessTest, WhatIsReadyEvenIfItWereExtenderRichIsReady) {
    pull(3, "2026-03-04T09:00");
    move("rack", "2026-03-04T10:00");
    lookAt("2026-04-30", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-04-30"), Verdict::ready);
}

TEST_F(ReadinessTest, WhatFallsShortEitherWayIsSaidToFallShort) {
    pulledAndHung();
    pull(3, "2026-03-10T10:00");
    const ReadinessRow row = rowAsOf("2026-03-12T10:00");
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_EQ(row.pull, 0);
    EXPECT_EQ(row.doubtfulPull, 1);
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::unknown);
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

// The ink of a portion: 97 g of base, 3 g of ink, drier as given.
void fillPortion(Book& book, double drier_g) {
    book.lot("base", LotKind::base).lot("blue", LotKind::ink).lot("cobalt", LotKind::drier);
    book.mix("portion", MixPurpose::portion);
    book.addLot("portion", "base", 97, "2026-03-03").addLot("portion", "blue", 3, "2026-03-03");
    if (drier_g > 0)
        book.addLot("portion", "cobalt", drier_g, "2026-03-03");
    book.pull("e-layer2", "2026-03-04T10:00", {"e-1"},
              [](Pull& r) { r.portion = Ref<Mix>{"portion"}; });
    book.move("rack", "2026-03-04T10:00", {"e-1"});
}

TEST_F(ReadinessTest, TheWeighedInkOutranksWhatTheLayerRemembers) {
    fillPortion(book, 0);
    const ReadinessRow row = rowAsOf("2026-03-13T10:00");
    EXPECT_EQ(row.lightRule, LightRule::withoutDrier);
    EXPECT_DOUBLE_EQ(row.daysNeeded, 21);
    EXPECT_NEAR(row.extenderShare.best, 0.97, 1e-12);
    EXPECT_EQ(
        reasonsAsOf("2026-03-13T10:00"),
        "Layer 2 (97 % extender, no drier) was pulled on 2026-03-04; it has hung in light for "
        "9 days of the 21 that the studio wants; no look since. 21 days are wanted without "
        "drier in the ink: common practice, no source. It is at rack, in light.");
}

TEST_F(ReadinessTest, InkWithDrierWantsFewerDays) {
    fillPortion(book, 2);
    const ReadinessRow row = rowAsOf("2026-03-13T10:00");
    EXPECT_EQ(row.lightRule, LightRule::withDrier);
    EXPECT_DOUBLE_EQ(row.daysNeeded, 14);
    EXPECT_EQ(reasonsAsOf("2026-03-13T10:00"),
              "Layer 2 (95.1 % extender, 2 % drier) was pulled on 2026-03-04; it has hung in light "
              "for 9 days of the 14 that the studio wants; no look since. 14 days are wanted with "
              "drier in the ink: common practice, no source. It is at rack, in light.");
}

TEST_F(ReadinessTest, NextToNoDrierCountsAsNone) {
    fillPortion(book, 0.2);
    EXPECT_EQ(rowAsOf("2026-03-13T10:00").lightRule, LightRule::withoutDrier);
    EXPECT_NE(reasonsAsOf("2026-03-13T10:00")
                  .find("(96.8 % extender, 0.2 % drier, which counts as none)"),
              std::string::npos);
}

TEST_F(ReadinessTest, TheStudiosOwnRuleIsNamedAsIts) {
    pulledAndHung();
    HouseRule own;
    own.rule = "lightDaysCareful";
    own.value = 30;
    rules = HouseRules({own});
    EXPECT_NE(reasonsAsOf("2026-03-13T10:00")
                  .find("of the 30 that the studio wants; no look since. 30 days are wanted where "
                        "the ink is not known to hold drier: studio rule."),
              std::string::npos);
}

TEST_F(ReadinessTest, AnOldEditionWithNothingButYearsIsNotCalledEarly) {
    pull(1, "1998");
    move("drawer", "1999~");
    const ReadinessRow row = rowAsOf("2026-03-13");
    EXPECT_EQ(row.verdict, Verdict::unknown);
}

TEST(Verdicts, HaveWords) {
    EXPECT_STREQ(textOf(Verdict::lookDue), "lookDue");
    EXPECT_STREQ(verdictWords(Verdict::bringOut), "bring it out");
    EXPECT_EQ(enumNames<Verdict>().size(), 6U);
}

}  // namespace
}  // namespace rackbook
