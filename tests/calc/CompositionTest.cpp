#include "calc/Composition.h"

#include <gtest/gtest.h>

#include <cmath>

namespace rackbook {
namespace {

Lot lotOf(LotKind kind, std::vector<std::string> pigments = {}) {
    Lot lot;
    lot.lotKind = kind;
    lot.pigments = std::move(pigments);
    return lot;
}

Lot drierOf(std::vector<DrierMetal> metals) {
    Lot lot = lotOf(LotKind::drier);
    lot.drierMetals = std::move(metals);
    return lot;
}

MixContents contentsOf(std::vector<MixPart> parts) {
    MixContents contents;
    contents.parts = std::move(parts);
    return contents;
}

TEST(Composition, TakesLotsOfTheSamePigmentsTogether) {
    const std::vector<Lot> lots = {lotOf(LotKind::ink, {"PR122", "PW6"}), lotOf(LotKind::base),
                                   lotOf(LotKind::ink, {"PW6", "PR122"}),
                                   lotOf(LotKind::ink, {"PY42"}), lotOf(LotKind::base)};
    const Composition found = compositionOf(contentsOf({{0, Estimate::exactly(0.02)},
                                                        {1, Estimate::exactly(0.5)},
                                                        {2, {0.01, 0.015, 0.03}},
                                                        {3, Estimate::exactly(0)},
                                                        {4, Estimate::exactly(0.465)}}),
                                            lots);
    ASSERT_EQ(found.parts.size(), 2U);
    EXPECT_EQ(found.parts[0].lotKind, LotKind::base);
    EXPECT_NEAR(found.parts[0].share.best, 0.965, 1e-12);
    EXPECT_EQ(found.parts[1].pigments, (std::vector<std::string>{"PR122", "PW6"}));
    EXPECT_NEAR(found.parts[1].share.low, 0.03, 1e-12);
    EXPECT_NEAR(found.parts[1].share.best, 0.035, 1e-12);
    EXPECT_NEAR(found.parts[1].share.high, 0.05, 1e-12);
    EXPECT_TRUE(found.metals.empty());
    EXPECT_FALSE(found.hasUnstatedMetals);
}

TEST(Composition, CountsTheMetalsOfDriersThatStateThem) {
    const std::vector<Lot> lots = {drierOf({{"manganese", 0.04}, {"zirconium", 0.06}}),
                                   drierOf({{"manganese", 0.1}})};
    const Composition found = compositionOf(
        contentsOf({{0, Estimate::exactly(0.02)}, {1, Estimate::exactly(0.01)}}), lots);
    ASSERT_EQ(found.metals.size(), 2U);
    EXPECT_EQ(found.metals[0].metal, "manganese");
    EXPECT_NEAR(found.metals[0].share.best, 0.02 * 0.04 + 0.01 * 0.1, 1e-15);
    EXPECT_NEAR(found.metals[1].share.best, 0.02 * 0.06, 1e-15);
    EXPECT_FALSE(found.hasUnstatedMetals);
}

TEST(Composition, SaysWhereADrierStatesNoContent) {
    const auto unstated = [](const Lot& lot, double share) {
        return compositionOf(contentsOf({{0, Estimate::exactly(share)}}), {lot}).hasUnstatedMetals;
    };
    EXPECT_TRUE(unstated(drierOf({}), 0.02));
    EXPECT_TRUE(unstated(drierOf({{"cobalt", {}}}), 0.02));
    EXPECT_FALSE(unstated(drierOf({}), 0));
}

TEST(Composition, HasNoBestShareWhereOneOfItsLotsHasNone) {
    const Composition found =
        compositionOf(contentsOf({{0, Estimate::exactly(0.9)}, {1, Estimate::anyShare()}}),
                      {lotOf(LotKind::base), lotOf(LotKind::base)});
    ASSERT_EQ(found.parts.size(), 1U);
    EXPECT_TRUE(std::isnan(found.parts[0].share.best));
    EXPECT_EQ(found.parts[0].share.high, 1);
    EXPECT_NEAR(found.parts[0].share.low, 0.9, 1e-12);
}

}  // namespace
}  // namespace rackbook
