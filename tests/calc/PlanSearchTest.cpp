#include "calc/PlanSearch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "PlanFixture.h"
#include "calc/PlanTrial.h"

namespace rackbook {
namespace {

using namespace test;

// Red and yellow in base, most of it blue.
PlanRequest littleBase() {
    return requestFor(
        {stageOf(MixPurpose::stock,
                 {{red, -1, 0.05}, {yellow, -1, 0.02}, {blue, -1, 0.73}, {base, -1, 0.2}})});
}

double shareIn(const LayoutStage& stage) {
    double sum = 0;
    for (const LayoutPart& part : stage.parts)
        sum += part.share;
    return sum;
}

TEST(PlanLayout, TakesTheBaseOfATintFromItsStageAndNoMoreThanThereIs) {
    const PlanCase planCase(littleBase());
    const Layout layout = layoutOf(littleBase().recipe, planCase);
    EXPECT_TRUE(withTints(layout, {{0, 0, 2}, {0, 1, 5}}, planCase).has_value());
    EXPECT_FALSE(withTints(layout, {{0, 0, 2}, {0, 1, 10}}, planCase).has_value());
    EXPECT_FALSE(withTints(layout, {{0, 0, 5}}, planCase).has_value());
    const Layout tinted = *withTints(layout, {{0, 0, 2}, {0, 1, 5}}, planCase);
    ASSERT_EQ(tinted.size(), 3U);
    for (const LayoutStage& stage : tinted)
        EXPECT_NEAR(shareIn(stage), 1, 1e-12);
    // Of 20 % base, 10 % each went into the tints: none is left.
    EXPECT_EQ(tinted[2].parts.size(), 3U);
    const PlanTrial trial(tinted, planCase, Rounding::exact);
    for (std::size_t column = 0; column < planCase.recipe.size(); ++column)
        EXPECT_NEAR(trial.analysis().share(column), planCase.recipe[column], 1e-12);
}

TEST(PlanLayout, KeepsTheSharesWhereColoursAreWeighedTogether) {
    const PlanCase planCase(littleBase());
    const Layout layout = layoutOf(littleBase().recipe, planCase);
    EXPECT_FALSE(withColoursTogether(layout, 0, 2, planCase).has_value());
    for (const double parts : {0.0, 0.25}) {
        const std::optional<Layout> together = withColoursTogether(layout, 0, parts, planCase);
        ASSERT_TRUE(together.has_value());
        const PlanTrial trial(*together, planCase, Rounding::exact);
        for (std::size_t column = 0; column < planCase.recipe.size(); ++column)
            EXPECT_NEAR(trial.analysis().share(column), planCase.recipe[column], 1e-12);
    }
}

// The least waste of two earlier stages of exact masses, by trying sizes of both.
double leastWaste_g(const Layout& layout, const PlanCase& planCase) {
    double least_g = 1e9;
    for (double second_g = 60; second_g < 400; second_g += 1) {
        Layout changed = layout;
        changed[1].least_g = second_g;
        double low_g = 0;
        double high_g = 1000;
        for (int i = 0; i < 40; ++i) {
            changed[0].least_g = (low_g + high_g) / 2;
            const bool isWithin = PlanTrial(changed, planCase, Rounding::exact).isWithin();
            (isWithin ? high_g : low_g) = changed[0].least_g;
        }
        changed[0].least_g = high_g;
        const PlanTrial trial(changed, planCase, Rounding::exact);
        if (trial.isWithin())
            least_g = std::min(least_g, trial.waste_g());
    }
    return least_g;
}

TEST(PlanSearch, SplitsWhatIsMadeBeyondNeedBetweenStagesWithLittleWaste) {
    PlanRequest request = threeStages();
    request.balance.readability_g = 0.01;
    for (const double limit : {0.05, 0.08, 0.15}) {
        request.limit = limit;
        const PlanCase planCase(request);
        const Layout layout = layoutOf(request.recipe, planCase);
        const std::optional<Layout> found = enlargedBefore(layout, planCase);
        ASSERT_TRUE(found.has_value()) << limit;
        const double waste_g = PlanTrial(*found, planCase, Rounding::toReadability).waste_g();
        EXPECT_LT(waste_g, 1.03 * leastWaste_g(layout, planCase)) << limit;
    }
}

TEST(PlanSearch, MakesNoStageLargerThanTheOthersCallFor) {
    PlanRequest request = requestFor(
        {stageOf(MixPurpose::stock, {{blue, -1, 0.02}, {red, -1, 0.01}, {base, -1, 0.97}})});
    const PlanCase planCase(request);
    const auto tinted =
        withTints(layoutOf(request.recipe, planCase), {{0, 0, 5}, {0, 1, 10}}, planCase);
    const std::optional<Layout> found = enlargedBefore(*tinted, planCase);
    ASSERT_TRUE(found.has_value());
    for (std::size_t stage = 0; stage < 2; ++stage) {
        Layout smaller = *found;
        smaller[stage].least_g *= 0.95;
        EXPECT_FALSE(PlanTrial(smaller, planCase, Rounding::exact).isWithin()) << stage;
    }
}

TEST(PlanSearch, LetsEachColourDownByItself) {
    const PlanRequest request = requestFor(
        {stageOf(MixPurpose::stock,
                 {{blue, -1, 0.01}, {red, -1, 0.004}, {yellow, -1, 0.03}, {base, -1, 0.956}})});
    const PlanCase planCase(request);
    const Layout layout = layoutOf(request.recipe, planCase);
    double alike_g = 1e9;
    for (const double parts : {2.0, 5.0, 10.0, 20.0, 50.0}) {
        const auto tinted =
            withTints(layout, {{0, 0, parts}, {0, 1, parts}, {0, 2, parts}}, planCase);
        const auto sized = tinted ? enlargedBefore(*tinted, planCase) : std::nullopt;
        if (sized)
            alike_g =
                std::min(alike_g, PlanTrial(*sized, planCase, Rounding::toReadability).waste_g());
    }
    const WeighingPlans plans = weighingPlans(request);
    const WeighingPlan* plan = planOf(plans, PlanKind::tint);
    ASSERT_NE(plan, nullptr);
    EXPECT_LT(plan->waste.total_g, 0.9 * alike_g);
}

// The weakest weighings are those into the stock mix, which has no base to let anything down in; it
// is made larger instead, and what is taken of it is let down.
TEST(PlanSearch, LetsDownAStockMixThatIsMadeLarger) {
    const PlanRequest request =
        requestFor({stageOf(MixPurpose::stock, {{blue, -1, 0.75}, {red, -1, 0.25}}),
                    stageOf(MixPurpose::letDown, {{base, -1, 0.98}, {-1, 0, 0.02}})});
    const WeighingPlans plans = weighingPlans(request);
    const WeighingPlan* plan = planOf(plans, PlanKind::tint);
    ASSERT_NE(plan, nullptr);
    ASSERT_EQ(plan->stages.size(), 3U);
    EXPECT_GT(plan->stages[0].leftOver_g, 0);
    EXPECT_EQ(plan->stages[1].role, StageRole::tint);
    EXPECT_EQ(plan->stages[1].parts.front().stage, 0);
    const WeighingPlan* larger = planOf(plans, PlanKind::largerBatch);
    ASSERT_NE(larger, nullptr);
    EXPECT_LT(plan->waste.total_g, 0.5 * larger->waste.total_g);
}

}  // namespace
}  // namespace rackbook
