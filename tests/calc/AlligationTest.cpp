#include "calc/Alligation.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "PlanFixture.h"

namespace rackbook {
namespace {

using test::refusalOf;

constexpr double infinite = std::numeric_limits<double>::infinity();

Estimate exactly(double share) {
    return Estimate::exactly(share);
}

void expectParts(double target, double first, double second, double firstParts,
                 double secondParts) {
    const BlendParts parts = partsToReach(target, first, second);
    EXPECT_NEAR(parts.first, firstParts / (firstParts + secondParts), 1e-12);
    EXPECT_NEAR(parts.second, secondParts / (firstParts + secondParts), 1e-12);
}

TEST(Alligation, GivesThePartsOfWorkedExamples) {
    // Handouts on pharmaceutical alligation: 95 % and 50 % alcohol to 70 %, 20 to 25 parts; 70 %
    // and 20 % elixir to 30 %, 1 to 4 parts; 70 % dextrose and water to 25 %, 25 to 45 parts.
    expectParts(0.70, 0.95, 0.50, 20, 25);
    expectParts(0.30, 0.70, 0.20, 1, 4);
    expectParts(0.25, 0.70, 0, 25, 45);
    // 70 % and 40 % alcohol to 50 %, 1 to 2 parts (from memory).
    expectParts(0.50, 0.70, 0.40, 1, 2);
    expectParts(0.50, 0.40, 0.70, 2, 1);
}

TEST(Alligation, GivesTheMassesOfAWorkedExample) {
    // The dextrose example: 1000 of 25 % take 357 of 70 %, rounded to 360 in the handout.
    const BlendMasses masses = blendOfMass(1000, 0.25, exactly(0.70), exactly(0));
    EXPECT_NEAR(masses.first_g, 357.14, 0.005);
    EXPECT_NEAR(masses.second_g, 642.86, 0.005);
    EXPECT_NEAR(masses.share.best, 0.25, 1e-12);
    EXPECT_NEAR(masses.total_g(), 1000, 1e-9);
}

TEST(Alligation, SaysHowMuchToAddToAGivenMass) {
    const BlendMasses masses = blendByAdding(20, 0.70, exactly(0.95), exactly(0.50));
    EXPECT_EQ(masses.first_g, 20);
    EXPECT_NEAR(masses.second_g, 25, 1e-12);
    EXPECT_NEAR(masses.share.best, 0.70, 1e-12);
    EXPECT_EQ(blendByAdding(20, 0.95, exactly(0.95), exactly(0.50)).second_g, 0);
}

TEST(Alligation, CarriesTheBoundsOfTheSharesThrough) {
    const Estimate strong{0.60, 0.70, 0.75};
    const Estimate weak{0.35, 0.40, 0.50};
    const BlendMasses masses = blendOfMass(90, 0.50, strong, weak);
    EXPECT_NEAR(masses.first_g, 30, 1e-12);
    // By hand: (30·0.60 + 60·0.35)/90 and (30·0.75 + 60·0.50)/90.
    EXPECT_NEAR(masses.share.low, 39.0 / 90, 1e-12);
    EXPECT_NEAR(masses.share.best, 0.5, 1e-12);
    EXPECT_NEAR(masses.share.high, 52.5 / 90, 1e-12);
}

TEST(Alligation, TakesTheFirstAloneWhereAllSharesAreEqual) {
    EXPECT_EQ(partsToReach(0.4, 0.4, 0.4).first, 1);
    EXPECT_EQ(blendByAdding(20, 0.4, exactly(0.4), exactly(0.4)).second_g, 0);
    EXPECT_EQ(partsToReach(0.4, 0.7, 0.4).second, 1);
}

TEST(Alligation, SaysWhatCanBeReached) {
    EXPECT_EQ(refusalOf([] { partsToReach(0.8, 0.7, 0.4); }),
              "blend: the two cannot be blended to hold 80 %. They reach 40 % to 70 %.");
    EXPECT_EQ(refusalOf([] { partsToReach(0.1, 0.4, 0.7); }),
              "blend: the two cannot be blended to hold 10 %. They reach 40 % to 70 %.");
    EXPECT_EQ(refusalOf([] { partsToReach(0.5, 0.4, 0.4); }),
              "blend: the two cannot be blended to hold 50 %. They reach 40 % only.");
    EXPECT_EQ(refusalOf([] { blendByAdding(20, 0.4, exactly(0.7), exactly(0.4)); }),
              "blend: no mass of the second brings the first to 40 %. Use the second alone.");
}

TEST(Alligation, RefusesFiguresThatCannotBe) {
    EXPECT_EQ(refusalOf([] { partsToReach(1.2, 0.7, 0.4); }),
              "blend: the share wanted is 120 %. Give a share between 0 % and 100 %.");
    EXPECT_EQ(refusalOf([] { partsToReach(0.5, -0.1, 0.4); }),
              "blend: the share in the first is -10 %. Give a share between 0 % and 100 %.");
    EXPECT_EQ(refusalOf([] { partsToReach(0.5, 0.7, std::nan("")); }),
              "blend: the share in the second is nan %. Give a share between 0 % and 100 %.");
    EXPECT_EQ(refusalOf([] { blendOfMass(0, 0.5, exactly(0.7), exactly(0.4)); }),
              "blend: the mass wanted is 0 g. Give a mass above 0 g.");
    EXPECT_EQ(refusalOf([] { blendByAdding(-3, 0.5, exactly(0.7), exactly(0.4)); }),
              "blend: the mass of the first is -3 g. Give a mass above 0 g.");
    EXPECT_NE(refusalOf([] { blendOfMass(infinite, 0.5, exactly(0.7), exactly(0.4)); }), "");
    EXPECT_NE(refusalOf([] { blendOfMass(std::nan(""), 0.5, exactly(0.7), exactly(0.4)); }), "");
    EXPECT_EQ(refusalOf([] { blendOfMass(10, 0.5, Estimate::anyShare(), exactly(0.4)); }),
              "blend: the share in the first is not known. Give its best value.");
    EXPECT_EQ(refusalOf([] {
                  blendOfMass(10, 0.5, exactly(0.7), {0.5, 0.4, 0.6});
              }),
              "blend: the best value of the share in the second lies outside its own bounds. Give "
              "bounds around it.");
}

}  // namespace
}  // namespace rackbook
