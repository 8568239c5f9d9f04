// Whatever was recorded: nothing is ready that nobody looked at, and an estimate of light makes
// nothing ready that was not ready without it.
#include <random>

#include "StudioFixture.h"

namespace rackbook {
namespace {

class ReadinessDoseProperty : public StudioTest, public testing::WithParamInterface<unsigned> {
protected:
    ReadinessDoseProperty() : m_random(GetParam()) {
        book.place("somewhere", PlaceKind::wall);
        book.place("gallery", PlaceKind::gallery);
        rules = HouseRules({ruleOf("colourLooks", 1 + below(3)), ruleOf("lightDaysCareful", 5)});
    }

    int below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(m_random); }

    // To the minute, the day, the month or the year.
    std::string anyTime() {
        const CivilMinute minute = build::on("2025-01-01T00:00").earliest() +
                                   static_cast<CivilMinute>(below(500)) * minutesPerDay +
                                   below(1440);
        const std::string text = formatMinute(minute);
        static constexpr std::size_t lengths[] = {16, 16, 10, 10, 10, 7, 4};
        return text.substr(0, lengths[below(7)]);
    }

    void anyPrint(bool withLooks) {
        static const char* const places[] = {"yard",   "rack",      "cellar",
                                             "drawer", "somewhere", "gallery"};
        const std::vector<std::string> id = {nextPrint()};
        for (int i = below(4); i >= 0; --i)
            book.pull("e-layer" + std::to_string(1 + below(3)), anyTime(), id);
        for (int i = below(5); i > 0; --i)
            book.move(places[below(6)], anyTime(), id,
                      [&](Move& r) { r.interleaved = below(8) == 0; });
        for (int i = withLooks ? below(6) : 0; i > 0; --i)
            book.look(anyTime(), id, below(4) == 0 ? Touch::tacky : Touch::dry,
                      below(4) == 0 ? LookColour::turned : LookColour::trueColour);
    }

    std::mt19937 m_random;
};

TEST_P(ReadinessDoseProperty, NothingIsReadyWithoutALook) {
    for (int i = 0; i < 150; ++i)
        anyPrint(false);
    const LightModel& model = modelAsOf("2027-01-01");
    for (const char* asOf : {"2025-06-01", "2026-06-01", "2036-01-01"}) {
        const Readiness readiness = readinessOf(history, rules, build::on(asOf).latest(), &model);
        ASSERT_EQ(readiness.rows.size(), 150u);
        for (const ReadinessRow& row : readiness.rows) {
            EXPECT_NE(row.verdict, Verdict::ready) << row.impression << " as of " << asOf;
            for (const std::string& sentence : reasonsFor(row, history, rules))
                EXPECT_EQ(sentence.find("nan"), std::string::npos) << sentence;
        }
    }
}

TEST_P(ReadinessDoseProperty, AnEstimateMakesNothingReady) {
    for (int i = 0; i < 150; ++i)
        anyPrint(true);
    const LightModel& model = modelAsOf("2027-01-01");
    int ready = 0;
    for (const char* asOf : {"2025-06-01", "2025-12-01", "2026-06-01"}) {
        const CivilMinute at = build::on(asOf).latest();
        const Readiness with = readinessOf(history, rules, at, &model);
        const Readiness without = readinessOf(history, rules, at);
        for (std::size_t i = 0; i < with.rows.size(); ++i) {
            const ReadinessRow& row = with.rows[i];
            if (row.verdict == Verdict::ready) {
                ++ready;
                EXPECT_EQ(without.rows[i].verdict, Verdict::ready) << i << " as of " << asOf;
                EXPECT_GE(row.colourLook, 0);
            }
            if (row.asksDose && row.dose.sunnyDays.isKnown()) {
                EXPECT_LE(row.dose.sunnyDays.low, row.dose.sunnyDays.best + 1e-9);
                EXPECT_LE(row.dose.sunnyDays.best, row.dose.sunnyDays.high + 1e-9);
                EXPECT_GE(row.returnedChance, 0);
                EXPECT_LE(row.returnedChance, 1);
            }
        }
    }
    EXPECT_GT(ready, 0);
}

INSTANTIATE_TEST_SUITE_P(Seeds, ReadinessDoseProperty, testing::Values(1U, 7U, 42U));

}  // namespace
}  // namespace rackbook
