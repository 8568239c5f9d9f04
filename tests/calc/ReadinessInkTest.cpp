#include "ReadinessFixture.h"

namespace rackbook {
namespace {

using ReadinessInk = ReadinessTest;

TEST_F(ReadinessInk, LayersWithLittleExtenderAreNotAffected) {
    pull(2, "2026-03-04T09:00");
    EXPECT_EQ(verdictAsOf("2026-03-05"), Verdict::lookDue);
    EXPECT_FALSE(rowAsOf("2026-03-05").touchDry);
    EXPECT_EQ(reasonsAsOf("2026-03-05"),
              "No layer of it is extender-rich, by what is recorded: it only has to be dry. No "
              "look since the last pull says how it feels.");
    lookAt("2026-03-09", Touch::dry, LookColour::trueColour);
    EXPECT_TRUE(rowAsOf("2026-03-09").touchDry);
    EXPECT_EQ(verdictAsOf("2026-03-09"), Verdict::notAffected);
    EXPECT_EQ(reasonsAsOf("2026-03-09"),
              "No layer of it is extender-rich, by what is recorded. The look on 2026-03-09 found "
              "it dry to the touch.");
}

TEST_F(ReadinessInk, AShareThatIsNotKnownLeavesItOpen) {
    pull(3, "2026-03-04T09:00");
    move("rack", "2026-03-04T10:00");
    const ReadinessRow row = rowAsOf("2026-04-30");
    EXPECT_EQ(row.verdict, Verdict::unknown);
    EXPECT_TRUE(row.gaps.extenderShare);
    EXPECT_EQ(row.doubtfulPull, 0);
    EXPECT_NE(reasonsAsOf("2026-04-30")
                  .find("Layer 3 may be extender-rich: nothing recorded says whether its ink held "
                        "80 % extender or more."),
              std::string::npos);
}

TEST_F(ReadinessInk, WhatIsReadyEvenIfItWereExtenderRichIsReady) {
    pull(3, "2026-03-04T09:00");
    move("rack", "2026-03-04T10:00");
    lookAt("2026-04-30", Touch::dry, LookColour::trueColour);
    EXPECT_EQ(verdictAsOf("2026-04-30"), Verdict::ready);
}

TEST_F(ReadinessInk, WhatFallsShortEitherWayIsSaidToFallShort) {
    pulledAndHung();
    pull(3, "2026-03-10T10:00");
    const ReadinessRow row = rowAsOf("2026-03-12T10:00");
    EXPECT_EQ(row.verdict, Verdict::moreLight);
    EXPECT_EQ(row.pull, 0);
    EXPECT_EQ(row.doubtfulPull, 1);
    EXPECT_EQ(verdictAsOf("2026-03-28"), Verdict::unknown);
}

// The ink of a portion: 97 g of base, 3 g of ink, drier as given.
void fillPortion(build::Book& book, double drier_g) {
    book.lot("base", LotKind::base).lot("blue", LotKind::ink).lot("cobalt", LotKind::drier);
    book.mix("portion", MixPurpose::portion);
    book.addLot("portion", "base", 97, "2026-03-03").addLot("portion", "blue", 3, "2026-03-03");
    if (drier_g > 0)
        book.addLot("portion", "cobalt", drier_g, "2026-03-03");
    book.pull("e-layer2", "2026-03-04T10:00", {"e-1"},
              [](Pull& r) { r.portion = Ref<Mix>{"portion"}; });
    book.move("rack", "2026-03-04T10:00", {"e-1"});
}

TEST_F(ReadinessInk, TheWeighedInkOutranksWhatTheLayerRemembers) {
    fillPortion(book, 0);
    const ReadinessRow row = rowAsOf("2026-03-13T10:00");
    EXPECT_EQ(row.lightRule, LightRule::withoutDrier);
    EXPECT_DOUBLE_EQ(row.daysNeeded, 21);
    EXPECT_NEAR(row.extenderShare.best, 0.97, 1e-12);
    EXPECT_EQ(
        reasonsAsOf("2026-03-13T10:00"),
        "Layer 2 (97 % extender, no drier) was pulled on 2026-03-04; it has hung in light for "
        "9 days of the 21 that the studio wants; no look since. 21 days are wanted without "
        "drier in the ink: common practice, no source. It is at rack, in light.");
}

TEST_F(ReadinessInk, InkWithDrierWantsFewerDays) {
    fillPortion(book, 2);
    const ReadinessRow row = rowAsOf("2026-03-13T10:00");
    EXPECT_EQ(row.lightRule, LightRule::withDrier);
    EXPECT_DOUBLE_EQ(row.daysNeeded, 14);
    EXPECT_EQ(reasonsAsOf("2026-03-13T10:00"),
              "Layer 2 (95.1 % extender, 2 % drier) was pulled on 2026-03-04; it has hung in light "
              "for 9 days of the 14 that the studio wants; no look since. 14 days are wanted with "
              "drier in the ink: common practice, no source. It is at rack, in light.");
}

TEST_F(ReadinessInk, NextToNoDrierCountsAsNone) {
    fillPortion(book, 0.2);
    EXPECT_EQ(rowAsOf("2026-03-13T10:00").lightRule, LightRule::withoutDrier);
    EXPECT_NE(reasonsAsOf("2026-03-13T10:00")
                  .find("(96.8 % extender, 0.2 % drier, which counts as none)"),
              std::string::npos);
}

TEST_F(ReadinessInk, TheStudiosOwnRuleIsNamedAsIts) {
    pulledAndHung();
    rules = HouseRules({ruleOf("lightDaysCareful", 30)});
    EXPECT_NE(reasonsAsOf("2026-03-13T10:00")
                  .find("of the 30 that the studio wants; no look since. 30 days are wanted where "
                        "the ink is not known to hold drier: studio rule."),
              std::string::npos);
}

TEST_F(ReadinessInk, ABadlyDatedEarlierRichLayerMayHaveComeLast) {
    pull(1, "2026-03");
    pull(1, "2026-03-04T10:00");
    move("rack", "2026-03-04T10:00");
    const ReadinessRow row = rowAsOf("2026-04-10T23:59");
    EXPECT_EQ(row.pull, 1);
    EXPECT_DOUBLE_EQ(row.daysLow, 10);
    EXPECT_EQ(row.pulled.latest, build::on("2026-03-31").latest());
}

}  // namespace
}  // namespace rackbook
