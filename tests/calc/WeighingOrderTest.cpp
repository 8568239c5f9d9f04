#include "calc/WeighingOrder.h"

#include <gtest/gtest.h>

#include "PlanFixture.h"

namespace rackbook {
namespace {

using namespace test;

TEST(WeighingOrder, PutsTheSmallestColourFirstThenBaseAndDrierLast) {
    PlanRequest request = requestFor(
        {stageOf(MixPurpose::portion,
                 {{drier, -1, 0.02}, {base, -1, 0.18}, {yellow, -1, 0.5}, {red, -1, 0.3}})});
    const WeighingPlans plans = weighingPlans(request);
    const std::vector<PlanPart>& parts = plans.plans[0].stages[0].parts;
    ASSERT_EQ(parts.size(), 4U);
    EXPECT_EQ(parts[0].lot, red);
    EXPECT_EQ(parts[1].lot, yellow);
    EXPECT_EQ(parts[2].lot, base);
    EXPECT_EQ(parts[3].lot, drier);
    EXPECT_EQ(turnOf(LotKind::modifier), WeighingTurn::colour);
}

}  // namespace
}  // namespace rackbook
