#include "calc/WeighingOrder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "PlanFixture.h"

namespace rackbook {
namespace {

using namespace test;

const BalanceFigures tenths{0.1, 0.1};

// 2 g of red, 5 g of blue, 93 g of base.
PlanStage threeParts() {
    PlanStage stage;
    stage.parts = {{red, -1, 0.02, 2}, {blue, -1, 0.05, 5}, {base, -1, 0.93, 93}};
    stage.total_g = 100;
    return stage;
}

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

TEST(WeighingOrder, ScalesTheRestToAnOvershoot) {
    const RescaledStage after = rescaled(threeParts(), {2.4}, tenths);
    EXPECT_NEAR(after.factor, 1.2, 1e-12);
    EXPECT_EQ(after.add_g, (std::vector<double>{0, 6, 111.6}));
    EXPECT_NEAR(after.total_g, 120, 1e-9);
}

TEST(WeighingOrder, TopsUpWhatTheLargestOvershootLeavesShort) {
    const RescaledStage after = rescaled(threeParts(), {2.1, 6}, tenths);
    EXPECT_NEAR(after.factor, 1.2, 1e-12);
    EXPECT_EQ(after.add_g, (std::vector<double>{0.3, 0, 111.6}));
}

TEST(WeighingOrder, ChangesNothingWhereAllWentAsPlanned) {
    const RescaledStage after = rescaled(threeParts(), {2, 5}, tenths);
    EXPECT_EQ(after.factor, 1);
    EXPECT_EQ(after.add_g, (std::vector<double>{0, 0, 93}));
    EXPECT_EQ(rescaled(threeParts(), {}, tenths).add_g, (std::vector<double>{2, 5, 93}));
}

TEST(WeighingOrder, TopsUpAShortWeighingAndScalesNothingDown) {
    const RescaledStage after = rescaled(threeParts(), {1.7}, tenths);
    EXPECT_EQ(after.factor, 1);
    EXPECT_EQ(after.add_g, (std::vector<double>{0.3, 5, 93}));
}

TEST(WeighingOrder, RefusesMassesThatCannotBe) {
    EXPECT_EQ(refusalOf([] {
                  rescaled(threeParts(), {1, 1, 1, 1}, tenths);
              }),
              "stage: 4 masses are given for 3 parts. Give the masses of the parts that were "
              "weighed so far.");
    EXPECT_EQ(refusalOf([] { rescaled(threeParts(), {-1}, tenths); }),
              "correction, part 1: its mass in the dish is -1 g. Give a mass of 0 g or more.");
    EXPECT_NE(refusalOf([] { rescaled(threeParts(), {std::nan("")}, tenths); }), "");
    EXPECT_NE(refusalOf([] { rescaled(threeParts(), {2}, {0, 0}); }), "");
}

}  // namespace
}  // namespace rackbook
