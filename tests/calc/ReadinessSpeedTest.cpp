#include <gtest/gtest.h>

#include <chrono>

#include "calc/Readiness.h"

namespace rackbook {
namespace {

constexpr std::size_t impressionCount = 100000;
constexpr std::uint32_t each = 6;

RowLists listsOf(std::size_t rows) {
    RowLists lists;
    lists.offsets.push_back(0);
    for (std::uint32_t i = 0; i < impressionCount; ++i) {
        for (std::uint32_t k = 0; k < each; ++k)
            lists.items.push_back(static_cast<std::uint32_t>((i / 30 * each + k) % rows));
        lists.offsets.push_back(static_cast<std::uint32_t>(lists.items.size()));
    }
    return lists;
}

// Editions of thirty, each with pulls of its own, hung and put away between them.
History bigHistory() {
    History history;
    const std::size_t rows = impressionCount / 30 * each;
    history.lots = {LotKind::ink, LotKind::base, LotKind::drier};
    history.mixCount = rows;
    history.places.resize(2);
    history.light = {{{beginningOfTime, beginningOfTime}, LightKind::daylight},
                     {{beginningOfTime, beginningOfTime}, LightKind::dark}};
    history.places[0].lightEnd = 1;
    history.places[1].lightBegin = 1;
    history.places[1].lightEnd = 2;
    history.layers.resize(each);
    for (std::size_t row = 0; row < rows; ++row) {
        const auto step = static_cast<CivilMinute>(row % each);
        const CivilMinute start = step * 10 * minutesPerDay;
        HistoryWeighing weighing;
        weighing.mix = static_cast<int>(row);
        weighing.lot = 1;
        weighing.at = {start, start};
        weighing.mass_g = 30;
        history.weighings.push_back(weighing);
        history.pulls.push_back({static_cast<int>(row % each),
                                 static_cast<int>(row),
                                 {start, start + minutesPerDay - 1},
                                 10});
        HistoryMove move;
        move.to = static_cast<int>(row % 2);
        move.at = {start + minutesPerDay, start + 2 * minutesPerDay - 1};
        history.moves.push_back(move);
        HistoryLook look;
        look.at = move.at;
        look.hasColour = look.hasTouch = true;
        history.looks.push_back(look);
    }
    history.impressions.resize(impressionCount);
    history.pullsOf = listsOf(rows);
    history.movesOf = listsOf(rows);
    history.looksOf = listsOf(rows);
    return history;
}

TEST(ReadinessSpeed, AssessesAHundredThousandImpressionsInNoTime) {
    const History history = bigHistory();
    const auto begin = std::chrono::steady_clock::now();
    const Readiness readiness = readinessOf(history, HouseRules(), 100 * minutesPerDay);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    RecordProperty("took_ms", std::to_string(took.count()));
    EXPECT_EQ(readiness.rows.size(), impressionCount);
    EXPECT_EQ(readiness.rows.front().verdict, Verdict::bringOut);
    // Well under 400 ms with optimisation; generous for sanitizers and busy machines.
    EXPECT_LT(took.count(), 4000);
}

}  // namespace
}  // namespace rackbook
