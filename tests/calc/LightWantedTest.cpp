#include "calc/LightWanted.h"

#include <cmath>
#include <random>

#include "StudioFixture.h"

namespace rackbook {
namespace {

// Pulls by position: 0 of base A, 1 of base A with drier, 2 of base B with more colour, 3 of ink
// that nobody weighed. Layer 1, 97 % as remembered.
class LightWantedTest : public StudioTest {
protected:
    LightWantedTest() {
        book.lot("A", LotKind::base).lot("B", LotKind::base).lot("blue", LotKind::ink);
        book.lot("cobalt", LotKind::drier);
        portion("plain", {{"A", 97}, {"blue", 3}});
        portion("dried", {{"A", 95}, {"blue", 3}, {"cobalt", 2}});
        portion("tinted", {{"B", 85}, {"blue", 15}});
        book.impressions("e", 1, 1);
        for (const char* mix : {"plain", "dried", "tinted"})
            book.pull("e-layer1", "2026-03-04T10:00", {"e-1"},
                      [&](Pull& r) { r.portion = Ref<Mix>{mix}; });
        book.pull("e-layer1", "2026-03-04T10:00", {"e-1"});
        history = historyOf(book.records);
        m_inks = inkOfPulls(history, rules);
    }

    void portion(const std::string& id, const std::vector<std::pair<std::string, double>>& lots_g) {
        book.mix(id, MixPurpose::portion);
        for (const auto& [lot, mass_g] : lots_g)
            book.addLot(id, lot, mass_g, "2026-03-03");
    }

    static std::vector<ReturnLook> looksAt(std::uint32_t pull, std::size_t count,
                                           double low_sunnyDays, double high_sunnyDays) {
        ReturnLook look;
        look.pull = pull;
        look.observed = {low_sunnyDays, high_sunnyDays};
        return std::vector<ReturnLook>(count, look);
    }
    static std::vector<ReturnLook> together(const std::vector<std::vector<ReturnLook>>& lists) {
        std::vector<ReturnLook> all;
        for (const std::vector<ReturnLook>& list : lists)
            all.insert(all.end(), list.begin(), list.end());
        return all;
    }

    LightWanted wantedFrom(std::vector<ReturnLook> looks) {
        return LightWanted(history, m_inks, rules, std::move(looks));
    }
    static double median(const LightWantedGroup& group) {
        return group.threshold.quantile_sunnyDays(0.5).best;
    }

