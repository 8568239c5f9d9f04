// Where reports have no chance to tell, and why; and what forecasts say then.
#include "calc/ToldChance.h"

#include <cmath>

#include "StudioFixture.h"

namespace rackbook {
namespace {

class ToldChanceTest : public StudioTest {
protected:
    ToldChance toldAsOf(const std::string& asOf) { return toldChanceOf(rowAsOf(asOf)); }
};

TEST_F(ToldChanceTest, IsToldUntilALookFindsTheColourTrue) {
    const std::string id = print("2026-05-10T10:00", "rack");
    EXPECT_EQ(toldAsOf("2026-06-01"), ToldChance::told);
    lookAt(id, "2026-06-02", LookColour::returning);
    EXPECT_EQ(toldAsOf("2026-06-05"), ToldChance::told);
    lookAt(id, "2026-06-10", LookColour::trueColour);
    EXPECT_EQ(toldAsOf("2026-06-09"), ToldChance::told);
    EXPECT_EQ(toldAsOf("2026-06-11"), ToldChance::foundTrue);
    lookAt(id, "2026-06-20", LookColour::turned);
    EXPECT_EQ(toldAsOf("2026-06-21"), ToldChance::told);
}

// Fresh ink looks true before it turns; readiness does not count such a look either.
TEST_F(ToldChanceTest, IsToldWhereTheLookCameTooEarly) {
    lookAt(print("2026-05-10T10:00", "rack"), "2026-05-12", LookColour::trueColour);
    EXPECT_EQ(rowAsOf("2026-05-20").looks.foundTrue, 0);
    EXPECT_EQ(toldAsOf("2026-05-20"), ToldChance::told);
}

// A look at the colour under a later extender-rich layer says nothing of that one.
TEST_F(ToldChanceTest, BeginsAnewWithTheNextRichPull) {
    const std::string id = print("2026-05-10T10:00", "rack");
    lookAt(id, "2026-06-10", LookColour::trueColour);
    book.pull("e-layer1", "2026-06-15T10:00", {id});
    EXPECT_EQ(toldAsOf("2026-06-16"), ToldChance::told);
}

TEST_F(ToldChanceTest, IsNotToldWhereDatesLeaveTheLightOpen) {
    print("2025/2026", "rack");
    const ReadinessRow row = rowAsOf("2026-06-10");
    ASSERT_TRUE(row.dose.sunnyDays.isKnown());
    EXPECT_FALSE(std::isnan(row.returnedChance));
    EXPECT_EQ(toldChanceOf(row), ToldChance::datesTooWide);
    // Days and minutes are dates as people know them.
    print("2026-05-10", "rack");
    EXPECT_EQ(toldAsOf("2026-06-10"), ToldChance::told);
    EXPECT_EQ(toldAsOf("2026-05-10"), ToldChance::told);
    // A month a long time ago leaves little open.
    print("2025-06", "rack");
    EXPECT_EQ(toldAsOf("2026-06-10"), ToldChance::told);
}

TEST_F(ToldChanceTest, IsToldOfWhatWasInTheDarkWhateverTheDates) {
    const std::string id = nextPrint();
    book.move("drawer", "2024-12-01T10:00", {id});
    book.pull("e-layer1", "2025/2026", {id});
    const ReadinessRow row = rowAsOf("2026-06-10");
    ASSERT_EQ(row.dose.sunnyDays.high, 0);
    EXPECT_EQ(toldChanceOf(row), ToldChance::told);
    EXPECT_EQ(row.returnedChance, 0);
}

TEST_F(ToldChanceTest, IsNotToldWhereTheLightIsNotKnown) {
    book.place("shelf", PlaceKind::rack, [](Place&) {});
    print("2026-05-10T10:00", "shelf");
    EXPECT_EQ(toldAsOf("2026-06-10"), ToldChance::lightNotKnown);
}

// By hand: found true once on 10 June, three days apart by the house rule.
TEST_F(ToldChanceTest, LeavesOnlyTheDayOfAnotherLookToForecast) {
    const std::string id = print("2026-05-10T10:00", "rack");
    lookAt(id, "2026-05-20", LookColour::turned);
    lookAt(id, "2026-06-10", LookColour::trueColour);
    const ReadinessRow row = rowAsOf("2026-06-11");
    const LightModel& model = modelAsOf("2026-06-11");
    const ReadinessRow judged =
        readinessOf(history, rules, build::on("2026-06-11").latest(), &model).rows.back();
    ASSERT_EQ(toldChanceOf(row), ToldChance::foundTrue);
    const LightForecast got =
        forecastAt(model, judged, judged.place, build::on("2026-06-11").latest(),
                   forecastChancesOf(judged, rules));
    EXPECT_EQ(got.early, daysFromCivil({2026, 6, 13}));
    EXPECT_FALSE(got.likely);
    EXPECT_FALSE(got.late);
}

}  // namespace
}  // namespace rackbook
