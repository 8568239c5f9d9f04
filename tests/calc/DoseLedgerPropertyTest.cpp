// What must hold of doses over any times, whatever the light is.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "LightFixture.h"

namespace rackbook {
namespace {

using namespace rackbook::test;

// 0 daylight, 1 out of doors to the south, 2 lamps, 3 dark, 4 daylight, metered on some days.
class DoseLedgerProperty : public testing::TestWithParam<unsigned> {
protected:
    DoseLedgerProperty() : m_random(GetParam()), m_ultraviolet({56, 10}, usualSkies()) {}

    PlaceRecords records() {
        Light south = lightOf(LightKind::outdoors);
        south.windowAzimuth_deg = 180;
        Light lamps = lightOf(LightKind::artificial);
        lamps.illuminance_lx = 500;
        PlaceRecords all =
            placesWith({daylightOf(2), south, lamps, lightOf(LightKind::dark), daylightOf(3)},
                       "Europe/Copenhagen");
        all.metered.resize(5);
        for (int day = 0; day < 40; day += 3) {
            MeteredSpan span;
            span.from = at("2026-03-10T08:00") + day * minutesPerDay;
            span.to = span.from + (day % 2 == 0 ? 5 : 20) * 60;
            span.seen = day % 4 == 0 ? 1 : 0.7;
            (day % 5 == 0 ? span.nearUltraviolet_Whm2 : span.exposure_lxh) = 20.0 + day;
            all.metered[4].push_back(span);
        }
        return all;
    }

    CivilMinute anyMinute() {
        return std::uniform_int_distribution<CivilMinute>(at("2026-03-01T00:00"),
                                                          at("2026-05-01T00:00"))(m_random);
    }
    int anyPlace() { return std::uniform_int_distribution<int>(0, places - 1)(m_random); }

    static void expectEqual(const Estimate& a, const Estimate& b) {
        const auto close = [](double x, double y) { EXPECT_NEAR(x, y, 1e-9 * (1 + std::abs(y))); };
        close(a.low, b.low);
        close(a.best, b.best);
        close(a.high, b.high);
    }
    static void expectEqual(const LightDose& a, const LightDose& b) {
        expectEqual(a.nearUltraviolet_Whm2, b.nearUltraviolet_Whm2);
        expectEqual(a.sunnyDays, b.sunnyDays);
    }
    static LightDose sum(const LightDose& a, const LightDose& b) {
        const auto add = [](const Estimate& x, const Estimate& y) {
            return Estimate{x.low + y.low, x.best + y.best, x.high + y.high};
        };
        return {add(a.nearUltraviolet_Whm2, b.nearUltraviolet_Whm2), add(a.sunnyDays, b.sunnyDays)};
    }

