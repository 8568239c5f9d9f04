#include "calc/Wording.h"

#include <gtest/gtest.h>

#include "base/Edtf.h"

namespace rackbook {
namespace {

TimeSpan spanOf(const std::string& text) {
    const EdtfDate date = EdtfDate::parse(text);
    return {date.earliest(), date.latest()};
}

TEST(Wording, SaysWhenAsWellAsItIsKnown) {
    EXPECT_EQ(dayWords(spanOf("2026-03-04T09:30")), "on 2026-03-04");
    EXPECT_EQ(dayWords(spanOf("2026-03-04")), "on 2026-03-04");
    EXPECT_EQ(dayWords(spanOf("1998")), "between 1998-01-01 and 1998-12-31");
    EXPECT_EQ(dayWords({beginningOfTime, spanOf("1998").latest}), "by 1998-12-31");
    EXPECT_EQ(dayWords({spanOf("1998").earliest, endOfTime}), "after 1998-01-01");
    EXPECT_EQ(dayWords({beginningOfTime, endOfTime}), "at an unknown time");
}

TEST(Wording, WritesSharesInPercent) {
    EXPECT_EQ(percentWords(Estimate::exactly(0.97)), "97 %");
    EXPECT_EQ(percentWords(Estimate::exactly(0.955)), "95.5 %");
    EXPECT_EQ(percentWords({0.95, notKnown, 0.98}), "95–98 %");
}

TEST(Wording, CountsWholeDays) {
    EXPECT_EQ(daysWords(9.9, 10.2), "9 days");
    EXPECT_EQ(daysWords(1, 1), "1 day");
    EXPECT_EQ(daysWords(9, 12.5), "9 to 12 days");
    EXPECT_EQ(daysWords(0, 0.5), "0 days");
}

TEST(Wording, NamesTheOriginOfARule) {
    RuleInForce rule;
    rule.origin = Origin::studioRule;
    EXPECT_EQ(originWords(rule), "studio rule");
    rule.origin = Origin::fitted;
    EXPECT_EQ(originWords(rule), "fitted");
    rule.origin = Origin::publishedSource;
    EXPECT_EQ(originWords(rule), "published source");
    rule.origin = Origin::commonPractice;
    EXPECT_EQ(originWords(rule), "common practice");
    rule.source = "ten looks";
    EXPECT_EQ(originWords(rule), "ten looks");
}

TEST(Wording, KeepsTwoDigitsThatCount) {
    EXPECT_EQ(roughly(0.0434), "0.043");
    EXPECT_EQ(roughly(1.24), "1.2");
    EXPECT_EQ(roughly(9.96), "10");
    EXPECT_EQ(roughly(12.4), "12");
    EXPECT_EQ(roughly(2796.0), "2800");
    EXPECT_EQ(roughly(0.0), "0");
    EXPECT_EQ(roughly(1'634'000.0), "1600000");
    EXPECT_EQ(roughly(0.00012), "0.0001");
    EXPECT_EQ(roughly(0.00003), "0");
    EXPECT_EQ(roughly(Estimate{0.00001, 0.00003, 0.00009}), "less than 0.001");
    EXPECT_EQ(roughly(Estimate{0.00001, 0.00003, 0.0021}), "0 (0–0.0021)");
    EXPECT_EQ(roughly(Estimate::exactly(0)), "0");
    EXPECT_EQ(roughly(Estimate{0.954, notKnown, 2796}), "0.95–2800");
}

}  // namespace
}  // namespace rackbook
