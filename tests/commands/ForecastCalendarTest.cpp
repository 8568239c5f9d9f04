#include "commands/ForecastCalendar.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

ForecastGroup groupOf(std::vector<int> numbers) {
    ForecastGroup group;
    group.edition = "TIDE";
    group.numbers = std::move(numbers);
    return group;
}

std::vector<CalendarEntry> remindersFor(std::vector<ForecastGroup> groups, Verdict verdict) {
    Readiness readiness;
    readiness.rows.resize(1);
    readiness.rows[0].verdict = verdict;
    ForecastPlan plan;
    plan.groups = std::move(groups);
    return remindersOf(plan, readiness, History{}, HouseRules());
}

// A calendar that has the reminder of all of them moves it, instead of keeping it beside new ones.
TEST(ForecastCalendar, TheFirstPartOfAGroupKeepsItsReminder) {
    const auto whole = remindersFor({groupOf({1, 2, 3, 4})}, Verdict::lookDue);
    const auto parted = remindersFor({groupOf({1, 3}), groupOf({2, 4})}, Verdict::lookDue);
    ASSERT_EQ(whole.size(), 1u);
    ASSERT_EQ(parted.size(), 2u);
    EXPECT_EQ(parted[0].uid, whole[0].uid);
    EXPECT_NE(parted[1].uid, whole[0].uid);
    EXPECT_NE(remindersFor({groupOf({1, 2})}, Verdict::bringOut).at(0).uid, whole[0].uid);
}

}  // namespace
}  // namespace rackbook
