#include "ReadinessFixture.h"

namespace rackbook {
namespace {

using ReadinessLight = ReadinessTest;

TEST_F(ReadinessLight, ArtificialLightCountsAsDark) {
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

TEST_F(ReadinessLight, InterleavedSheetsSeeNoLight) {
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

TEST_F(ReadinessLight, LightThatIsNotKnownCountsToTheHighBoundOnly) {
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

TEST_F(ReadinessLight, APlaceHasTheLightOfThePlaceAroundIt) {
    book.place("hook", PlaceKind::other, [](Place& r) { r.within = Ref<Place>{"rack"}; });
    pull(1, "2026-03-04T10:00");
    move("hook", "2026-03-04T10:00");
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-10T10:00").daysLow, 6);
}

TEST_F(ReadinessLight, LightOfAPlaceChangesOverTime) {
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

TEST_F(ReadinessLight, WhereItWasBeforeTheFirstMoveIsNotKnown) {
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

TEST_F(ReadinessLight, AnEarlierStayGoesOnPastThePull) {
    move("rack", "2026-03-01");
    pull(1, "2026-03-04T10:00");
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-10T10:00").daysLow, 6);
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-10T10:00").daysHigh, 6);
}

TEST_F(ReadinessLight, UntilEndsAStay) {
    pull(1, "2026-03-04T10:00");
    book.move("rack", "2026-03-04T10:00", {"e-1"},
              [](Move& r) { r.until = build::on("2026-03-10T10:00"); });
    const ReadinessRow row = rowAsOf("2026-03-30T10:00");
    EXPECT_DOUBLE_EQ(row.daysLow, 6);
    EXPECT_DOUBLE_EQ(row.daysHigh, 26);
    EXPECT_EQ(row.place, -1);
    EXPECT_EQ(row.verdict, Verdict::unknown);
}

TEST_F(ReadinessLight, BadlyKnownDatesGiveLowAndHighDays) {
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

TEST_F(ReadinessLight, DatesKnownToTheDayAreJudgedOnTheLowBound) {
    pull(1, "2026-03-04");
    move("rack", "2026-03-04");
    lookAt("2026-03-25", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-03-25T23:58"), Verdict::moreLight);
    EXPECT_EQ(verdictAsOf("2026-03-25T23:59"), Verdict::ready);
}

TEST_F(ReadinessLight, ABadlyDatedMoveFromLightToLightLosesNoTime) {
    book.place("window", PlaceKind::wall, LightKind::daylight);
    pull(1, "2026-03-04T10:00");
    move("rack", "2026-03-04T10:00");
    move("window", "2026-03-10");
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-14T10:00").daysLow, 10);
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-14T10:00").daysHigh, 10);
}

TEST_F(ReadinessLight, OnADayOfTwoMovesBetweenLightsOnlyWhatIsCertainCounts) {
    book.place("window", PlaceKind::wall, LightKind::daylight);
    move("drawer", "2026-03-01");
    pull(1, "2026-03-04T10:00");
    move("rack", "2026-03-10");
    move("window", "2026-03-10");
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-12T23:59").daysLow, 2);
    EXPECT_NEAR(rowAsOf("2026-03-12T23:59").daysHigh, 3, 0.001);
}

TEST_F(ReadinessLight, NothingIsBroughtOutOfAGallery) {
    book.place("gallery store", PlaceKind::gallery, LightKind::dark);
    pulledAndHung();
    move("gallery store", "2026-03-10T10:00");
    const ReadinessRow row = rowAsOf("2026-05-12T10:00");
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_TRUE(row.putAwayEarly);
}

TEST_F(ReadinessLight, OutOfTheStudiosHandsItsLightIsNotKnown) {
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
    EXPECT_NE(reasons.find("It left the studio on 2026-03-10 (gallery) before all that the studio "
                           "wants was recorded."),
              std::string::npos);
}

TEST_F(ReadinessLight, AGalleryThatStatesItsLightCounts) {
    book.place("bright gallery", PlaceKind::gallery, LightKind::daylight);
    pulledAndHung();
    move("bright gallery", "2026-03-10T10:00");
    EXPECT_EQ(verdictAsOf("2026-03-12T10:00"), Verdict::moreLight);
    EXPECT_DOUBLE_EQ(rowAsOf("2026-03-12T10:00").daysLow, 8);
}

TEST_F(ReadinessLight, AnOldEditionWithNothingButYearsIsNotCalledEarly) {
    pull(1, "1998");
    move("drawer", "1999~");
    const ReadinessRow row = rowAsOf("2026-03-13");
    EXPECT_EQ(row.verdict, Verdict::unknown);
}

TEST_F(ReadinessLight, MovesOfOneBadlyKnownTimeLeaveItsWhereaboutsOpen) {
    pull(1, "2026-03-04T10:00");
    move("rack", "2026-03-10/2026-03-20");
    move("drawer", "2026-03-15T10:00");
    const ReadinessRow row = rowAsOf("2026-04-30T10:00");
    EXPECT_EQ(row.verdict, Verdict::unknown);
    EXPECT_DOUBLE_EQ(row.daysLow, 0);
    EXPECT_DOUBLE_EQ(row.daysHigh, 57);
    EXPECT_FALSE(row.putAwayEarly);
    EXPECT_TRUE(row.gaps.dates);
}

}  // namespace
}  // namespace rackbook
