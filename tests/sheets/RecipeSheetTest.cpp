#include "sheets/RecipeSheet.h"

#include <gtest/gtest.h>

#include <cmath>

#include "InkSheetFacts.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

const test::SheetMeasurer measurer;

PageModel sheetOf(const RecipeFacts& facts, const std::string& language = "en") {
    return recipeSheet(facts, test::shippedTemplate("recipe", recipeSheetRules(), language),
                       measurer, test::fixedClock);
}

// u of one mass: √(2·0.1²/12 + 0.1²) = 0.10801 g; of the share, √(0.97² + 0.03²)·u/60 = 0.0017470;
// twice that over 0.03 is 11.65 %, and over 0.97 it is 0.36 %. 3 % of 60 g are 1.8 g.
TEST(RecipeSheet, WeighsAPaleInkAndTellsHowSureItIs) {
    PlanRequest request = test::paleBlue();
    request.limit = 0.2;
    const PageModel model = sheetOf(test::weighedFacts(std::move(request)));
    const std::string lines = test::linesOf(model);
    EXPECT_NE(lines.find("1.8 | Sea blue (blue-1) | PB15:3 | 3.00"), std::string::npos) << lines;
    EXPECT_NE(lines.find("58.2 | Clear base (base-1) | 97.00"), std::string::npos) << lines;
    EXPECT_NE(lines.find("Sea blue (blue-1) | PB15:3 | 3.000 | 3.000 | 0.0 | 11.6"),
              std::string::npos)
        << lines;
    EXPECT_NE(lines.find("Clear base (base-1) | 97.000 | 97.000 | 0.0 | 0.4"), std::string::npos)
        << lines;
    EXPECT_TRUE(test::says(model, "For 60 g, weighed on: Kitchen balance, in steps of 0.1 g"));
}

// What every step makes is what its parts add up to, and what goes on is what the next one takes.
TEST(RecipeSheet, ShowsEveryStepOfThePlan) {
    const RecipeFacts facts = test::recipeFacts();
    const PageModel model = sheetOf(facts);
    const WeighingPlan& plan = facts.weighing->plan;
    ASSERT_GE(plan.stages.size(), 3u);
    for (std::size_t i = 0; i < plan.stages.size(); ++i) {
        EXPECT_TRUE(test::says(model, "Step " + std::to_string(i + 1) + ": "));
        double sum_g = 0;
        for (const PlanPart& part : plan.stages[i].parts) {
            sum_g += part.mass_g;
            EXPECT_TRUE(test::says(model, formatFixed(part.mass_g, 1) + " "));
        }
        EXPECT_NEAR(sum_g, plan.stages[i].total_g, 1e-9);
        if (plan.stages[i].leftOver_g > 0.05) {
            std::string where = " g wanted, ";
            for (std::size_t later = i + 1; later < plan.stages.size(); ++later)
                for (const PlanPart& part : plan.stages[later].parts)
                    if (part.lot < 0 && part.stage == static_cast<int>(i))
                        where = " g into step " + std::to_string(later + 1) + ", ";
            EXPECT_TRUE(test::says(model, formatFixed(plan.stages[i].taken_g, 1) + where +
                                              formatFixed(plan.stages[i].leftOver_g, 1) +
                                              " g left over"));
        }
    }
    EXPECT_TRUE(test::says(model, "with drier in it, print from it now"));
}

TEST(RecipeSheet, WarnsBeforeTheStepsWhereDrierIsInIt) {
    const std::string all = test::wordsOf(sheetOf(test::recipeFacts()));
    const std::size_t caution = all.find("Driers hold metal compounds");
    ASSERT_NE(caution, std::string::npos);
    EXPECT_LT(caution, all.find("\nHow to weigh it\n"));
    EXPECT_FALSE(
        test::says(sheetOf(test::weighedFacts(test::paleBlue())), "Driers hold metal compounds"));
}

// 2 % of drier with 5 % manganese: 0.1 % of the ink.
TEST(RecipeSheet, FollowsTheMetalsOfTheDrierIntoTheInk) {
    EXPECT_TRUE(test::says(sheetOf(test::recipeFacts()),
                           "The drier brings into the ink: manganese 0.100 %."));
}

TEST(RecipeSheet, GivesTheRangesOfSharesThatAreBadlyKnown) {
    const PageModel model = sheetOf(test::recipeFacts());
    EXPECT_TRUE(test::says(model, "2.550–2.750"));
    EXPECT_TRUE(test::says(model, "Figures with a range are estimates"));
    EXPECT_TRUE(test::says(model, "aimed at 5 g/m²"));
    EXPECT_TRUE(test::says(model, "laid 8.9 (7.8–10.0) g/m² (an estimate)"));
    EXPECT_TRUE(
        test::says(model, "another ink: the share of one part differs by up to 1.20 % of the ink"));
}

