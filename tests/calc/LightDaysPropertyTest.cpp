// Whatever the true times of badly dated moves were, the days in light lie between the bounds.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

#include "calc/LightDays.h"

namespace rackbook {
namespace {

constexpr CivilMinute end = 100 * minutesPerDay;
constexpr int placeCount = 4;

// Two lit places, a dark one and one whose light is not stated.
History placesOfEachLight() {
    History history;
    history.places.resize(placeCount);
    const LightKind kinds[] = {LightKind::daylight, LightKind::metered, LightKind::dark};
    for (std::size_t i = 0; i < 3; ++i) {
        history.light.push_back({{beginningOfTime, beginningOfTime}, kinds[i]});
        history.places[i].lightBegin = i;
        history.places[i].lightEnd = i + 1;
    }
    history.impressions.resize(1);
    return history;
}

struct Truth {
    std::vector<CivilMinute> at;  // of each move, ascending
    std::vector<int> to;
    bool unstatedIsLit = false;
    bool unknownIsLit = false;  // before the first move

    CivilMinute lit_min(CivilMinute pulled) const {
        CivilMinute sum = 0;
        CivilMinute from = pulled;
        bool lit = unknownIsLit;
        for (std::size_t i = 0; i < at.size(); ++i) {
            if (lit && at[i] > from)
                sum += at[i] - from;
            from = std::max(from, at[i]);
            lit = to[i] < 2 || (to[i] == 3 && unstatedIsLit);
        }
        return sum + (lit ? end - from : 0);
    }
};

class LightDaysProperty : public testing::TestWithParam<unsigned> {
protected:
    LightDaysProperty() : m_random(GetParam()) {}

    CivilMinute below(CivilMinute n) {
        return std::uniform_int_distribution<CivilMinute>(0, n - 1)(m_random);
    }

    // Exact, or known to a span of some days around the truth.
    TimeSpan spanAround(CivilMinute minute) {
        if (below(2) == 0)
            return {minute, minute};
        const CivilMinute width = minutesPerDay * (1 + below(15));
        const CivilMinute before = below(width);
        return {minute - before, minute - before + width};
    }

    Truth makeTruth() {
        Truth truth;
        const CivilMinute moves = 1 + below(6);
        for (CivilMinute i = 0; i < moves; ++i) {
            truth.at.push_back(below(end));
            truth.to.push_back(static_cast<int>(below(placeCount)));
        }
        std::sort(truth.at.begin(), truth.at.end());
        truth.unstatedIsLit = below(2) == 0;
        truth.unknownIsLit = below(2) == 0;
        return truth;
    }

    std::mt19937 m_random;
};

TEST_P(LightDaysProperty, TheTruthLiesBetweenTheBounds) {
    for (int round = 0; round < 500; ++round) {
        History history = placesOfEachLight();
        const Truth truth = makeTruth();
        for (std::size_t i = 0; i < truth.at.size(); ++i) {
            HistoryMove move;
            move.to = truth.to[i];
            move.at = spanAround(truth.at[i]);
            history.moves.push_back(move);
            history.movesOf.items.push_back(static_cast<std::uint32_t>(i));
        }
        history.movesOf.offsets = {0, static_cast<std::uint32_t>(truth.at.size())};
        const CivilMinute pulled = below(end);
        std::vector<Stay> stays;
        staysOf(history, 0, end, stays);
        const PlaceLight light(history);
        LightDays days(light, spanAround(pulled), end);
        days.passUnknown({beginningOfTime, beginningOfTime},
                         stays.empty() ? TimeSpan{endOfTime, endOfTime} : stays.front().from);
        for (const Stay& stay : stays)
            days.passStay(stay);
        const double lit = static_cast<double>(truth.lit_min(pulled)) / minutesPerDay;
        EXPECT_LE(days.low(), lit + 1e-9) << "round " << round;
        EXPECT_GE(days.high(), lit - 1e-9) << "round " << round;
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, LightDaysProperty, testing::Values(1U, 7U, 42U, 2026U));

}  // namespace
}  // namespace rackbook
