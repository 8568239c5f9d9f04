#include "calc/DoseReasons.h"

#include "StudioFixture.h"

namespace rackbook {
namespace {

class DoseReasonsTest : public StudioTest {
protected:
    std::vector<std::string> reasonsAsOf(const std::string& asOf) {
        const ReadinessRow row = rowAsOf(asOf);
        return doseReasons(row, history, rules);
    }
    std::vector<std::string> looksAsOf(const std::string& asOf) {
        const ReadinessRow row = rowAsOf(asOf);
        return colourLookReasons(row, history, rules);
    }
};

using Sentences = std::vector<std::string>;

TEST_F(DoseReasonsTest, SayWhatIsMissingAndUntilWhen) {
    print("2026-11-10T10:00", "rack");
    EXPECT_EQ(
        reasonsAsOf("2026-12-10T12:00"),
        (Sentences{"By estimate its light since is worth 0.13 (0.063–0.24) sunny days hung up out "
                   "of doors; half of such prints have their colour back after 1.0 (about one such "
                   "day: common practice, no source). With what is not known of either counted in, "
                   "the chance that the colour of this one is back is about 4 %.",
                   "That is too little for a look to tell: about 0.23 are wanted first.",
                   "Hanging on at rack, a look is worth making from 2027-01-10 on, half of such "
                   "prints are back by 2027-04-06, most by 2027-06-30."}));
}

TEST_F(DoseReasonsTest, SayHowManyLooksTheyComeFrom) {
    lookAt(print("2026-05-10T10:00", "yard"), "2026-05-31", LookColour::turned);
    print("2026-05-10T10:00", "yard");
    EXPECT_NE(reasonsAsOf("2026-06-10")
                  .at(0)
                  .find(" (the house rule's 1, about one such day: common practice, no source, "
                        "moved by 1 look, too few to learn from). With what is not known of either "
                        "counted in, the chance that the colour of this one is back is "),
              std::string::npos);
    for (int batch = 0; batch < 5; ++batch)
        lookAt(print("2026-05-10T10:00", "rack"), "2026-05-31", LookColour::turned);
    EXPECT_NE(reasonsAsOf("2026-06-10")
                  .at(0)
                  .find(", learnt from 6 looks in this studio. With what is not "
                        "known of the light wanted counted in, the chance "),
              std::string::npos);
}

TEST_F(DoseReasonsTest, SayWhereLightWillNotDo) {
    print("2026-11-10T10:00", "cellar");
    const Sentences sentences = reasonsAsOf("2026-12-10T12:00");
    ASSERT_EQ(sentences.size(), 3u);
    EXPECT_NE(
        sentences[0].find("the chance that the colour of this one is back is next to nothing."),
        std::string::npos);
    EXPECT_EQ(sentences[2], "Hanging on at cellar, it does not get there within two years.");
}

TEST_F(DoseReasonsTest, SayNothingWhereNoDoseIsAskedFor) {
    print("2026-11-10T10:00", "rack", 2);
    EXPECT_EQ(reasonsAsOf("2026-12-10"), Sentences{});
    print("2026-11-10T10:00", "rack");
    const ReadinessRow row =
        readinessOf(history = historyOf(book.records), rules, build::on("2026-12-10").latest())
            .rows.back();
    EXPECT_EQ(doseReasons(row, history, rules), Sentences{});
    EXPECT_EQ(reasonsFor(row, history, rules).size(), 3u);
}

TEST_F(DoseReasonsTest, SayHowManyLooksAreMissing) {
    const std::string id = print("2026-05-10T10:00", "rack");
    EXPECT_EQ(looksAsOf("2026-06-11"), Sentences{});
    lookAt(id, "2026-05-20", LookColour::trueColour);
    EXPECT_EQ(looksAsOf("2026-06-11"),
              Sentences{"That was too early to tell: fresh ink looks true before it turns. Look "
                        "again after its days in light."});
    lookAt(id, "2026-06-10", LookColour::trueColour);
    EXPECT_EQ(looksAsOf("2026-06-11"),
              Sentences{"The studio wants 2 looks that find it true, 3 days apart or more; 1 so "
                        "far. The next may be made from 2026-06-13 on."});
    lookAt(id, "2026-06-13", LookColour::trueColour);
    EXPECT_EQ(looksAsOf("2026-06-13"),
              Sentences{"It is one of 2 looks that found the colour true."});
}

// Looks are compared by days, so two and a half are three.
TEST_F(DoseReasonsTest, NameTheFirstDayOnWhichALookCounts) {
    rules = HouseRules({ruleOf("colourLooksApart_days", 2.5)});
    const std::string id = print("2026-05-10T10:00", "rack");
    lookAt(id, "2026-06-10", LookColour::trueColour);
    EXPECT_EQ(looksAsOf("2026-06-11"),
              Sentences{"The studio wants 2 looks that find it true, 2.5 days apart or more; 1 so "
                        "far. The next may be made from 2026-06-13 on."});
    lookAt(id, "2026-06-12", LookColour::trueColour);
    EXPECT_EQ(rowAsOf("2026-06-12").looks.foundTrue, 1);
    lookAt(id, "2026-06-13", LookColour::trueColour);
    EXPECT_EQ(rowAsOf("2026-06-13").looks.foundTrue, 2);
    rules = HouseRules({ruleOf("colourLooksApart_days", 1), ruleOf("colourLooks", 4)});
    EXPECT_EQ(looksAsOf("2026-06-14"),
              Sentences{"The studio wants 4 looks that find it true, 1 day apart or more; 3 so "
                        "far. The next may be made now."});
}

}  // namespace
}  // namespace rackbook
