// Requests that cannot be answered, with the exact words of the refusal.
#include <gtest/gtest.h>

#include <limits>

#include "PlanFixture.h"

namespace rackbook {
namespace {

using namespace test;

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();

std::string refusal(const PlanRequest& request) {
    const std::string words = refusalOf([&] { weighingPlans(request); });
    EXPECT_EQ(words, refusalOf([&] { smallestBatch_g(request); }));
    return words;
}

std::string refusalOfMass(double wanted_g) {
    PlanRequest request = paleBlue();
    request.wanted_g = wanted_g;
    return refusal(request);
}

std::string refusalOfLimit(double limit) {
    PlanRequest request = paleBlue();
    request.limit = limit;
    return refusal(request);
}

std::string refusalOfCap(double times) {
    PlanRequest request = paleBlue();
    request.mostTimes = times;
    return refusal(request);
}

std::string refusalOfParts(std::vector<RecipePart> parts) {
    return refusal(requestFor({stageOf(MixPurpose::stock, std::move(parts))}));
}

TEST(PlanInput, RefusesFiguresThatCannotBe) {
    EXPECT_EQ(refusalOfMass(0), "plan: the mass wanted is 0 g. Give a mass above 0 g.");
    EXPECT_EQ(refusalOfMass(-60), "plan: the mass wanted is -60 g. Give a mass above 0 g.");
    EXPECT_EQ(refusalOfMass(notANumber), "plan: the mass wanted is nan g. Give a mass above 0 g.");
    EXPECT_EQ(refusalOfMass(infinite), "plan: the mass wanted is inf g. Give a mass above 0 g.");
    EXPECT_EQ(refusalOfLimit(0),
              "plan: the limit on the uncertainty is 0 %. Give one above 0 % and below 100 %.");
    EXPECT_EQ(refusalOfLimit(1),
              "plan: the limit on the uncertainty is 100 %. Give one above 0 % and below 100 %.");
    EXPECT_EQ(refusalOfLimit(notANumber),
              "plan: the limit on the uncertainty is nan %. Give one above 0 % and below 100 %.");
    EXPECT_EQ(refusalOfCap(0.5),
              "plan: the largest stage allowed is 0.5 times the mass wanted. Give 1 or more.");
    EXPECT_EQ(refusalOfCap(infinite),
              "plan: the largest stage allowed is inf times the mass wanted. Give 1 or more.");
    PlanRequest request = paleBlue();
    request.balance.readability_g = 0;
    EXPECT_EQ(refusal(request),
              "balance: the readability is 0 g. Give the smallest step of its display, above 0 g.");
}

TEST(PlanInput, RefusesSharesThatMakeNoWhole) {
    EXPECT_EQ(refusalOfParts({{blue, -1, 0.03}, {base, -1, 0.96}}),
              "recipe, stage 1: its shares add up to 99 %. Make them add up to 100 %.");
    EXPECT_EQ(refusalOfParts({{blue, -1, 0.03}, {base, -1, 0.97000001}}),
              "recipe, stage 1: its shares add up to 100.000001 %. Make them add up to 100 %.");
    EXPECT_EQ(refusalOfParts({}),
              "recipe, stage 1: its shares add up to 0 %. Make them add up to 100 %.");
    EXPECT_EQ(refusalOfParts({{blue, -1, 0}, {base, -1, 1}}),
              "recipe, stage 1, part 1: its share is 0 %. Give a share above 0 % and at most "
              "100 %.");
    EXPECT_NE(refusalOfParts({{blue, -1, notANumber}, {base, -1, 1}}), "");
    EXPECT_NE(refusalOfParts({{blue, -1, -0.1}, {base, -1, 1.1}}), "");
    EXPECT_EQ(refusalOfParts({{blue, -1, 1e-10}, {base, -1, 1}}), "");
}

TEST(PlanInput, RefusesPartsThatAreNotThere) {
    EXPECT_EQ(refusalOfParts({{99, -1, 1}}),
              "recipe, stage 1, part 1: there is no such lot. Name a lot of the book.");
    EXPECT_EQ(refusalOfParts({{-1, -1, 1}}),
              "recipe, stage 1, part 1: it is neither a lot nor a stage. Name one of them.");
    EXPECT_EQ(refusalOfParts({{blue, 0, 1}}),
              "recipe, stage 1, part 1: it is both a lot and a stage. Name one of them.");
    EXPECT_EQ(refusal(requestFor({})), "recipe: it has no stages. Give at least one.");
}

TEST(PlanInput, RefusesStagesOutOfOrder) {
    PlanRequest request = threeStages();
    request.recipe.stages[1].name = "let-down";
    request.recipe.stages[1].parts[1].stage = 2;
    EXPECT_EQ(refusal(request),
              "recipe, stage 2 (let-down), part 2: it takes from a stage that is not made before "
              "it. Put the stage that it takes from first.");
    request.recipe.stages[1].parts[1].stage = 1;
    EXPECT_NE(refusal(request), "");
    request.recipe.stages[1].parts[1] = {blue, -1, 0.03};
    EXPECT_EQ(refusal(request),
              "recipe, stage 1: nothing takes from it. Leave it out, or let a later stage take "
              "from it.");
}

TEST(PlanInput, RefusesDrierInAStageThatIsKept) {
    PlanRequest request = threeStages();
    request.recipe.stages[1].parts = {{base, -1, 0.95}, {-1, 0, 0.03}, {drier, -1, 0.02}};
    EXPECT_EQ(refusal(request),
              "recipe, stage 2: drier goes in, and it is no portion. Put the drier into a portion, "
              "where it starts the clock last.");
}

}  // namespace
}  // namespace rackbook
