#include "base/Ranges.h"

#include <gtest/gtest.h>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;
using Numbers = std::vector<int>;

std::string refusal(const std::string& text) {
    return messageOf<UsageError>([&] { parseRanges(text); });
}

TEST(Ranges, ReadsNumbersAndRangesInAnyOrder) {
    EXPECT_EQ(parseRanges("7"), (Numbers{7}));
    EXPECT_EQ(parseRanges("1-4,9"), (Numbers{1, 2, 3, 4, 9}));
    EXPECT_EQ(parseRanges("9,1-2"), (Numbers{1, 2, 9}));
    EXPECT_EQ(parseRanges(" 1 - 3 , 5 "), (Numbers{1, 2, 3, 5}));
    EXPECT_EQ(parseRanges("5-5"), (Numbers{5}));
    EXPECT_EQ(parseRanges("1-100000").size(), 100000u);
}

TEST(Ranges, RefusesWhatIsNotARange) {
    const std::string remedy = ". Write ranges like 1-12,15.";
    EXPECT_EQ(refusal(""), "the range \"\" has an empty part" + remedy);
    EXPECT_EQ(refusal("1,,2"), "the range \"1,,2\" has an empty part" + remedy);
    EXPECT_EQ(refusal("1,"), "the range \"1,\" has an empty part" + remedy);
    EXPECT_EQ(refusal("1,a"), "the range \"a\" is not made of whole numbers" + remedy);
    EXPECT_EQ(refusal("1-"), "the range \"1-\" is not made of whole numbers" + remedy);
    EXPECT_EQ(refusal("-3"), "the range \"-3\" is not made of whole numbers" + remedy);
    EXPECT_EQ(refusal("+3"), "the range \"+3\" is not made of whole numbers" + remedy);
    EXPECT_EQ(refusal("1--3"), "the range \"1--3\" is not made of whole numbers" + remedy);
    EXPECT_EQ(refusal("1-2-3"), "the range \"1-2-3\" is not made of whole numbers" + remedy);
    EXPECT_EQ(refusal("1.5"), "the range \"1.5\" is not made of whole numbers" + remedy);
    EXPECT_EQ(refusal("0"), "the range \"0\" is not between 1 and 100000" + remedy);
    EXPECT_EQ(refusal("100001"), "the range \"100001\" is not between 1 and 100000" + remedy);
    EXPECT_EQ(refusal("99999999999999999999"),
              "the range \"99999999999999999999\" is not between 1 and 100000" + remedy);
    EXPECT_EQ(refusal("12-1"), "the range \"12-1\" runs backwards" + remedy);
    EXPECT_EQ(refusal("1-4,3"), "the range \"1-4,3\" names 3 twice" + remedy);
    EXPECT_EQ(refusal("1-100000,1-100000"),
              "the range \"1-100000,1-100000\" names a number twice" + remedy);
}

TEST(Ranges, WritesTheShortestText) {
    EXPECT_EQ(formatRanges({}), "");
    EXPECT_EQ(formatRanges({4}), "4");
    EXPECT_EQ(formatRanges({1, 2}), "1,2");
    EXPECT_EQ(formatRanges({1, 2, 3, 5}), "1-3,5");
    EXPECT_EQ(formatRanges({1, 3, 4, 5, 9, 10}), "1,3-5,9,10");
}

TEST(Ranges, ReadsBackWhatItWrote) {
    const Numbers numbers = {1, 2, 5, 6, 7, 40, 100000};
    EXPECT_EQ(parseRanges(formatRanges(numbers)), numbers);
}

}  // namespace
}  // namespace rackbook
