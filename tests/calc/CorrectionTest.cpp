#include "calc/Correction.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "PlanFixture.h"

namespace rackbook {
namespace {

using test::refusalOf;

constexpr double infinite = std::numeric_limits<double>::infinity();

// Blue, red, base.
CorrectionQuestion tooMuchRed() {
    return {{0.05, 0.02, 0.93}, {5, 3, 0}, {}, 100.0};
}

std::string refusal(const CorrectionQuestion& question) {
    return refusalOf([&] { correctionFor(question); });
}

TEST(Correction, RestoresTheSharesAroundWhatThereIsTooMuchOf) {
    const Correction correction = correctionFor(tooMuchRed());
    EXPECT_TRUE(correction.isPossible());
    EXPECT_NEAR(correction.total_g, 150, 1e-9);
    EXPECT_NEAR(correction.add_g[0], 2.5, 1e-9);
    EXPECT_NEAR(correction.add_g[1], 0, 1e-9);
    EXPECT_NEAR(correction.add_g[2], 139.5, 1e-9);
    EXPECT_NEAR(correction.added_g, 142, 1e-9);
    EXPECT_NEAR(correction.beyondWanted_g, 50, 1e-9);
}

TEST(Correction, MakesAtLeastTheMassThatIsWanted) {
    const Correction correction = correctionFor({{0.5, 0.5}, {3, 2}, {}, 20.0});
    EXPECT_NEAR(correction.total_g, 20, 1e-12);
    EXPECT_EQ(correction.add_g, (std::vector<double>{7, 8}));
    EXPECT_EQ(correction.beyondWanted_g, 0);
    EXPECT_FALSE(correction.startAgain);
    const Correction open = correctionFor({{0.5, 0.5}, {3, 2}, {}, {}});
    EXPECT_EQ(open.add_g, (std::vector<double>{0, 1}));
    EXPECT_FALSE(open.fresh_g.has_value());
    EXPECT_EQ(open.beyondWanted_g, 0);
}

TEST(Correction, SaysWhenAFreshBatchTakesLess) {
    const Correction correction = correctionFor(tooMuchRed());
    EXPECT_TRUE(correction.startAgain);
    EXPECT_EQ(correction.fresh_g, std::optional<double>(100));
    CorrectionQuestion less = tooMuchRed();
    less.inDish_g = {5, 2.1, 0};
    const Correction mild = correctionFor(less);
    EXPECT_FALSE(mild.startAgain);
    EXPECT_NEAR(mild.added_g, 105 - 7.1, 1e-9);
    // 105.26… g less 5.26… g: exactly what a fresh batch takes.
    EXPECT_TRUE(correctionFor({{0.05, 0.95}, {100.0 / 19, 0}, {}, 100.0}).startAgain);
}

TEST(Correction, NamesWhatTheRecipeDoesNotHold) {
    const Correction correction = correctionFor({{0.5, 0, 0.5, 0}, {1, 2, 3, 0}, {}, 10.0});
    EXPECT_FALSE(correction.isPossible());
    EXPECT_EQ(correction.notInRecipe, (std::vector<std::size_t>{1}));
    EXPECT_TRUE(correction.add_g.empty());
}

TEST(Correction, SaysWhatIsMissingInStock) {
    CorrectionQuestion question = tooMuchRed();
    question.inStock_g = {2.5, infinite, 100};
    const Correction correction = correctionFor(question);
    EXPECT_FALSE(correction.isPossible());
    ASSERT_EQ(correction.shortfalls.size(), 1U);
    EXPECT_EQ(correction.shortfalls[0].part, 2U);
    EXPECT_NEAR(correction.shortfalls[0].missing_g, 39.5, 1e-9);
    question.inStock_g = {2.5, 0, 139.5};
    EXPECT_TRUE(correctionFor(question).isPossible());
}

TEST(Correction, GivesMassesThatABalanceShows) {
    const CorrectionQuestion question{{0.06, 0.04, 0.9}, {1.3, 2.2, 10}, {}, {}};
    const Correction correction = correctionFor(question);
    const WeighedCorrection weighed = weighedOn({0.1, 0.1}, question, correction);
    // By hand: M = 2.2/0.04 = 55 g: 3.3 and 49.5 g wanted.
    EXPECT_EQ(weighed.add_g, (std::vector<double>{2, 0, 39.5}));
    EXPECT_NEAR(weighed.total_g, 55, 1e-9);
    const WeighedCorrection coarse = weighedOn({1, 1}, question, correction);
    EXPECT_EQ(coarse.add_g, (std::vector<double>{2, 0, 40}));
    EXPECT_NEAR(coarse.shares[0], 3.3 / 55.5, 1e-12);
    EXPECT_EQ(refusalOf([&] {
                  weighedOn({0, 0}, question, correction);
              }),
              "balance: the readability is 0 g. Give the smallest step of its display, above 0 g.");
}

TEST(Correction, NeedsNothingWhereNothingIsThereAndNothingWanted) {
    const CorrectionQuestion question{{0.5, 0.5}, {0, 0}, {}, {}};
    const Correction correction = correctionFor(question);
    EXPECT_EQ(correction.total_g, 0);
    EXPECT_EQ(weighedOn({0.1, 0}, question, correction).shares, (std::vector<double>{0, 0}));
}

TEST(Correction, RefusesSharesThatMakeNoWhole) {
    EXPECT_EQ(refusal({{0.5, 0.4}, {1, 1}, {}, {}}),
              "correction: the shares add up to 90 %. Make them add up to 100 %.");
    EXPECT_EQ(refusal({{0.5, 0.500000002}, {1, 1}, {}, {}}),
              "correction: the shares add up to 100.0000002 %. Make them add up to 100 %.");
    EXPECT_EQ(refusal({{1.5, -0.5}, {1, 1}, {}, {}}),
              "correction, part 1: its share is 150 %. Give a share between 0 % and 100 %.");
    EXPECT_NE(refusal({{std::nan(""), 1}, {1, 1}, {}, {}}), "");
    EXPECT_NE(refusal({{}, {}, {}, {}}), "");
}

TEST(Correction, RefusesMassesThatCannotBe) {
    EXPECT_EQ(refusal({{0.5, 0.5}, {1, -2}, {}, {}}),
              "correction, part 2: its mass in the dish is -2 g. Give a mass of 0 g or more.");
    EXPECT_EQ(refusal({{0.5, 0.5}, {infinite, 2}, {}, {}}),
              "correction, part 1: its mass in the dish is inf g. Give a mass of 0 g or more.");
    EXPECT_NE(refusal({{0.5, 0.5}, {std::nan(""), 2}, {}, {}}), "");
    EXPECT_EQ(refusal({{0.5, 0.5}, {1, 2}, {-1, 2}, {}}),
              "correction, part 1: its mass in stock is -1 g. Give a mass of 0 g or more.");
    EXPECT_NE(refusal({{0.5, 0.5}, {1, 2}, {std::nan(""), 2}, {}}), "");
    EXPECT_EQ(refusal({{0.5, 0.5}, {1}, {}, {}}),
              "correction: there are 2 shares, but 1 masses in the dish. Give one for each share.");
    EXPECT_EQ(refusal({{0.5, 0.5}, {1, 2}, {1}, {}}),
              "correction: there are 2 shares, but 1 masses in stock. Give one for each share.");
    EXPECT_EQ(refusal({{0.5, 0.5}, {1, 2}, {}, 0.0}),
              "correction: the mass wanted is 0 g. Give a mass above 0 g, or none.");
    EXPECT_NE(refusal({{0.5, 0.5}, {1, 2}, {}, infinite}), "");
    EXPECT_NE(refusal({{0.5, 0.5}, {1, 2}, {}, std::nan("")}), "");
}

}  // namespace
}  // namespace rackbook
