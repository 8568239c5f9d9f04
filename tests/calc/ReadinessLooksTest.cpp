// A studio that wants two looks, three days apart or more; no light is estimated. The days in light
// are over on 25 March at ten.
#include "ReadinessFixture.h"

namespace rackbook {
namespace {

class ReadinessLooks : public ReadinessTest {
protected:
    ReadinessLooks() { rules = HouseRules(); }

    void foundTrue(const std::string& at) { lookAt(at, Touch::dry, LookColour::trueColour); }
    void foundTurned(const std::string& at) { lookAt(at, Touch::dry, LookColour::returning); }
};

TEST_F(ReadinessLooks, TwoThatFindItTrueMakeItReady) {
    pulledAndHung();
    foundTrue("2026-03-26");
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::lookDue);
    foundTrue("2026-03-29");
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::lookDue);
    const ReadinessRow row = rowAsOf("2026-03-29");
    EXPECT_EQ(row.verdict, Verdict::ready);
    EXPECT_EQ(row.looks.foundTrue, 2);
    EXPECT_EQ(row.looks.wanted, 2);
}

TEST_F(ReadinessLooks, OneTooSoonAfterTheOtherDoesNotCount) {
    pulledAndHung();
    foundTrue("2026-03-26");
    foundTrue("2026-03-28");
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::lookDue);
    EXPECT_EQ(rowAsOf("2026-03-28").looks.foundTrue, 1);
    // Three days after the first.
    foundTrue("2026-03-29");
    EXPECT_EQ(verdictAsOf("2026-03-29"), Verdict::ready);
}

TEST_F(ReadinessLooks, OneBeforeTheDaysAreOverDoesNotCount) {
    pulledAndHung();
    foundTrue("2026-03-23");
    foundTrue("2026-03-26");
    EXPECT_EQ(rowAsOf("2026-03-26").looks.foundTrue, 1);
    EXPECT_EQ(verdictAsOf("2026-03-26"), Verdict::lookDue);
}

// Looks are often dated to the day: one made on the last day counts.
TEST_F(ReadinessLooks, OneOnTheLastDayCounts) {
    pulledAndHung();
    foundTrue("2026-03-24");
    foundTrue("2026-03-27");
    EXPECT_EQ(verdictAsOf("2026-03-27"), Verdict::ready);
}

TEST_F(ReadinessLooks, OneThatFindsItTurnedBeginsThemAnew) {
    pulledAndHung();
    foundTrue("2026-03-26");
    foundTurned("2026-03-30");
    EXPECT_EQ(verdictAsOf("2026-03-30"), Verdict::moreLight);
    foundTrue("2026-04-02");
    EXPECT_EQ(verdictAsOf("2026-04-02"), Verdict::lookDue);
    foundTrue("2026-04-05");
    EXPECT_EQ(verdictAsOf("2026-04-05"), Verdict::ready);
}

// Whoever saw it turn knows that it is not fresh ink that looks true. Its days are wanted all the
// same.
TEST_F(ReadinessLooks, AfterItWasSeenToTurnLooksCountAtOnce) {
    pulledAndHung();
    foundTurned("2026-03-06");
    foundTrue("2026-03-09");
    foundTrue("2026-03-12");
    const ReadinessRow row = rowAsOf("2026-03-12");
    EXPECT_EQ(row.looks.foundTrue, 2);
    EXPECT_TRUE(row.looks.sawTurned);
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_EQ(verdictAsOf("2026-03-25T10:00"), Verdict::ready);
}

// What turned in the dark had not finished, and has its days in light to go through anew.
TEST_F(ReadinessLooks, TurnedAgainInTheDarkItsDaysBeginAnew) {
    pulledAndHung();
    foundTrue("2026-03-26");
    foundTrue("2026-03-29");
    move("drawer", "2026-03-30T10:00");
    EXPECT_EQ(verdictAsOf("2026-03-31"), Verdict::ready);
    lookAt("2026-04-20T10:00", Touch::dry, LookColour::turned);
    EXPECT_EQ(verdictAsOf("2026-04-20T12:00"), Verdict::bringOut);
    move("rack", "2026-04-20T12:00");
    foundTrue("2026-04-22");
    foundTrue("2026-04-25");
    const ReadinessRow row = rowAsOf("2026-04-25T12:00");
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_NEAR(row.daysLow, 5, 1e-9);
    EXPECT_NEAR(row.daysInAllLow, 26 + 5, 1e-9);
    EXPECT_NE(
        reasonsAsOf("2026-04-25T12:00")
            .find("They are counted from the look on 2026-04-20, which found the colour turned "
                  "after time in the dark; in all it had 31 days."),
        std::string::npos);
    EXPECT_EQ(verdictAsOf("2026-05-11T12:00"), Verdict::ready);
}

