// Verdicts where the studio's light is estimated: house rules, one sunny day give or take. On the
// rack, a month of winter is next to nothing and a month of summer about half a sunny day; a month
// in the yard is plenty.
#include <cmath>

#include "StudioFixture.h"

namespace rackbook {
namespace {

class ReadinessDose : public StudioTest {
protected:
    static GateState doseOf(const ReadinessRow& row) {
        return row.gates[static_cast<std::size_t>(GateKind::dose)].state;
    }
    static GateState lightOf(const ReadinessRow& row) {
        return row.gates[static_cast<std::size_t>(GateKind::light)].state;
    }
    // Eight batches whose colour was still turned after three weeks in the yard.
    void learnThatItTakesLong() {
        for (int batch = 0; batch < 8; ++batch)
            lookAt(print("2026-05-10T10:00", "yard"), "2026-05-31", LookColour::turned);
    }
    std::string winterPrint() { return print("2026-11-10T10:00", "rack"); }
    std::string summerPrint() { return print("2026-05-10T10:00", "rack"); }
};

TEST_F(ReadinessDose, TooSmallADoseWantsMoreLightAndSaysUntilWhen) {
    winterPrint();
    const ReadinessRow row = rowAsOf("2026-12-10T12:00");
    EXPECT_EQ(lightOf(row), GateState::passed);
    EXPECT_EQ(doseOf(row), GateState::failed);
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_LT(row.returnedChance, rules.value("lookChance"));
    ASSERT_TRUE(row.hasForecast);
    const LightForecast forecast = forecastOf(row, rules);
    ASSERT_TRUE(forecast.early && forecast.likely);
    EXPECT_GT(*forecast.early, daysFromCivil({2026, 12, 10}) + 14);
    EXPECT_LT(*forecast.early, *forecast.likely);
    // On the forecast's day the verdict is that a look is due, on the day before it is not. A day
    // of winter in days: it need not be the same in hours.
    const std::string due = formatDay(*forecast.early * minutesPerDay);
    const std::string notYet = formatDay((*forecast.early - 2) * minutesPerDay);
    EXPECT_EQ(verdictAsOf(due), Verdict::lookDue);
    EXPECT_EQ(verdictAsOf(notYet), Verdict::moreLight);
}

TEST_F(ReadinessDose, AChanceInBetweenMakesALookDue) {
    summerPrint();
    const ReadinessRow row = rowAsOf("2026-06-10T12:00");
    EXPECT_EQ(doseOf(row), GateState::open);
    EXPECT_EQ(row.verdict, Verdict::lookDue);
    EXPECT_GE(row.returnedChance, rules.value("lookChance"));
    EXPECT_LT(row.returnedChance, rules.value("returnedChance"));
    EXPECT_FALSE(row.hasForecast);
}

// North of the polar circle a window has no light for weeks; no colour comes back there.
TEST_F(ReadinessDose, ColourThatCameBackWithoutLightIsNotBelieved) {
    m_studio.latitude_deg = 78;
    const std::string id = print("2026-11-01T10:00", "rack");
    lookAt(id, "2026-11-12", LookColour::turned);
    lookAt(id, "2026-12-01", LookColour::trueColour);
    lookAt(id, "2026-12-10", LookColour::trueColour);
    const ReadinessRow row = rowAsOf("2026-12-20T12:00");
    EXPECT_EQ(lightOf(row), GateState::passed);
    EXPECT_TRUE(cameBackInTheDark(row));
    EXPECT_EQ(doseOf(row), GateState::failed);
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    bool isSaid = false;
    for (const std::string& sentence : reasonsFor(row, history, rules))
        isSaid = isSaid || sentence.find("next to no light had come to it") != std::string::npos;
    EXPECT_TRUE(isSaid);
}

TEST_F(ReadinessDose, TwoLooksSettleIt) {
    const std::string id = summerPrint();
    lookAt(id, "2026-06-10", LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-06-10"), Verdict::lookDue);
    lookAt(id, "2026-06-13", LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-06-13"), Verdict::ready);
    EXPECT_EQ(doseOf(rowAsOf("2026-06-13")), GateState::passed);
}

TEST_F(ReadinessDose, LooksTooCloseOrTooEarlyDoNot) {
    const std::string close = summerPrint();
    lookAt(close, "2026-06-10", LookColour::trueColour);
    lookAt(close, "2026-06-12", LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-06-12"), Verdict::lookDue);
    const std::string early = summerPrint();
    lookAt(early, "2026-05-20", LookColour::trueColour);
    lookAt(early, "2026-06-10", LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-06-12"), Verdict::lookDue);
}

// With too small a dose fresh ink may look true for weeks: only who saw it turn has seen it return.
TEST_F(ReadinessDose, WithTooSmallADoseLooksDoNotSettleIt) {
    learnThatItTakesLong();
    const std::string id = winterPrint();
    lookAt(id, "2026-12-05", LookColour::trueColour);
    lookAt(id, "2026-12-08", LookColour::trueColour);
    const ReadinessRow row = rowAsOf("2026-12-10");
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_LT(row.returnedChance, rules.value("lookChance"));
    EXPECT_EQ(row.looks.foundTrue, 2);
}

TEST_F(ReadinessDose, LooksThatSawItTurnAndReturnDo) {
    learnThatItTakesLong();
    const std::string id = winterPrint();
    lookAt(id, "2026-11-20", LookColour::turned);
    lookAt(id, "2026-12-05", LookColour::trueColour);
    EXPECT_NE(verdictAsOf("2026-12-07"), Verdict::ready);
    lookAt(id, "2026-12-08", LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-12-10"), Verdict::ready);
}

TEST_F(ReadinessDose, PlentyOfLightIsNoLook) {
    const std::string id = print("2026-05-10T10:00", "yard");
    const ReadinessRow row = rowAsOf("2026-06-10");
    EXPECT_EQ(doseOf(row), GateState::passed);
    EXPECT_GE(row.returnedChance, rules.value("returnedChance"));
    EXPECT_EQ(row.verdict, Verdict::lookDue);
    lookAt(id, "2026-06-10", LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-06-11"), Verdict::lookDue);
    lookAt(id, "2026-06-13", LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-06-13"), Verdict::ready);
}

TEST_F(ReadinessDose, PlentyOfLightInAFewDaysIsNotEnough) {
    print("2026-05-10T10:00", "yard");
    const ReadinessRow row = rowAsOf("2026-05-20T10:00");
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_EQ(doseOf(row), GateState::passed);
    // By hand: eleven of the 21 days are missing.
    ASSERT_TRUE(row.hasForecast);
    const LightForecast forecast = forecastOf(row, rules);
    EXPECT_EQ(forecast.early, daysFromCivil({2026, 5, 31}));
    EXPECT_EQ(forecast.late, daysFromCivil({2026, 5, 31}));
}

TEST_F(ReadinessDose, PuttingAwayWithTooSmallADoseIsTooEarly) {
    learnThatItTakesLong();
    const std::string id = winterPrint();
    lookAt(id, "2026-12-05", LookColour::trueColour);
    lookAt(id, "2026-12-08", LookColour::trueColour);
    book.move("drawer", "2026-12-09", {id});
    const ReadinessRow row = rowAsOf("2026-12-20");
    EXPECT_EQ(row.verdict, Verdict::bringOut);
    EXPECT_TRUE(row.putAwayEarly);
    EXPECT_FALSE(row.hasForecast);
    // By days and looks alone it was ready.
    EXPECT_EQ(readinessOf(history, rules, build::on("2026-12-20").latest()).rows.back().verdict,
              Verdict::ready);
}

TEST_F(ReadinessDose, PuttingAwayOnceLooksSettledItIsNot) {
    const std::string id = summerPrint();
    lookAt(id, "2026-06-10", LookColour::trueColour);
    lookAt(id, "2026-06-13", LookColour::trueColour);
    book.move("drawer", "2026-06-14", {id});
    const ReadinessRow row = rowAsOf("2026-12-20");
    EXPECT_EQ(row.verdict, Verdict::ready);
    EXPECT_FALSE(row.putAwayEarly);
}

// Light that is not recorded leaves the dose open: looks settle it, once the days are known to be
// over.
TEST_F(ReadinessDose, ADoseWithoutABestValueIsLeftToLooks) {
    book.place("somewhere", PlaceKind::wall);
    const std::string id = print("2026-05-10T10:00", "somewhere");
    book.move("rack", "2026-05-20T10:00", {id});
    const ReadinessRow row = rowAsOf("2026-06-20");
    EXPECT_TRUE(std::isnan(row.returnedChance));
    EXPECT_EQ(doseOf(row), GateState::open);
    EXPECT_EQ(row.verdict, Verdict::lookDue);
    lookAt(id, "2026-06-13", LookColour::trueColour);
    lookAt(id, "2026-06-18", LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-06-20"), Verdict::ready);
}

// What its own looks taught goes before the house rule.
TEST_F(ReadinessDose, GoesByWhatTheStudioLearnt) {
    learnThatItTakesLong();
    winterPrint();
    EXPECT_TRUE(rowAsOf("2026-12-10").wanted->isLearnt);
    // A sunny day would do by the house rule; here even the yard in May was not enough.
    const std::string summer = summerPrint();
    EXPECT_EQ(verdictAsOf("2026-06-10"), Verdict::moreLight);
}

// Looks and moves with an open end end with the day that is asked for.
TEST_F(ReadinessDose, OpenDatesDoNotRunOnForEver) {
    const std::string id = print("2026-05-10T10:00", "rack");
    book.look("2026-06-20/..", {id}, Touch::dry, LookColour::returning);
    EXPECT_EQ(rowAsOf("2026-06-25").verdict, Verdict::moreLight);
    const std::string other = print("2026-05-10T10:00", "rack");
    book.look("2026-06-10", {other}, Touch::dry, LookColour::trueColour);
    book.look("2026-06-14", {other}, Touch::dry, LookColour::trueColour);
    book.move("drawer", "2026-06-20/..", {other});
    EXPECT_NE(rowAsOf("2026-06-25").verdict, Verdict::moreLight);
}

// Seen not to be back: the next look is due when it is likelier than not that it is.
TEST_F(ReadinessDose, AfterALookThatDidNotFindItTrueAnotherOneIsDueInTime) {
    const std::string id = print("2026-05-10T10:00", "rack");
    book.look("2026-06-02", {id}, Touch::dry, LookColour::returning);
    const ReadinessRow soon = rowAsOf("2026-06-04");
    EXPECT_EQ(soon.verdict, Verdict::moreLight);
    EXPECT_LT(soon.returnedChance, 0.1);
    const ReadinessRow late = rowAsOf("2026-09-20");
    EXPECT_GT(late.returnedChance, 0.5);
    EXPECT_EQ(late.verdict, Verdict::lookDue);
}

}  // namespace
}  // namespace rackbook