    static constexpr int places = 5;
    std::mt19937 m_random;
    PlaceUltraviolet m_ultraviolet;
};

TEST_P(DoseLedgerProperty, TheDoseOfATimeIsTheSumOfItsParts) {
    DoseLedger ledger(m_ultraviolet, records());
    for (int round = 0; round < 300; ++round) {
        const int place = anyPlace();
        CivilMinute times[] = {anyMinute(), anyMinute(), anyMinute()};
        // Also splits of one day.
        if (round % 2 == 0)
            times[1] = times[0] + 1 + times[1] % minutesPerDay;
        std::sort(std::begin(times), std::end(times));
        SCOPED_TRACE(testing::Message()
                     << "place " << place << ", " << formatMinute(times[0]) << ", "
                     << formatMinute(times[1]) << ", " << formatMinute(times[2]));
        expectEqual(sum(ledger.at(place, times[0], times[1]), ledger.at(place, times[1], times[2])),
                    ledger.at(place, times[0], times[2]));
    }
}

// But for the hour that clocks leave out in March: no moment is called so.
TEST_P(DoseLedgerProperty, MoreTimeIsNeverLessLight) {
    DoseLedger ledger(m_ultraviolet, records());
    for (int round = 0; round < 40; ++round) {
        const int place = anyPlace();
        const CivilMinute from = anyMinute();
        Estimate before = Estimate::exactly(0);
        for (int step = 1; step < 60; ++step) {
            const CivilMinute to = from + step * 47;
            if (!clocksShowed(from, "Europe/Copenhagen") || !clocksShowed(to, "Europe/Copenhagen"))
                continue;
            const Estimate now = ledger.at(place, from, to).sunnyDays;
            EXPECT_GE(now.low, before.low - 1e-12);
            EXPECT_GE(now.best, before.best - 1e-12);
            EXPECT_GE(now.high, before.high - 1e-12);
            EXPECT_LE(now.low, now.best + 1e-12);
            EXPECT_LE(now.best, now.high + 1e-12);
            before = now;
        }
    }
}

// The sums of days are kept as they are asked for.
TEST_P(DoseLedgerProperty, TheOrderOfQuestionsDoesNotMatter) {
    struct Question {
        int place;
        CivilMinute from;
        CivilMinute to;
    };
    std::vector<Question> questions;
    for (int i = 0; i < 60; ++i) {
        // Years apart, so that sums have to be begun again.
        const CivilMinute years = (i % 7 - 3) * 500 * minutesPerDay;
        const CivilMinute from = anyMinute() + years;
        questions.push_back({anyPlace(), from, from + (i % 3) * 400 + 90 * (i % 11) * 60});
    }
    DoseLedger inOrder(m_ultraviolet, records());
    std::vector<LightDose> doses;
    for (const Question& question : questions)
        doses.push_back(inOrder.at(question.place, question.from, question.to));
    DoseLedger backwards(m_ultraviolet, records());
    for (std::size_t i = questions.size(); i-- > 0;)
        expectEqual(backwards.at(questions[i].place, questions[i].from, questions[i].to), doses[i]);
    for (std::size_t i = 0; i < questions.size(); ++i) {
        DoseLedger alone(m_ultraviolet, records());
        expectEqual(alone.at(questions[i].place, questions[i].from, questions[i].to), doses[i]);
    }
}

// Stays one after the other, or one stay that goes on: the same light.
TEST_P(DoseLedgerProperty, MovesWithinAPlaceChangeNothing) {
    DoseLedger ledger(m_ultraviolet, records());
    for (int round = 0; round < 60; ++round) {
        const int place = anyPlace();
        const CivilMinute from = anyMinute();
        const CivilMinute between = from + 1 + anyMinute() % (3 * minutesPerDay);
        const CivilMinute asOf = between + 1 + anyMinute() % (3 * minutesPerDay);
        const TimeSpan open{endOfTime, endOfTime};
        const LightDose whole =
            ledger.sumSince({stayAt(place, exactly(from), open)}, exactly(from), asOf);
        expectEqual(ledger.sumSince({stayAt(place, exactly(from), exactly(between)),
                                     stayAt(place, exactly(between), open)},
                                    exactly(from), asOf),
                    whole);
        expectEqual(ledger.since({stayAt(place, exactly(from), open)}, exactly(from), asOf).dose,
                    whole);
    }
}

// Between two stays nobody knows where it was. Whenever it left and came within what the dates
// allow, and wherever it was meanwhile, high is no less than what it had then.
TEST_P(DoseLedgerProperty, HighHoldsWheneverAGapBeganAndEnded) {
    DoseLedger ledger(m_ultraviolet, records());
    const CivilMinute pulled = at("2026-02-20T00:00");
    const auto span = [&] {
        const CivilMinute first = anyMinute();
        return TimeSpan{first, first + 1 + anyMinute() % (10 * minutesPerDay)};
    };
    const auto within = [&](const TimeSpan& known) {
        return std::uniform_int_distribution<CivilMinute>(known.earliest, known.latest)(m_random);
    };
    for (int round = 0; round < 60; ++round) {
        const TimeSpan left = span();
        const TimeSpan came = span();
        if (came.latest <= left.earliest)
            continue;
        const CivilMinute asOf = at("2026-05-20T12:00");
        Stay before = stayAt(anyPlace(), exactly(pulled), left);
        before.followed = false;
        const Stay after = stayAt(anyPlace(), came, {endOfTime, endOfTime});
        const LightDose all = ledger.sumSince({before, after}, exactly(pulled), asOf);
        for (int draw = 0; draw < 5; ++draw) {
            const CivilMinute went = within(left);
            const CivilMinute back = within(came);
            if (went > back)
                continue;
            const double high = ledger.at(before.place, pulled, went).sunnyDays.high +
                                ledger.at(-1, went, back).sunnyDays.high +
                                ledger.at(after.place, back, asOf).sunnyDays.high;
            EXPECT_GE(all.sunnyDays.high, high * (1 - 1e-9));
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, DoseLedgerProperty, testing::Values(1U, 7U, 42U));

}  // namespace
}  // namespace rackbook
