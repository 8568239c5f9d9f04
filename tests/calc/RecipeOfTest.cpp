#include "calc/RecipeOf.h"

#include <gtest/gtest.h>

#include "calc/HistoryOf.h"
#include "calc/RecipeShares.h"
#include "support/Build.h"

namespace rackbook {
namespace {

using build::Book;

enum Lots { base, blue, cobalt, black };
enum Mixes { stock, letDown, portion };

// Lots base, blue, cobalt, black; mixes stock, let-down, portion.
class RecipeOfTest : public testing::Test {
protected:
    RecipeOfTest() {
        book.lot("base", LotKind::base).lot("blue", LotKind::ink).lot("cobalt", LotKind::drier);
        book.lot("black", LotKind::ink);
        book.mix("stock", MixPurpose::stock).mix("let-down", MixPurpose::letDown);
        book.mix("portion", MixPurpose::portion);
        book.edition("e").layer("e", 1);
        book.addLot("stock", "blue", 30, "2026-03-01T10:00");
        book.addLot("stock", "black", 10, "2026-03-01T10:01");
    }

    void pull(const std::string& at, double ink_g = 1) {
        book.pull("e-layer1", at, {}, [&](Pull& r) {
            r.portion = Ref<Mix>{"portion"};
            if (ink_g > 0) {
                r.inkBefore_g = ink_g;
                r.inkAfter_g = 0;
            }
        });
    }

    RecipeOf recipes() {
        history = historyOf(book.records);
        std::vector<RecipeMix> mixes;
        for (const Mix& mix : book.records.of<Mix>())
            mixes.push_back({mix.name, mix.purpose});
        return RecipeOf(history, mixes);
    }

    static void expectPart(const RecipePart& part, int lot, int stage, double share) {
        EXPECT_EQ(part.lot, lot);
        EXPECT_EQ(part.stage, stage);
        EXPECT_NEAR(part.share, share, 1e-12);
    }

