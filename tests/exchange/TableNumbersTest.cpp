#include "exchange/TableNumbers.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

const NumberForm point;
const NumberForm comma{',', '\0'};
const NumberForm german{',', '.'};
const NumberForm english{'.', ','};

double read(const std::string& text, const NumberForm& form,
            const std::vector<std::string>& units = {}) {
    return numberIn(text, form, units).value.value_or(-999);
}
std::string refusal(const std::string& text, const NumberForm& form) {
    return numberIn(text, form).what;
}

TEST(TableNumbers, ReadsTheDecimalMarkThatIsSaid) {
    EXPECT_EQ(read("12.5", point), 12.5);
    EXPECT_EQ(read("12,5", comma), 12.5);
    EXPECT_EQ(read("-3", comma), -3);
    EXPECT_EQ(read("\u22123,25", comma), -3.25);
    EXPECT_EQ(read("1e-05", point), 1e-05);
    EXPECT_EQ(read(" 7 ", point), 7);
}

TEST(TableNumbers, ReadsMarksBetweenThousandsOnlyWhereTheyAreSaid) {
    EXPECT_EQ(read("1.234,50", german), 1234.5);
    EXPECT_EQ(read("1,234,567.5", english), 1234567.5);
    EXPECT_EQ(read("1'234.5", {'.', '\''}), 1234.5);
    EXPECT_EQ(read("1\u2019234", {'.', '\''}), 1234);
    EXPECT_EQ(read("1\u202F234,5", {',', ' '}), 1234.5);
    EXPECT_EQ(read("62,5", german), 62.5);
    EXPECT_EQ(refusal("12.5", german), "the marks between thousands part no groups of three");
    EXPECT_EQ(refusal("1.2345", german), "the marks between thousands part no groups of three");
    EXPECT_EQ(refusal("1,23,456", english), "the marks between thousands part no groups of three");
    EXPECT_EQ(refusal(".123", german), "the marks between thousands part no groups of three");
    EXPECT_EQ(refusal("1,5.000", german), "the marks between thousands part no groups of three");
}

TEST(TableNumbers, RefuseTheOtherMarkAndSayWhatToDo) {
    EXPECT_EQ(refusal("12,5", point), "the number has a comma, and decimals have a point here");
    EXPECT_EQ(refusal("1.234", comma), "the number has a point, and decimals have a comma here");
    EXPECT_EQ(refusal("zehn", comma), "this is not a number");
    EXPECT_EQ(refusal("1 234", point), "this is not a number");
    EXPECT_EQ(refusal("inf", point), "this is not a number");
    EXPECT_EQ(refusal("nan", point), "this is not a number");
    EXPECT_EQ(refusal("", point), "this is not a number");
    EXPECT_EQ(refusal("250 ml", point), "this is not a number");
}

TEST(TableNumbers, LeaveOutTheUnitsThatAreSaid) {
    EXPECT_EQ(read("250 g", point, {"g"}), 250);
    EXPECT_EQ(read("€ 12,50", comma, {"€"}), 12.5);
    EXPECT_EQ(read("250 kg", point, {"g"}), -999);
}

}  // namespace
}  // namespace rackbook
