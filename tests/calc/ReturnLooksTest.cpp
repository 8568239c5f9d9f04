#include "calc/ReturnLooks.h"

#include "StudioFixture.h"
#include "calc/PullsLearntFrom.h"

namespace rackbook {
namespace {

class ReturnLooksTest : public StudioTest {
protected:
    std::vector<ReturnLook> looksAsOf(const std::string& asOf) {
        return modelAsOf(asOf).wanted.looks();
    }
};

TEST_F(ReturnLooksTest, TurnedAndThenTrueAreAnInterval) {
    const std::string id = print("2026-05-01T10:00", "rack");
    lookAt(id, "2026-05-04T10:00", LookColour::turned);
    lookAt(id, "2026-05-06T10:00", LookColour::returning);
    lookAt(id, "2026-05-10T10:00", LookColour::trueColour);
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 1u);
    EXPECT_EQ(looks[0].pull, 0u);
    EXPECT_EQ(looks[0].notYetLook, 1);
    EXPECT_EQ(looks[0].trueLook, 2);
    EXPECT_NEAR(looks[0].observed.low_sunnyDays,
                dose_sunnyDays("rack", "2026-05-01T10:00", "2026-05-06T10:00"), 1e-9);
    EXPECT_NEAR(looks[0].observed.high_sunnyDays,
                dose_sunnyDays("rack", "2026-05-01T10:00", "2026-05-10T10:00"), 1e-9);
    EXPECT_EQ(looks[0].impressions, std::vector<std::uint32_t>{0});
    // On the ninth of May, it had not returned yet.
    EXPECT_TRUE(std::isinf(looksAsOf("2026-05-09")[0].observed.high_sunnyDays));
}

// Those that went through one of the latest pulls teach, those before them no more.
TEST_F(ReturnLooksTest, OnlyPrintsOfTheLatestPullsTeach) {
    const std::string old = print("2026-04-01T10:00", "rack");
    lookAt(old, "2026-04-04T10:00", LookColour::turned);
    lookAt(old, "2026-04-20T10:00", LookColour::trueColour);
    const std::string last = print("2026-05-01T10:00", "rack");
    lookAt(last, "2026-05-04T10:00", LookColour::turned);
    lookAt(last, "2026-05-20T10:00", LookColour::trueColour);
    for (std::size_t i = 2; i < pullsLearntFrom; ++i)
        print("2026-05-01T11:00", "rack");
    EXPECT_EQ(looksAsOf("2026-06-01").size(), 2u);
    print("2026-05-01T12:00", "rack");
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 1u);
    EXPECT_EQ(looks[0].pull, 1u);
}

TEST_F(ReturnLooksTest, OnlyTurnedSaysThatItTakesMore) {
    const std::string id = print("2026-05-01T10:00", "rack");
    lookAt(id, "2026-05-04T10:00", LookColour::returning);
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 1u);
    EXPECT_EQ(looks[0].trueLook, -1);
    EXPECT_GT(looks[0].observed.low_sunnyDays, 0);
    EXPECT_TRUE(std::isinf(looks[0].observed.high_sunnyDays));
}

// Fresh ink looks true before it turns (common practice, no source): 14 days are wanted.
TEST_F(ReturnLooksTest, TrueAtOnceSaysSomethingOnlyAfterTheDaysInLight) {
    const std::string early = print("2026-05-01T10:00", "rack");
    lookAt(early, "2026-05-14T10:00", LookColour::trueColour);
    EXPECT_TRUE(looksAsOf("2026-06-01").empty());
    const std::string late = print("2026-05-01T10:00", "rack");
    lookAt(late, "2026-05-15T10:00", LookColour::trueColour);
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 1u);
    EXPECT_EQ(looks[0].notYetLook, -1);
    EXPECT_EQ(looks[0].observed.low_sunnyDays, 0);
    EXPECT_NEAR(looks[0].observed.high_sunnyDays,
                dose_sunnyDays("rack", "2026-05-01T10:00", "2026-05-15T10:00"), 1e-9);
    EXPECT_EQ(looks[0].impressions, std::vector<std::uint32_t>{1});
}

// One that was true too early, then turned, then true: what came before it turned says nothing.
TEST_F(ReturnLooksTest, TrueBeforeItTurnedIsPassedOver) {
    const std::string id = print("2026-05-01T10:00", "rack");
    lookAt(id, "2026-05-02T10:00", LookColour::trueColour);
    lookAt(id, "2026-05-05T10:00", LookColour::turned);
    lookAt(id, "2026-05-08T10:00", LookColour::trueColour);
    lookAt(id, "2026-05-12T10:00", LookColour::trueColour);
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 1u);
    EXPECT_EQ(looks[0].notYetLook, 1);
    EXPECT_EQ(looks[0].trueLook, 2);
}

TEST_F(ReturnLooksTest, ABatchIsOneObservationHoweverManyPrintsItHas) {
    book.impressions("e", 1, 40);
    const std::vector<std::string> all = build::impressionIds("e", 1, 40);
    book.pull("e-layer1", "2026-05-01T10:00", all).move("rack", "2026-05-01T10:00", all);
    book.look("2026-05-04T10:00", all, Touch::tacky, LookColour::turned);
    book.look("2026-05-10T10:00", all, Touch::dry, LookColour::trueColour);
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 1u);
    EXPECT_EQ(looks[0].impressions.size(), 40u);
}