TEST(RecipeSheet, DrawsSwatchAndCurveWithTheirConditions) {
    const PageModel model = sheetOf(test::recipeFacts());
    std::size_t swatches = 0;
    std::size_t curves = 0;
    for (const Page& page : model.pages) {
        swatches += page.swatches.size();
        curves += page.curves.size();
    }
    EXPECT_EQ(swatches, 1u);
    EXPECT_EQ(curves, 1u);
    EXPECT_TRUE(test::says(model, "L* 71.9 a* −17.9 b* −5.2"));
    EXPECT_TRUE(test::says(model, "conditions: D50, 2°, M1, white backing"));
    EXPECT_TRUE(test::says(model, "Drawdown: mulberry paper, 5.5 g/m² wet."));
    bool isTold = false;
    for (const StructureElement& element : model.structure)
        isTold =
            isTold || element.alternate.find("lowest 0.35 at 380 nm, highest 0.70 at 730 nm") !=
                          std::string::npos;
    EXPECT_TRUE(isTold);
    RecipeFacts plain = test::recipeFacts();
    plain.colour.reset();
    for (const Page& page : sheetOf(plain).pages)
        EXPECT_TRUE(page.swatches.empty() && page.curves.empty());
}

TEST(RecipeSheet, LeavesRoomForADrawdown) {
    for (const char* language : {"en", "de", "fr", "es", "ja"}) {
        double tallest_mm = 0;
        double widest_mm = 0;
        const PageModel model = sheetOf(test::recipeFacts(), language);
        for (const Rule& rule : model.pages.back().rules) {
            tallest_mm = std::max(tallest_mm, std::abs(rule.toY_mm - rule.fromY_mm));
            widest_mm = std::max(widest_mm, std::abs(rule.toX_mm - rule.fromX_mm));
        }
        EXPECT_GE(tallest_mm, 50) << language;
        EXPECT_GE(widest_mm, 50) << language;
        EXPECT_LE(model.pages.size(), 2u) << language;
        expectTidy(model, Margins{});
    }
}

TEST(RecipeSheet, TellsWhatTheLotsLack) {
    RecipeFacts facts = test::recipeFacts();
    LotService replaced;
    replaced.need = {test::blue, 2};
    replaced.answer = LotAnswer::replaced;
    replaced.by = test::yellow;
    LotService gone;
    gone.need = {test::red, 1};
    gone.answer = LotAnswer::needsColourMatching;
    facts.weighing->services = {replaced, gone};
    facts.weighing->shortages = {{test::base, 70, Estimate::exactly(50)}};
    facts.weighing->jars = {{"Sea stock", Estimate::exactly(12.5), 2.25, true},
                            {"Pale sea", Estimate::exactly(9.85), 58.82, false},
                            {"Old sea", Estimate::exactly(1)}};
    const PageModel model = sheetOf(facts);
    EXPECT_TRUE(test::says(model,
                           "In place of Sea blue (blue-1), which is not there on that day, "
                           "stands Straw yellow (yellow-1)."));
    EXPECT_TRUE(test::says(model, "Brick red (red-1) is not there on that day"));
    EXPECT_TRUE(test::says(model,
                           "By the book Clear base (base-1) holds 50.0 g, and this takes "
                           "70.0 g."));
    EXPECT_TRUE(test::says(model,
                           "12.50 g of “Sea stock” as it was then, and 2.25 g are needed: if it is "
                           "sound, take it from there and leave out its step."));
    // 58.82 − 9.85 = 48.97.
    EXPECT_TRUE(test::says(model,
                           "9.85 g of “Pale sea” as it was then, but 58.82 g are needed: if it is "
                           "sound, use 9.85 g of it and weigh the missing 48.97 g"));
    EXPECT_TRUE(test::says(model, "1.00 g of “Old sea” as it was then."));
    EXPECT_TRUE(test::says(model, "stay within 5 % (our guess, no source) for"));
}

TEST(RecipeSheet, SaysWhyItCannotBeWeighed) {
    RecipeFacts facts = test::recipeFacts();
    facts.weighing.reset();
    facts.whyNot = "weighing sea/1 has no mass";
    EXPECT_TRUE(
        test::says(sheetOf(facts), "The steps cannot be computed: weighing sea/1 has no mass."));
    facts.namesNoMix = true;
    facts.ink = {};
    facts.layer->extenderShare = 0.85;
    const PageModel model = sheetOf(facts);
    EXPECT_TRUE(test::says(model, "No run and no mix is recorded for this layer"));
    EXPECT_TRUE(test::says(model, "As remembered: about 85 % extender."));
    expectTidy(model, Margins{});
}

TEST(RecipeSheet, SaysWhereTheBalanceIsTooCoarse) {
    PlanRequest request = test::paleBlue(0.0001);
    request.wanted_g = 5;
    request.mostTimes = 1;
    request.limit = 1e-4;
    const PageModel model = sheetOf(test::weighedFacts(std::move(request)));
    EXPECT_TRUE(test::says(model, "On this balance the recipe as it stands cannot be weighed"));
    EXPECT_FALSE(test::says(model, "What is in it, weighed so"));
    PlanRequest rough = test::paleBlue();
    rough.mostTimes = 1;
    rough.limit = 0.01;
    EXPECT_TRUE(test::says(sheetOf(test::weighedFacts(std::move(rough))),
                           "No way of weighing keeps every colour within 1 %"));
}

TEST(RecipeSheet, TellsNothingPrivate) {
    const std::string all = test::wordsOf(sheetOf(test::recipeFacts()));
    for (const char* word : {"1234", "Secret", "private"})
        EXPECT_EQ(all.find(word), std::string::npos) << word;
}

}  // namespace
}  // namespace rackbook