// Brown that is seen while it hangs is what such ink does, and begins nothing anew.
TEST_F(ReadinessLooks, TurnedInTheLightItsDaysGoOn) {
    pulledAndHung();
    move("drawer", "2026-03-08T10:00");
    move("rack", "2026-03-08T18:00");
    lookAt("2026-03-09", Touch::dry, LookColour::turned);
    EXPECT_EQ(rowAsOf("2026-03-12").turnedAgain, -1);
}

TEST_F(ReadinessLooks, OneAtOthersIsSaidToBe) {
    pulledAndHung();
    book.impressions("e", 2, 2);
    book.pull("e-layer1", "2026-03-04T09:00", {"e-2"});
    book.move("rack", "2026-03-04T10:00", {"e-2"});
    book.look("2026-03-26", {"e-1"}, Touch::dry, LookColour::trueColour, [](Look& r) {
        r.standsFor = {{"e-1"}, {"e-2"}};
    });
    history = historyOf(book.records);
    const Readiness readiness = readinessOf(history, rules, build::on("2026-03-28").latest());
    ASSERT_EQ(readiness.rows.size(), 2U);
    EXPECT_FALSE(readiness.rows[0].colourWasOther);
    EXPECT_TRUE(readiness.rows[1].colourWasOther && readiness.rows[1].touchWasOther);
    const auto saidOf = [&](std::size_t row) {
        return reasonsFor(readiness.rows[row], history, rules).at(2);
    };
    EXPECT_EQ(saidOf(0), "The look on 2026-03-26 found it dry to the touch and the colour true.");
    EXPECT_EQ(
        saidOf(1),
        "The look on 2026-03-26, at others that were taken to speak for it, found them dry to "
        "the touch and the colour true.");
}

// Ink that cannot turn only has to dry: somebody must have felt it.
TEST_F(ReadinessLooks, OpaqueInkIsFeltBeforeItIsPutAway) {
    pull(2, "2026-03-04T09:00");
    EXPECT_EQ(verdictAsOf("2026-03-08"), Verdict::lookDue);
    EXPECT_NE(reasonsAsOf("2026-03-08").find("it only has to be dry"), std::string::npos);
    // Nobody felt it for long: that it dried is taken for granted.
    EXPECT_EQ(verdictAsOf("2026-05-08"), Verdict::notAffected);
    const auto felt = [&](const std::string& at, Touch touch) {
        book.look(at, {"e-1"}, touch, LookColour::trueColour, [](Look& r) { r.colour.reset(); });
    };
    felt("2026-03-09", Touch::tacky);
    EXPECT_EQ(verdictAsOf("2026-05-08"), Verdict::lookDue);
    felt("2026-03-20", Touch::dry);
    EXPECT_EQ(verdictAsOf("2026-03-20T23:59"), Verdict::notAffected);
}

TEST_F(ReadinessLooks, AReadingThatAgreesSparesTheSecondLook) {
    pulledAndHung();
    foundTrue("2026-03-26");
    history = historyOf(book.records);
    const auto verdict = [&] {
        return readinessOf(history, rules, build::on("2026-03-26").latest()).rows.at(0).verdict;
    };
    EXPECT_EQ(verdict(), Verdict::lookDue);
    history.looks.back().readingAgrees = true;
    EXPECT_EQ(verdict(), Verdict::ready);
}

TEST_F(ReadinessLooks, PuttingAwayBetweenThemIsTooEarly) {
    pulledAndHung();
    foundTrue("2026-03-26");
    move("drawer", "2026-03-27");
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::bringOut);
    foundTrue("2026-03-29");
    const ReadinessRow row = rowAsOf("2026-03-29");
    EXPECT_EQ(row.verdict, Verdict::ready);
    EXPECT_TRUE(row.putAwayEarly);
}

TEST_F(ReadinessLooks, PuttingAwayAfterBothIsNot) {
    pulledAndHung();
    foundTrue("2026-03-26");
    foundTrue("2026-03-29");
    move("drawer", "2026-03-30");
    EXPECT_EQ(verdictAsOf("2026-04-28"), Verdict::ready);
    EXPECT_FALSE(rowAsOf("2026-04-28").putAwayEarly);
}