// Also where each print's look was written down by itself.
TEST_F(ReturnLooksTest, ABatchIsOneObservationInAsManyRecordsAsThereArePrints) {
    book.impressions("e", 1, 3);
    const std::vector<std::string> all = build::impressionIds("e", 1, 3);
    book.pull("e-layer1", "2026-05-01T10:00", all).move("rack", "2026-05-01T10:00", all);
    for (const std::string& id : all)
        lookAt(id, "2026-05-04T10:00", LookColour::turned);
    for (const std::string& id : all)
        lookAt(id, "2026-05-10T10:00", LookColour::trueColour);
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 1u);
    EXPECT_EQ(looks[0].impressions.size(), 3u);
}

TEST_F(ReturnLooksTest, PrintsThatHungElsewhereAreObservationsOfTheirOwn) {
    book.impressions("e", 1, 2);
    const std::vector<std::string> all = build::impressionIds("e", 1, 2);
    book.pull("e-layer1", "2026-05-01T10:00", all);
    book.move("rack", "2026-05-01T10:00", {"e-1"}).move("yard", "2026-05-01T10:00", {"e-2"});
    book.look("2026-05-04T10:00", all, Touch::dry, LookColour::turned);
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 2u);
    EXPECT_LT(looks[0].observed.low_sunnyDays, looks[1].observed.low_sunnyDays);
}

TEST_F(ReturnLooksTest, SpeaksOfTheLastRichPull) {
    const std::string id = print("2026-05-01T10:00", "rack");
    book.pull("e-layer1", "2026-05-10T10:00", {id});
    book.pull("e-layer2", "2026-05-12T10:00", {id});
    lookAt(id, "2026-05-08T10:00", LookColour::turned);
    EXPECT_TRUE(looksAsOf("2026-06-01").empty());
    lookAt(id, "2026-05-14T10:00", LookColour::turned);
    const std::vector<ReturnLook> looks = looksAsOf("2026-06-01");
    ASSERT_EQ(looks.size(), 1u);
    EXPECT_EQ(looks[0].pull, 1u);
    EXPECT_EQ(looks[0].notYetLook, 1);
}

// A pull whose share of base is not known may be the one that counts, and so may one whose day is
// not known.
TEST_F(ReturnLooksTest, LeavesOutDoubtfulPulls) {
    const std::string maybe = print("2026-05-01T10:00", "rack", 3);
    lookAt(maybe, "2026-05-04T10:00", LookColour::turned);
    const std::string later = print("2026-05-01T10:00", "rack");
    book.pull("e-layer3", "2026-05-02T10:00", {later});
    lookAt(later, "2026-05-04T10:00", LookColour::turned);
    const std::string notRich = print("2026-05-01T10:00", "rack", 2);
    lookAt(notRich, "2026-05-04T10:00", LookColour::turned);
    const std::string inApril = print("2026-04", "rack");
    lookAt(inApril, "2026-05-04T10:00", LookColour::turned);
    EXPECT_TRUE(looksAsOf("2026-06-01").empty());
}

TEST_F(ReturnLooksTest, LeavesOutLooksThatAreDatedToAYearOrDoNotSayHowTheColourIs) {
    const std::string id = print("2026-05-01T10:00", "rack");
    book.look("2027", {id}, Touch::dry, LookColour::turned);
    book.look("2026-06", {id}, Touch::dry, LookColour::turned);
    book.look("2026-05-08", {id}, Touch::dry, LookColour::turned,
              [](Look& r) { r.colour.reset(); });
    EXPECT_TRUE(looksAsOf("2028-06-01").empty());
    book.look("2026-05-08", {id}, Touch::dry, LookColour::turned);
    EXPECT_EQ(looksAsOf("2028-06-01").size(), 1u);
}

TEST_F(ReturnLooksTest, LeavesOutWhereTheDoseHasNoBestValue) {
    book.place("somewhere", PlaceKind::wall);
    const std::string id = print("2026-05-01T10:00", "somewhere");
    lookAt(id, "2026-05-04T10:00", LookColour::turned);
    lookAt(id, "2026-06-04T10:00", LookColour::trueColour);
    EXPECT_TRUE(looksAsOf("2026-07-01").empty());
}

TEST_F(ReturnLooksTest, TheLastRichPullIsTheOneUpToThatMoment) {
    const std::string id = print("2026-05-01T10:00", "rack");
    book.pull("e-layer2", "2026-05-03T10:00", {id});
    book.pull("e-layer1", "2026-05-05T10:00", {id});
    const auto lastBy = [&](const char* day) {
        return lastRichPullOf(history, modelAsOf("2026-06-01").inks, 0, build::on(day).latest());
    };
    modelAsOf("2026-06-01");
    EXPECT_EQ(lastBy("2026-04-30").pull, std::nullopt);
    EXPECT_EQ(lastBy("2026-05-04").pull, 0u);
    EXPECT_FALSE(lastBy("2026-05-04").isDoubtful);
    EXPECT_EQ(lastBy("2026-05-06").pull, 2u);
    // Layer 3 may be rich.
    book.pull("e-layer3", "2026-05-07T10:00", {id});
    modelAsOf("2026-06-01");
    EXPECT_EQ(lastBy("2026-05-08").pull, 2u);
    EXPECT_TRUE(lastBy("2026-05-08").isDoubtful);
    EXPECT_FALSE(lastBy("2026-05-06").isDoubtful);
}

}  // namespace
}  // namespace rackbook
