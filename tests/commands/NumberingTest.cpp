#include "commands/Numbering.h"

#include <gtest/gtest.h>

#include "base/Error.h"

namespace rackbook {

namespace {

using Texts = std::vector<std::string>;

std::string refusal(const std::string& first, std::size_t count) {
    try {
        successiveDesignations(first, count);
    } catch (const UsageError& error) {
        return error.what();
    }
    return "nothing was refused";
}

TEST(Numbering, CountsOnInTheDigitsAsWritten) {
    EXPECT_EQ(successiveDesignations("1/20", 3), (Texts{"1/20", "2/20", "3/20"}));
    EXPECT_EQ(successiveDesignations("09/20", 2), (Texts{"09/20", "10/20"}));
    EXPECT_EQ(successiveDesignations("1 / 20", 2), (Texts{"1 / 20", "2 / 20"}));
    EXPECT_EQ(successiveDesignations("TP 9", 2), (Texts{"TP 9", "TP 10"}));
    EXPECT_EQ(successiveDesignations("A.P. 1/3", 2), (Texts{"A.P. 1/3", "A.P. 2/3"}));
}

TEST(Numbering, CountsOnInRomanNumeralsOfTheSameCase) {
    EXPECT_EQ(successiveDesignations("AP I/V", 5),
              (Texts{"AP I/V", "AP II/V", "AP III/V", "AP IV/V", "AP V/V"}));
    EXPECT_EQ(successiveDesignations("ap viii/x", 3), (Texts{"ap viii/x", "ap ix/x", "ap x/x"}));
    EXPECT_EQ(successiveDesignations("XXXIX/L", 2), (Texts{"XXXIX/L", "XL/L"}));
    EXPECT_EQ(successiveDesignations("PP I", 2), (Texts{"PP I", "PP II"}));
}

TEST(Numbering, LeavesASingleDesignationAsItIs) {
    EXPECT_EQ(successiveDesignations("BAT", 1), Texts{"BAT"});
    EXPECT_EQ(successiveDesignations("TP C", 1), Texts{"TP C"});
    EXPECT_EQ(successiveDesignations("20/20", 1), Texts{"20/20"});
}

TEST(Numbering, RefusesToCountPastTheWhole) {
    EXPECT_EQ(refusal("1/20", 21),
              "the designation 1/20, counted on over 21 sheets, comes to 21 of only 20. Correct "
              "the second number, or name fewer sheets.");
    EXPECT_EQ(refusal("AP III/III", 2),
              "the designation AP III/III, counted on over 2 sheets, comes to 4 of only 3. Correct "
              "the second number, or name fewer sheets.");
    EXPECT_EQ(refusal("21/20", 1),
              "the designation 21/20 is numbered past 20. Correct one of the two numbers.");
}

TEST(Numbering, RefusesToCountFromNought) {
    EXPECT_EQ(refusal("0/20", 1), "the designation 0/20 counts from nought. Count from 1.");
}

TEST(Numbering, RefusesToCountOnWordsAndLetters) {
    EXPECT_EQ(refusal("BAT", 2),
              "the designation BAT has no number that can be counted on over 2 sheets. Give each "
              "of these sheets a designation of its own.");
    EXPECT_EQ(refusal("TP C", 2),
              "the designation TP C has no number that can be counted on over 2 sheets. Give each "
              "of these sheets a designation of its own.");
    EXPECT_EQ(refusal("TP A", 2),
              "the designation TP A has no number that can be counted on over 2 sheets. Give each "
              "of these sheets a designation of its own.");
}

}  // namespace

}  // namespace rackbook