    Book book;
    History history;
};

TEST_F(RecipeOfTest, GoesDownThroughEveryParent) {
    book.addMix("let-down", "stock", 4, "2026-03-02T10:00");
    book.addLot("let-down", "base", 36, "2026-03-02T10:01");
    book.addMix("portion", "let-down", 20, "2026-03-03T10:00");
    book.addLot("portion", "cobalt", 0.5, "2026-03-03T10:01");
    pull("2026-03-03T11:00");
    const RecipeFound found = recipes().atPull(0);
    ASSERT_TRUE(found.isComputable());
    ASSERT_EQ(found.recipe.stages.size(), 3U);
    EXPECT_EQ(found.mixOfStage, (std::vector<int>{stock, letDown, portion}));
    EXPECT_EQ(found.recipe.stages[0].name, "stock");
    EXPECT_EQ(found.recipe.stages[2].purpose, MixPurpose::portion);
    expectPart(found.recipe.stages[0].parts.at(0), blue, -1, 0.75);
    expectPart(found.recipe.stages[0].parts.at(1), black, -1, 0.25);
    expectPart(found.recipe.stages[1].parts.at(0), base, -1, 0.9);
    expectPart(found.recipe.stages[1].parts.at(1), -1, 0, 0.1);
    EXPECT_FALSE(found.drierWasEarlier);
    EXPECT_EQ(found.stageAsOf[1].earliest, build::on("2026-03-02T10:01").earliest());
    const std::vector<LotShare> shares = flattened(found.recipe);
    ASSERT_EQ(shares.size(), 4U);
    EXPECT_NEAR(shares[blue].share, 20 / 20.5 * 0.1 * 0.75, 1e-12);
    EXPECT_NEAR(shares[cobalt].share, 0.5 / 20.5, 1e-12);
}

TEST_F(RecipeOfTest, AParentThatChangedInBetweenIsTwoStages) {
    book.addMix("portion", "stock", 10, "2026-03-02T10:00");
    book.addLot("stock", "base", 30, "2026-03-02T11:00");
    book.addMix("portion", "stock", 10, "2026-03-02T12:00");
    const RecipeFound found = recipes().atEnd(portion);
    EXPECT_EQ(found.mixOfStage, (std::vector<int>{stock, stock, portion}));
    EXPECT_EQ(found.recipe.stages[0].parts.size(), 2U);
    expectPart(found.recipe.stages[1].parts.at(0), base, -1, 0.5);
    expectPart(found.recipe.stages[1].parts.at(1), blue, -1, 0.375);
    expectPart(found.recipe.stages[2].parts.at(0), -1, 0, 0.5);
    expectPart(found.recipe.stages[2].parts.at(1), -1, 1, 0.5);
}

// Refilled in the same proportion: what was taken before and after is the same ink.
TEST_F(RecipeOfTest, AParentWithTheSameContentsAgainIsOneStage) {
    book.addMix("portion", "stock", 10, "2026-03-02T10:00");
    book.addLot("portion", "base", 5, "2026-03-02T10:01");
    book.addLot("stock", "blue", 15, "2026-03-02T11:00");
    book.addLot("stock", "black", 5, "2026-03-02T11:01");
    book.addMix("portion", "stock", 10, "2026-03-02T12:00");
    const RecipeFound found = recipes().atEnd(portion);
    EXPECT_EQ(found.mixOfStage, (std::vector<int>{stock, portion}));
    expectPart(found.recipe.stages[1].parts.at(1), -1, 0, 0.8);
}

TEST_F(RecipeOfTest, AJarFilledFromOneOtherIsMergedAway) {
    book.addMix("let-down", "stock", 10, "2026-03-02T10:00");
    book.addMix("let-down", "stock", 10, "2026-03-02T11:00");
    book.addMix("portion", "let-down", 10, "2026-03-02T12:00");
    const RecipeFound found = recipes().atEnd(portion);
    EXPECT_EQ(found.mixOfStage, (std::vector<int>{stock}));
    expectPart(found.recipe.stages[0].parts.at(0), blue, -1, 0.75);
}

TEST_F(RecipeOfTest, AnInkOfOneLotIsOneStage) {
    book.addLot("portion", "black", 10, "2026-03-02T12:00");
    const RecipeFound found = recipes().atEnd(portion);
    ASSERT_EQ(found.recipe.stages.size(), 1U);
    expectPart(found.recipe.stages[0].parts.at(0), black, -1, 1);
}

TEST_F(RecipeOfTest, DrierGoesIntoTheLastStageOnly) {
    book.addLot("stock", "cobalt", 10, "2026-03-01T10:02");
    book.addMix("portion", "stock", 20, "2026-03-02T10:00");
    book.addLot("portion", "base", 20, "2026-03-02T10:01");
    const RecipeFound found = recipes().atEnd(portion);
    EXPECT_TRUE(found.drierWasEarlier);
    expectPart(found.recipe.stages[0].parts.at(0), blue, -1, 0.75);
    expectPart(found.recipe.stages[0].parts.at(1), black, -1, 0.25);
    ASSERT_EQ(found.recipe.stages[1].parts.size(), 3U);
    expectPart(found.recipe.stages[1].parts[0], base, -1, 0.5);
    expectPart(found.recipe.stages[1].parts[1], cobalt, -1, 0.1);
    expectPart(found.recipe.stages[1].parts[2], -1, 0, 0.4);
}

// A drier decanted into a jar of its own is no stage; nothing was with it.
TEST_F(RecipeOfTest, AJarOfDrierAloneIsNoStage) {
    book.addLot("let-down", "cobalt", 10, "2026-03-01T10:02");
    book.addMix("portion", "let-down", 1, "2026-03-02T10:00");
    book.addMix("portion", "stock", 19, "2026-03-02T10:01");
    const RecipeFound found = recipes().atEnd(portion);
    EXPECT_FALSE(found.drierWasEarlier);
    EXPECT_EQ(found.mixOfStage, (std::vector<int>{stock, portion}));
    expectPart(found.recipe.stages[1].parts.at(0), cobalt, -1, 0.05);
}

TEST_F(RecipeOfTest, WithdrawalsChangeNoShareButWhatALaterAdditionWeighs) {
    book.weighing("stock", WeighingAct::discard, 20, "2026-03-01T11:00");
    book.addLot("stock", "base", 20, "2026-03-01T12:00");
    const RecipeFound found = recipes().atEnd(stock);
    expectPart(found.recipe.stages[0].parts.at(0), base, -1, 0.5);
    expectPart(found.recipe.stages[0].parts.at(1), blue, -1, 0.375);
}

TEST_F(RecipeOfTest, NamesEveryWeighingThatLacksItsMass) {
    book.addLot("stock", "base", 1, "2026-03-01T10:02", [](Weighing& r) { r.mass_g.reset(); });
    book.addLot("stock", "blue", 1, "2026-03-01T10:03");
    book.addMix("portion", "stock", 10, "2026-03-02T10:00");
    book.addLot("portion", "base", 1, "2026-03-02T10:01", [](Weighing& r) { r.mass_g.reset(); });
    const RecipeFound found = recipes().atEnd(portion);
    EXPECT_FALSE(found.isComputable());
    EXPECT_TRUE(found.recipe.stages.empty());
    ASSERT_EQ(found.problems.size(), 2U);
    EXPECT_EQ(found.problems[0].obstacle, MixObstacle::massOfWeighing);
    EXPECT_EQ(found.problems[0].mix, stock);
    EXPECT_EQ(found.problems[0].weighing, 2);
    EXPECT_EQ(found.problems[1].mix, portion);
    EXPECT_EQ(found.problems[1].weighing, 5);
}

TEST_F(RecipeOfTest, AnUnknownMassThatNothingFollowsHidesNothing) {
    book.weighing("stock", WeighingAct::withdraw, 1, "2026-03-02T09:00",
                  [](Weighing& r) { r.mass_g.reset(); });
    EXPECT_TRUE(recipes().atEnd(stock).isComputable());
}

TEST_F(RecipeOfTest, AnUnweighedPullHidesWhatLaterAdditionsWeigh) {
    book.addMix("portion", "stock", 10, "2026-03-02T10:00");
    pull("2026-03-02T11:00", 0);
    book.addLot("portion", "base", 5, "2026-03-02T12:00");
    const RecipeOf found = recipes();
    EXPECT_TRUE(found.atPull(0).isComputable());
    const std::vector<MixProblem> problems = found.atEnd(portion).problems;
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].obstacle, MixObstacle::inkOfPull);
    EXPECT_EQ(problems[0].pull, 0);
}