TEST_F(ReadinessLooks, AreAsManyAndAsFarApartAsTheStudioSays) {
    rules = HouseRules({ruleOf("colourLooks", 3), ruleOf("colourLooksApart_days", 0)});
    pulledAndHung();
    foundTrue("2026-03-26T08:00");
    foundTrue("2026-03-26T12:00");
    EXPECT_EQ(verdictAsOf("2026-03-26T12:00"), Verdict::lookDue);
    foundTrue("2026-03-26T17:00");
    EXPECT_EQ(verdictAsOf("2026-03-26T17:00"), Verdict::ready);
}

TEST_F(ReadinessLooks, SayWhenTheNextMayBeMade) {
    pulledAndHung();
    foundTrue("2026-03-26");
    EXPECT_EQ(reasonsAsOf("2026-03-27"),
              "Layer 1 (97 % extender as remembered, drier not known) was pulled on 2026-03-04; it "
              "has hung in light for 23 days; the studio wants 21. 21 days are wanted where the "
              "ink is not known to hold drier: common practice, no source. The look on 2026-03-26 "
              "found it dry to the touch and the colour true. The studio wants 2 looks that find "
              "it true, 3 days apart or more; 1 so far. The next may be made from 2026-03-29 on. "
              "It is at rack, in light.");
}

// Looks dated so badly that one that found it turned may have been the last.
TEST_F(ReadinessLooks, OneThatMayHaveBeenLaterStandsInTheWay) {
    pulledAndHung();
    foundTrue("2026-03-26");
    foundTrue("2026-04-02");
    EXPECT_EQ(verdictAsOf("2026-04-20"), Verdict::ready);
    foundTurned("2026-04");
    EXPECT_EQ(verdictAsOf("2026-04-20"), Verdict::moreLight);
    EXPECT_NE(reasonsAsOf("2026-04-20").find("may have been the later one, found it not true"),
              std::string::npos);
    // Afterwards it is looked at again, twice.
    foundTrue("2026-05-02");
    foundTrue("2026-05-06");
    EXPECT_EQ(verdictAsOf("2026-05-06"), Verdict::ready);
}

TEST_F(ReadinessLooks, OneThatMayStillBeToComeDoesNotCount) {
    pulledAndHung();
    foundTrue("2026-03-26/2099-01-01");
    foundTrue("2026-04-02/2099-01-01");
    EXPECT_EQ(verdictAsOf("2026-04-20"), Verdict::lookDue);
}

TEST_F(ReadinessLooks, ThatFindItTurnedInTheDarkBringItOut) {
    pulledAndHung();
    foundTrue("2026-03-26");
    foundTrue("2026-04-02");
    move("drawer", "2026-04-03T09:00");
    EXPECT_EQ(verdictAsOf("2026-05-02"), Verdict::ready);
    foundTurned("2026-05-02");
    EXPECT_EQ(verdictAsOf("2026-05-03"), Verdict::bringOut);
    EXPECT_NE(reasonsAsOf("2026-05-03").find("found not true since it was put away"),
              std::string::npos);
}

TEST_F(ReadinessLooks, AreTheSameWhicheverWayTheMomentIsAsked) {
    pulledAndHung();
    foundTrue("2026-03-26");
    foundTurned("2026-03-28");
    foundTrue("2026-04-02");
    history = historyOf(book.records);
    std::vector<JudgedMoment> moments;
    for (const char* asOf : {"2026-04-20", "2026-03-02", "2026-03-27", "2026-03-30", "2026-03-27"})
        moments.push_back({0, build::on(asOf).latest()});
    const std::vector<ReadinessRow> rows = readinessAt(history, rules, moments);
    ASSERT_EQ(rows.size(), moments.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const ReadinessRow one = readinessOf(history, rules, moments[i].asOf).rows.at(0);
        EXPECT_EQ(rows[i].verdict, one.verdict);
        EXPECT_EQ(rows[i].pull, one.pull);
        EXPECT_EQ(rows[i].looks.foundTrue, one.looks.foundTrue);
        EXPECT_EQ(rows[i].daysLow, one.daysLow);
    }
    EXPECT_EQ(rows[1].pull, -1);
    EXPECT_NE(rows[0].looks.foundTrue, rows[3].looks.foundTrue);
}

}  // namespace
}  // namespace rackbook
