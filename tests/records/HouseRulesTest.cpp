#include "records/HouseRules.h"

#include <gtest/gtest.h>

#include <set>
#include <stdexcept>

namespace rackbook {
namespace {

TEST(HouseRules, HaveDefaultsWithinTheirRangeAndAnOrigin) {
    std::set<std::string> names;
    for (const HouseRuleDefault& rule : houseRuleDefaults()) {
        SCOPED_TRACE(rule.rule);
        EXPECT_TRUE(names.insert(rule.rule).second);
        EXPECT_LE(rule.least, rule.value);
        EXPECT_LE(rule.value, rule.most);
        EXPECT_NE(std::string(rule.unit), "");
        EXPECT_NE(std::string(rule.words), "");
        EXPECT_NE(std::string(rule.source), "");
    }
    EXPECT_LE(HouseRules().value("lightDays"), HouseRules().value("lightDaysCareful"));
    EXPECT_LT(HouseRules().value("drierLeastShare"), HouseRules().value("drierMostShare"));
}

TEST(HouseRules, StandAtTheirDefaults) {
    const HouseRules rules;
    ASSERT_EQ(rules.all().size(), houseRuleDefaults().size());
    EXPECT_EQ(rules.value("lightDays"), 14);
    EXPECT_EQ(rules.rule("lightDays").origin, Origin::commonPractice);
    EXPECT_EQ(rules.rule("lightDays").source, "common practice, no source");
}

TEST(HouseRules, TakeTheStudiosOwn) {
    const HouseRules rules({{"lightDays", 20, Origin::fitted, "31 looks"},
                            {"proofsMostShare", 0.2, Origin::studioRule, {}}});
    EXPECT_EQ(rules.value("lightDays"), 20);
    EXPECT_EQ(rules.rule("lightDays").origin, Origin::fitted);
    EXPECT_EQ(rules.rule("lightDays").source, "31 looks");
    EXPECT_EQ(rules.rule("lightDays").unit, "days");
    EXPECT_EQ(rules.value("proofsMostShare"), 0.2);
    EXPECT_EQ(rules.rule("proofsMostShare").source, "");
    EXPECT_EQ(rules.value("lightDaysCareful"), 21);
}

TEST(HouseRules, KnowNoOthers) {
    EXPECT_THROW(HouseRules().value("weather"), std::out_of_range);
}

}  // namespace
}  // namespace rackbook
