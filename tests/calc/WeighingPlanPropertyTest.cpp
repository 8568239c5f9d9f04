// What holds for every plan, tried on random recipes from fixed seeds.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "PlanFixture.h"
#include "calc/WeighingOrder.h"

namespace rackbook {
namespace {

using namespace test;

PlanRequest randomRequest(unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> unit(0.02, 1);
    std::vector<RecipeStage> stages;
    const std::size_t count = 1 + random() % 3;
    for (std::size_t i = 0; i < count; ++i) {
        const bool isPortion = i + 1 == count && random() % 2 == 0;
        RecipeStage stage =
            stageOf(isPortion ? MixPurpose::portion : MixPurpose::letDown,
                    {{blue, -1, std::pow(unit(random), 3)}, {base, -1, 3 * unit(random)}});
        if (random() % 2 == 0)
            stage.parts.push_back({red, -1, std::pow(unit(random), 3)});
        if (isPortion)
            stage.parts.push_back({drier, -1, 0.05});
        if (i > 0)
            stage.parts.push_back({-1, static_cast<int>(i) - 1, unit(random)});
        double sum = 0;
        for (const RecipePart& part : stage.parts)
            sum += part.share;
        for (RecipePart& part : stage.parts)
            part.share /= sum;
        stages.push_back(std::move(stage));
    }
    PlanRequest request = requestFor(std::move(stages));
    request.wanted_g = 5 + 200 * unit(random);
    request.limit = 0.01 + 0.2 * unit(random);
    const double readabilities_g[] = {0.01, 0.1, 0.5, 1};
    request.balance.readability_g = readabilities_g[random() % 4];
    request.balance.repeatability_g = request.balance.readability_g * unit(random);
    return request;
}

double shareOf(const WeighingPlan& plan, const PlanStage& stage, int lot) {
    double sum = 0;
    // A stage of which so little is needed that nothing is weighed.
    if (stage.total_g == 0)
        return 0;
    for (const PlanPart& part : stage.parts) {
        const double content =
            part.stage >= 0 ? shareOf(plan, plan.stages[static_cast<std::size_t>(part.stage)], lot)
                            : (part.lot == lot ? 1.0 : 0.0);
        sum += part.mass_g / stage.total_g * content;
    }
    return sum;
}

void checkMasses(const PlanRequest& request, const WeighingPlan& plan) {
    double waste_g = 0;
    std::vector<double> taken_g(plan.stages.size());
    for (std::size_t i = 0; i < plan.stages.size(); ++i) {
        const PlanStage& stage = plan.stages[i];
        double sum_g = 0;
        for (const PlanPart& part : stage.parts) {
            ASSERT_GE(part.mass_g, 0);
            ASSERT_NEAR(part.mass_g, roundedToReadability_g(part.mass_g, request.balance), 1e-9);
            sum_g += part.mass_g;
            if (part.stage >= 0) {
                ASSERT_LT(part.stage, static_cast<int>(i));
                taken_g[static_cast<std::size_t>(part.stage)] += part.mass_g;
            }
        }
        ASSERT_NEAR(stage.total_g, sum_g, 1e-9);
        waste_g += stage.leftOver_g;
    }
    for (std::size_t i = 0; i < plan.stages.size(); ++i) {
        const PlanStage& stage = plan.stages[i];
        const bool isLast = i + 1 == plan.stages.size();
        ASSERT_NEAR(stage.taken_g, isLast ? request.wanted_g : taken_g[i], 1e-9);
        ASSERT_NEAR(stage.total_g, stage.taken_g + stage.leftOver_g, 1e-9);
        ASSERT_GE(stage.leftOver_g, 0);
    }
    ASSERT_NEAR(plan.waste.total_g, waste_g, 1e-9);
    ASSERT_NEAR(plan.waste.total_g, plan.waste.ink_g + plan.waste.base_g + plan.waste.other_g,
                1e-9);
}

void checkShares(const PlanRequest& request, const WeighingPlan& plan) {
    bool isWithin = true;
    double planned = 0;
    for (const PlannedShare& share : plan.lots) {
        ASSERT_NEAR(share.planned, shareOf(plan, plan.stages.back(), share.lot), 1e-12);
        planned += share.planned;
        const bool isInk = planLots[static_cast<std::size_t>(share.lot)] == LotKind::ink;
        ASSERT_EQ(share.isLimited, isInk);
        if (isInk)
            isWithin &=
                std::fabs(share.deviation()) + share.expandedUncertainty() <= request.limit + 1e-9;
    }
    ASSERT_NEAR(planned, 1, 1e-12);
    isWithin &= std::fabs(plan.colour.deviation()) + plan.colour.expandedUncertainty() <=
                request.limit + 1e-9;
    for (const PlanStage& stage : plan.stages)
        for (const PlanPart& part : stage.parts)
            isWithin &= part.mass_g > 0;
    ASSERT_EQ(plan.isWithinLimit(), isWithin);
}

bool carriesInk(const WeighingPlan& plan, const PlanPart& part) {
    if (part.lot >= 0)
        return planLots[static_cast<std::size_t>(part.lot)] == LotKind::ink;
    const auto& parts = plan.stages[static_cast<std::size_t>(part.stage)].parts;
    return std::any_of(parts.begin(), parts.end(),
                       [&plan](const PlanPart& from) { return carriesInk(plan, from); });
}

WeighingTurn turnOfPart(const WeighingPlan& plan, const PlanPart& part) {
    if (part.lot >= 0)
        return turnOf(planLots[static_cast<std::size_t>(part.lot)]);
    return carriesInk(plan, part) ? WeighingTurn::colour : WeighingTurn::base;
}

void checkOrder(const WeighingPlan& plan) {
    for (const PlanStage& stage : plan.stages)
        for (std::size_t i = 1; i < stage.parts.size(); ++i) {
            const PlanPart& before = stage.parts[i - 1];
            const PlanPart& after = stage.parts[i];
            ASSERT_FALSE(isWeighedBefore({turnOfPart(plan, after), after.mass_g},
                                         {turnOfPart(plan, before), before.mass_g}));
        }
}

TEST(WeighingPlanProperty, EveryPlanAddsUpAndSaysOfItselfWhatIsSo) {
    std::size_t several = 0;
    for (unsigned seed = 0; seed < 300; ++seed) {
        SCOPED_TRACE(seed);
        const PlanRequest request = randomRequest(seed);
        const WeighingPlans plans = weighingPlans(request);
        several += plans.plans.size() > 2 ? 1U : 0U;
        ASSERT_NE(planOf(plans, PlanKind::asItStands), nullptr);
        for (std::size_t i = 0; i < plans.plans.size(); ++i) {
            const WeighingPlan& plan = plans.plans[i];
            checkMasses(request, plan);
            checkShares(request, plan);
            checkOrder(plan);
            ASSERT_TRUE(plan.isWithinLimit() || plan.kind == PlanKind::asItStands);
            ASSERT_TRUE(i == 0 || plans.plans[i - 1].waste.total_g <= plan.waste.total_g + 1e-9);
            ASSERT_TRUE(!plans.chosen || i >= *plans.chosen || !plan.isWithinLimit());
            for (const PlanStage& stage : plan.stages)
                ASSERT_LE(stage.total_g,
                          request.mostTimes * request.wanted_g + 2 * request.balance.readability_g);
        }
    }
    // The recipes are such that there is something to choose from.
    EXPECT_GT(several, 100U);
}

TEST(WeighingPlanProperty, ALargerBatchIsNeverFarBelowTheClosedForm) {
    for (unsigned seed = 0; seed < 300; ++seed) {
        SCOPED_TRACE(seed);
        const PlanRequest request = randomRequest(seed);
        const WeighingPlans plans = weighingPlans(request);
        const WeighingPlan* larger = planOf(plans, PlanKind::largerBatch);
        if (!larger)
            continue;
        // Rounding moves shares by no more than the limit, and the uncertainty with them.
        const double made_g = larger->stages.back().total_g;
        ASSERT_GE(made_g, plans.smallestBatch_g * (1 - 2 * request.limit));
    }
}

}  // namespace
}  // namespace rackbook
