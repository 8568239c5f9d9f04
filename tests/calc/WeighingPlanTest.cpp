#include "calc/WeighingPlan.h"

#include <gtest/gtest.h>

#include <cmath>

#include "PlanFixture.h"
#include "calc/ShareAnalysis.h"

namespace rackbook {
namespace {

using namespace test;

TEST(WeighingPlan, TakesTheRecipeAsItStandsWhereThatIsNearEnough) {
    PlanRequest request = paleBlue(0.4);
    const WeighingPlans plans = weighingPlans(request);
    ASSERT_EQ(plans.plans.size(), 1U);
    EXPECT_EQ(plans.chosen, std::optional<std::size_t>(0));
    const PlanStage& stage = plans.plans[0].stages.at(0);
    EXPECT_EQ(stage.parts[0].mass_g, 24);
    EXPECT_EQ(stage.parts[1].mass_g, 36);
    EXPECT_EQ(plans.plans[0].waste.total_g, 0);
    EXPECT_LE(plans.smallestBatch_g, 60);
}

TEST(WeighingPlan, TellsTheUncertaintyOfAnInkWeighedAsItStands) {
    const WeighingPlans plans = weighingPlans(paleBlue());
    const WeighingPlan* plan = planOf(plans, PlanKind::asItStands);
    ASSERT_NE(plan, nullptr);
    // By hand: u = √(2·0.1²/12 + 0.1²) = 0.10801 g, u(X) = √(0.97² + 0.03²)·u/60 = 0.0017470.
    EXPECT_NEAR(plan->lots[0].uncertainty, 0.0017470, 5e-7);
    EXPECT_NEAR(plan->lots[0].expandedUncertainty(), 0.11646, 5e-5);
    ASSERT_EQ(plan->complaints.size(), 2U);
    EXPECT_EQ(plan->complaints[0].fault, PlanFault::uncertaintyTooLarge);
    EXPECT_EQ(plan->complaints[0].lot, blue);
    EXPECT_EQ(plan->complaints[1].lot, -1);
    EXPECT_FALSE(plan->lots[1].isLimited);
}

TEST(WeighingPlan, GivesTheSmallestBatchInClosedForm) {
    // By hand: 2·0.10801·√(0.97² + 0.03²)/(0.05·0.03) = 139.76 g, whatever is wanted.
    PlanRequest request = paleBlue();
    EXPECT_NEAR(smallestBatch_g(request), 139.76, 0.005);
    request.wanted_g = 5;
    EXPECT_NEAR(smallestBatch_g(request), 139.76, 0.005);
    EXPECT_NEAR(weighingPlans(request).smallestBatch_g, 139.76, 0.005);
    const PlanRequest noInk = requestFor({stageOf(MixPurpose::stock, {{base, -1, 1}})});
    EXPECT_EQ(smallestBatch_g(noInk), 0);
    EXPECT_TRUE(weighingPlans(noInk).plans.at(0).isWithinLimit());
}

TEST(WeighingPlan, MakesTheBatchLittleLargerThanItMustBe) {
    const WeighingPlans plans = weighingPlans(paleBlue());
    const WeighingPlan* plan = planOf(plans, PlanKind::largerBatch);
    ASSERT_NE(plan, nullptr);
    EXPECT_TRUE(plan->isWithinLimit());
    EXPECT_GE(plan->stages[0].total_g, 139.7);
    EXPECT_LE(plan->stages[0].total_g, 145);
    EXPECT_NEAR(plan->waste.total_g, plan->stages[0].total_g - 60, 1e-9);
    EXPECT_EQ(plan->stages[0].taken_g, 60);
}

// Every tint of one colour in base, on the grid of the balance.
double leastTintWaste_g(double share, double limit, double wanted_g) {
    const double u_g = massUncertainty_g({0.1, 0.1});
    double least_g = 1e9;
    for (const int parts : {2, 5, 10, 20, 50}) {
        const double taken_g = std::round(share * wanted_g * (1 + parts) * 10) / 10;
        for (int steps = static_cast<int>(std::lround(taken_g * 10)); steps < 5000; ++steps) {
            const double total_g = steps / 10.0;
            const double ink_g = std::round(total_g / (1 + parts) * 10) / 10;
            std::vector<WeighedStage> stages(2);
            stages[0] = {{{0, -1, ink_g}, {1, -1, total_g - ink_g}}, total_g, taken_g};
            stages[1] = {{{-1, 0, taken_g}, {1, -1, wanted_g - taken_g}}, wanted_g, wanted_g};
            const ShareAnalysis analysis(stages, {true, false});
            const double off = std::fabs(analysis.share(0) - share);
            if (off + 2 * analysis.uncertainty(0, u_g) > limit * share)
                continue;
            least_g = std::min(least_g, total_g - taken_g);
            break;
        }
    }
    return least_g;
}

TEST(WeighingPlan, FindsTheTintThatATrialOfAllOfThemFinds) {
    for (const double share : {0.01, 0.02, 0.03, 0.04}) {
        const WeighingPlans plans = weighingPlans(paleBlue(share));
        const WeighingPlan* plan = planOf(plans, PlanKind::tint);
        ASSERT_NE(plan, nullptr) << share;
        EXPECT_TRUE(plan->isWithinLimit());
        const double made_g = plan->stages[0].total_g;
        EXPECT_NEAR(plan->waste.total_g, leastTintWaste_g(share, 0.05, 60), 0.002 * made_g + 0.1)
            << share;
    }
}

TEST(WeighingPlan, TakesTheBaseOfATintOutOfTheStageItGoesInto) {
    const WeighingPlans plans = weighingPlans(paleBlue());
    ASSERT_EQ(plans.chosen, std::optional<std::size_t>(1));
    const WeighingPlan& plan = plans.plans[1];
    EXPECT_EQ(plan.kind, PlanKind::tint);
    ASSERT_EQ(plan.stages.size(), 2U);
    EXPECT_EQ(plan.stages[0].role, StageRole::tint);
    EXPECT_EQ(plan.stages[0].recipeStage, 0);
    EXPECT_EQ(plan.stages[0].baseParts, 2);
    EXPECT_EQ(plan.stages[1].parts[0].stage, 0);
    EXPECT_EQ(plan.stages[1].parts[0].mass_g, 5.4);
    EXPECT_EQ(plan.stages[1].parts[1].mass_g, 54.6);
    EXPECT_NEAR(plan.waste.ink_g + plan.waste.base_g, plan.waste.total_g, 1e-9);
    EXPECT_NEAR(plan.waste.ink_g, plan.waste.total_g / 3, 0.05);
}

TEST(WeighingPlan, LetsNoColourDownInMoreBaseThanItsStageHas) {
    // A fifth of the stage is base, a twentieth colour: 1 to 2 is all there is base for.
    PlanRequest request = requestFor(
        {stageOf(MixPurpose::stock, {{red, -1, 0.05}, {yellow, -1, 0.75}, {base, -1, 0.2}})});
    request.limit = 0.06;
    const WeighingPlans plans = weighingPlans(request);
    const WeighingPlan* plan = planOf(plans, PlanKind::tint);
    ASSERT_NE(plan, nullptr);
    EXPECT_EQ(plan->stages[0].baseParts, 2);
    // No base at all: nothing to let it down in.
    const WeighingPlans inkOnly = weighingPlans(
        requestFor({stageOf(MixPurpose::stock, {{red, -1, 0.03}, {yellow, -1, 0.97}})}));
    EXPECT_EQ(planOf(inkOnly, PlanKind::tint), nullptr);
    EXPECT_NE(planOf(inkOnly, PlanKind::largerBatch), nullptr);
}

TEST(WeighingPlan, MakesTheStockMixLargerWhereItsOwnWeighingsAreTheWeakPoint) {
    PlanRequest request =
        requestFor({stageOf(MixPurpose::stock, {{blue, -1, 0.9}, {red, -1, 0.1}}),
                    stageOf(MixPurpose::letDown, {{-1, 0, 0.2}, {base, -1, 0.8}})});
    const WeighingPlans plans = weighingPlans(request);
    const WeighingPlan* plan = planOf(plans, PlanKind::largerEarlierStage);
    ASSERT_NE(plan, nullptr);
    EXPECT_TRUE(plan->isWithinLimit());
    EXPECT_EQ(plan->stages[1].total_g, 60);
    EXPECT_EQ(plan->stages[0].taken_g, 12);
    // By hand: 2·0.10801·√(0.9² + 0.1²)/(0.05·0.1) = 39.1 g were the let-down exact.
    EXPECT_GT(plan->stages[0].total_g, 39);
    EXPECT_LT(plan->stages[0].total_g, 46);
    EXPECT_LT(plan->waste.total_g, planOf(plans, PlanKind::largerBatch)->waste.total_g);
    EXPECT_EQ(plan->waste.base_g, 0);
}

TEST(WeighingPlan, WeighsTheColoursOfAStageTogetherWhereThatWastesLess) {
    PlanRequest request = requestFor(
        {stageOf(MixPurpose::stock,
                 {{blue, -1, 0.01}, {red, -1, 0.004}, {yellow, -1, 0.03}, {base, -1, 0.956}})});
    const WeighingPlans plans = weighingPlans(request);
    ASSERT_TRUE(plans.chosen.has_value());
    const WeighingPlan& plan = plans.plans[*plans.chosen];
    EXPECT_EQ(plan.kind, PlanKind::coloursTogether);
    EXPECT_EQ(plan.stages[0].role, StageRole::coloursTogether);
    EXPECT_EQ(plan.stages[0].parts.size(), 4U);
    EXPECT_EQ(plan.stages[1].parts.size(), 2U);
    request.wanted_g = 400;
    const WeighingPlans larger = weighingPlans(request);
    const WeighingPlan* together = planOf(larger, PlanKind::coloursTogether);
    ASSERT_NE(together, nullptr);
    EXPECT_EQ(together->stages[0].baseParts, 0);
    EXPECT_EQ(together->waste.base_g, 0);
}

TEST(WeighingPlan, SaysWhichMassWouldShowAsZero) {
    PlanRequest request = threeStages();
    request.wanted_g = 10;
    const WeighingPlans plans = weighingPlans(request);
    const WeighingPlan* plan = planOf(plans, PlanKind::asItStands);
    const PlanComplaint& complaint = plan->complaints.at(0);
    EXPECT_EQ(complaint.fault, PlanFault::massShowsAsZero);
    EXPECT_EQ(complaint.stage, 0);
    EXPECT_EQ(complaint.part, 0);
    EXPECT_EQ(complaint.lot, red);
    EXPECT_EQ(plan->stages[0].parts[0].lot, red);
    EXPECT_EQ(plan->stages[0].parts[0].mass_g, 0);
    EXPECT_EQ(plan->complaints.at(2).fault, PlanFault::roundedTooFar);
    for (const WeighingPlan& other : plans.plans)
        EXPECT_EQ(other.isWithinLimit(), other.kind != PlanKind::asItStands);
}

TEST(WeighingPlan, DropsPlansThatAreLargerThanAllowed) {
    PlanRequest request = paleBlue();
    request.mostTimes = 2;
    EXPECT_EQ(planOf(weighingPlans(request), PlanKind::largerBatch), nullptr);
    request.mostTimes = 3;
    EXPECT_NE(planOf(weighingPlans(request), PlanKind::largerBatch), nullptr);
    request.limit = 1e-6;
    const WeighingPlans none = weighingPlans(request);
    EXPECT_EQ(none.plans.size(), 1U);
    EXPECT_FALSE(none.chosen.has_value());
}

// 10 g of three equal parts in steps of 0.1 g: two of 3.3 g, and 3.4 g of the base, wherever it
// stands in the recipe.
TEST(WeighingPlan, LeavesWhatRoundingLeavesToTheBaseAmongEqualParts) {
    PlanRequest request = requestFor({stageOf(
        MixPurpose::stock, {{blue, -1, 1.0 / 3}, {red, -1, 1.0 / 3}, {base, -1, 1.0 / 3}})});
    request.wanted_g = 10;
    request.limit = 0.5;
    const WeighingPlans plans = weighingPlans(request);
    for (const PlanPart& part : plans.plans.at(0).stages.at(0).parts)
        EXPECT_NEAR(part.mass_g, part.lot == base ? 3.4 : 3.3, 1e-9) << part.lot;
}

}  // namespace
}  // namespace rackbook