TEST_F(RecipeOfTest, ContentsThatWereNeverRecordedAreAReason) {
    book.mix("old jar", MixPurpose::stock);
    book.addMix("portion", "old jar", 10, "2026-03-02T10:00");
    book.pull("e-layer1", "2026-03-03T10:00", {});
    const RecipeOf found = recipes();
    const std::vector<MixProblem> problems = found.atEnd(portion).problems;
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].obstacle, MixObstacle::contentsNotRecorded);
    EXPECT_EQ(problems[0].mix, 3);
    const std::vector<MixProblem> noPortion = found.atPull(0).problems;
    ASSERT_EQ(noPortion.size(), 1U);
    EXPECT_EQ(noPortion[0].mix, -1);
    EXPECT_EQ(noPortion[0].pull, 0);
}

TEST_F(RecipeOfTest, AnAdditionFromNowhereIsAReason) {
    book.weighing("stock", WeighingAct::add, 5, "2026-03-01T12:00");
    const std::vector<MixProblem> problems = recipes().atEnd(stock).problems;
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].obstacle, MixObstacle::contentsNotRecorded);
    EXPECT_EQ(problems[0].weighing, 2);
}

TEST_F(RecipeOfTest, TellsHowMuchPassedThroughEachMix) {
    book.addMix("let-down", "stock", 10, "2026-03-02T10:00");
    book.addLot("let-down", "base", 10, "2026-03-02T10:01");
    book.addMix("stock", "let-down", 10, "2026-03-02T11:00");
    const RecipeOf found = recipes();
    const std::vector<MixShare> shares = sharesByMix(found.stages().atEnd(stock).stages);
    ASSERT_EQ(shares.size(), 2U);
    EXPECT_NEAR(shares[0].share, 1, 1e-12);
    EXPECT_NEAR(shares[1].share, 0.25, 1e-12);
    EXPECT_TRUE(sharesByMix({}).empty());
}

TEST(RecipeShares, CountsAStageForEachTimeItIsDrawnOn) {
    Recipe recipe;
    recipe.stages = {{"a", MixPurpose::stock, {{4, -1, 0.5}, {2, -1, 0.5}}},
                     {"b", MixPurpose::letDown, {{2, -1, 0.8}, {-1, 0, 0.2}}},
                     {"c", MixPurpose::portion, {{-1, 0, 0.5}, {-1, 1, 0.5}}}};
    const std::vector<double> stages = sharesOfStages(recipe);
    EXPECT_DOUBLE_EQ(stages[0], 0.6);
    EXPECT_DOUBLE_EQ(stages[1], 0.5);
    const std::vector<LotShare> lots = flattened(recipe);
    ASSERT_EQ(lots.size(), 2U);
    EXPECT_EQ(lots[0].lot, 2);
    EXPECT_DOUBLE_EQ(lots[0].share, 0.7);
    EXPECT_DOUBLE_EQ(lots[1].share, 0.3);
    EXPECT_TRUE(flattened({}).empty());
}

}  // namespace
}  // namespace rackbook