    std::vector<PullInk> m_inks;
};

// By hand: nine cases of ten within a factor of 5 of one sunny day.
TEST_F(LightWantedTest, IsByHouseRulesWithoutLooks) {
    const LightWanted wanted = wantedFrom({});
    ASSERT_EQ(wanted.groups().size(), 1u);
    const Estimate middle = wanted.groups()[0].threshold.quantile_sunnyDays(0.5, 0.9);
    EXPECT_NEAR(middle.best, 1, 0.02);
    EXPECT_NEAR(middle.low, 0.2, 0.01);
    EXPECT_NEAR(middle.high, 5, 0.2);
    EXPECT_FALSE(wanted.groups()[0].isLearnt);
    rules = HouseRules({ruleOf("lightDose_sunnyDays", 4), ruleOf("lightDoseFactor", 2)});
    const Estimate own = wantedFrom({}).groups()[0].threshold.quantile_sunnyDays(0.5, 0.9);
    EXPECT_NEAR(own.best, 4, 0.08);
    EXPECT_NEAR(own.low, 2, 0.08);
    EXPECT_NEAR(own.high, 8, 0.3);
}

TEST_F(LightWantedTest, IsLearntFromAsManyLooksAsTheRuleSays) {
    EXPECT_FALSE(wantedFrom(looksAt(0, 5, 0.2, 0.4)).groups()[0].isLearnt);
    EXPECT_TRUE(wantedFrom(looksAt(0, 6, 0.2, 0.4)).groups()[0].isLearnt);
    rules = HouseRules({ruleOf("looksToLearn", 8)});
    EXPECT_FALSE(wantedFrom(looksAt(0, 7, 0.2, 0.4)).groups()[0].isLearnt);
}

// Few looks are looked at together, whatever their inks were.
TEST_F(LightWantedTest, PartsInksOnlyWhereAGroupHasEnoughLooks) {
    EXPECT_EQ(wantedFrom(together({looksAt(0, 5, 0.2, 0.4), looksAt(2, 5, 1, 2)})).groups().size(),
              1u);
    const LightWanted wanted = wantedFrom(together({looksAt(0, 6, 0.2, 0.4), looksAt(2, 5, 1, 2)}));
    for (const LightWantedGroup& group : wanted.groups())
        EXPECT_TRUE(group.looks.size() == 11 || group.looks.size() == 6);
    EXPECT_EQ(wanted.groupFor(wanted.likenessOf(0)).looks.size(), 6u);
    EXPECT_EQ(wanted.groupFor(wanted.likenessOf(2)).looks.size(), 11u);
}

TEST_F(LightWantedTest, GroupsInksByBaseDrierAndShare) {
    const LightWanted wanted =
        wantedFrom(together({looksAt(0, 6, 0.2, 0.4), looksAt(1, 6, 0.05, 0.1), looksAt(2, 6, 2, 4),
                             looksAt(3, 2, 1, 2)}));
    EXPECT_EQ(wanted.groups()[0].looks.size(), 20u);
    const LightWantedGroup& plain = wanted.groupFor(wanted.likenessOf(0));
    EXPECT_EQ(plain.looks, (std::vector<std::size_t>{0, 1, 2, 3, 4, 5}));
    EXPECT_EQ(plain.alike.baseLot, 0);
    EXPECT_EQ(plain.alike.drier, LightRule::withoutDrier);
    const LightWantedGroup& dried = wanted.groupFor(wanted.likenessOf(1));
    EXPECT_EQ(dried.looks, (std::vector<std::size_t>{6, 7, 8, 9, 10, 11}));
    EXPECT_EQ(dried.alike.drier, LightRule::withDrier);
    const LightWantedGroup& tinted = wanted.groupFor(wanted.likenessOf(2));
    EXPECT_EQ(tinted.alike.baseLot, 1);
    // Each by its own looks.
    EXPECT_LT(median(dried), median(plain));
    EXPECT_LT(median(plain), median(tinted));
    // Ink of which nothing was weighed goes by all inks, while it has too few looks.
    EXPECT_EQ(&wanted.groupFor(wanted.likenessOf(3)), &wanted.groups()[0]);
}

// Two shares of one base, without drier: the base has twelve looks, each share six.
TEST_F(LightWantedTest, PartsSharesOfOneBase) {
    portion("rich", {{"A", 97}, {"blue", 3}});
    portion("lean", {{"A", 88}, {"blue", 12}});
    for (const char* mix : {"rich", "lean"})
        book.pull("e-layer1", "2026-03-04T10:00", {"e-1"},
                  [&](Pull& r) { r.portion = Ref<Mix>{mix}; });
    history = historyOf(book.records);
    m_inks = inkOfPulls(history, rules);
    const LightWanted wanted = wantedFrom(
        together({looksAt(4, 6, 1, 2), looksAt(5, 6, 0.1, 0.2), looksAt(1, 6, 0.05, 0.1)}));
    EXPECT_EQ(wanted.likenessOf(4).shareBand, 2);
    EXPECT_EQ(wanted.likenessOf(5).shareBand, 0);
    const LightWantedGroup& rich = wanted.groupFor(wanted.likenessOf(4));
    EXPECT_TRUE(rich.alike.byShare);
    EXPECT_EQ(rich.looks.size(), 6u);
    EXPECT_LT(median(wanted.groupFor(wanted.likenessOf(5))), median(rich));
    // An ink of this base and a share in between that no look tells of: the base's.
    InkLikeness between = wanted.likenessOf(4);
    between.shareBand = 1;
    EXPECT_EQ(wanted.groupFor(between).looks.size(), 12u);
    EXPECT_FALSE(wanted.groupFor(between).alike.byShare);
    // Of another base: all.
    between.baseLot = 1;
    between.drier = LightRule::drierNotKnown;
    EXPECT_EQ(wanted.groupFor(between).looks.size(), 18u);
}

// What is wrong with the doses of a place was wrong in its looks too.
TEST_F(LightWantedTest, TakesTheBestValueOfADoseOnceItIsLearnt) {
    const Estimate wide{0.1, 0.5, 2.5};
    const LightWanted byRule = wantedFrom(looksAt(0, 5, 0.2, 0.4));
    const LightWantedGroup& unlearnt = byRule.groups()[0];
    EXPECT_EQ(LightWanted::chanceBy(unlearnt, wide), unlearnt.chance.by(wide));
    EXPECT_NE(LightWanted::chanceBy(unlearnt, wide), unlearnt.chance.by(wide.best));
    const LightWanted learnt = wantedFrom(looksAt(0, 6, 0.2, 0.4));
    EXPECT_EQ(LightWanted::chanceBy(learnt.groups()[0], wide),
              learnt.groups()[0].chance.by(wide.best));
    EXPECT_TRUE(std::isnan(LightWanted::chanceBy(learnt.groups()[0], {0.1, notKnown, 2.5})));
}

// Batches that hang on the rack through a year, each looked at every other day: those of this
// studio want 0.3 sunny days, half of them within a factor of 1.2. The house rule says 1.
TEST_F(StudioTest, LearnsTheDoseOfASimulatedStudio) {
    std::mt19937 random(17);
    std::normal_distribution<double> spread_log(0, 0.27);
    DoseLedger& ledger = lightAsOf("2026-01-01").ledger();
    const int rack = book.records.indexOf<Place>("rack");
    for (int batch = 0; batch < 40; ++batch) {
        const CivilMinute pulled = build::on("2024-01-05T10:00").earliest() +
                                   static_cast<CivilMinute>(batch) * 9 * minutesPerDay;
        const std::string id = print(formatMinute(pulled), "rack");
        const double wants_sunnyDays = 0.3 * std::exp(spread_log(random));
        for (int day = 2; day < 200; day += 2) {
            const CivilMinute at = pulled + day * minutesPerDay;
            const bool returned = ledger.at(rack, pulled, at).sunnyDays.best >= wants_sunnyDays;
            lookAt(id, formatMinute(at), returned ? LookColour::trueColour : LookColour::returning);
            if (returned)
                break;
        }
    }
    const LightModel& model = modelAsOf("2026-01-01");
    ASSERT_EQ(model.wanted.looks().size(), 40u);
    const LightWantedGroup& group = model.wanted.groupFor(model.wanted.likenessOf(0));
    EXPECT_TRUE(group.isLearnt);
    const Estimate median = group.threshold.quantile_sunnyDays(0.5, 0.99);
    EXPECT_NEAR(median.best, 0.3, 0.04);
    EXPECT_LT(median.low, 0.3);
    EXPECT_GT(median.high, 0.3);
    EXPECT_LT(median.high, 0.5);
}

}  // namespace
}  // namespace rackbook
