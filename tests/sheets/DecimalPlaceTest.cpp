#include "sheets/DecimalPlace.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

std::size_t placeIn(std::string_view text) {
    return decimalPlace(text);
}

TEST(DecimalPlace, IsThePointOfTheFirstNumber) {
    EXPECT_EQ(placeIn("12.5"), 2u);
    EXPECT_EQ(placeIn("< 0.125 g"), 3u);
    EXPECT_EQ(placeIn("1.5 to 2.5"), 1u);
}

TEST(DecimalPlace, IsTheEndOfTheDigitsOfAWholeNumber) {
    EXPECT_EQ(placeIn("12 g"), 2u);
    EXPECT_EQ(placeIn("7"), 1u);
}

TEST(DecimalPlace, ReadsGroupedDigitsAsOneNumber) {
    EXPECT_EQ(placeIn("1,234.5"), 5u);
    EXPECT_EQ(placeIn("1\u202F234.5"), 7u);
    EXPECT_EQ(placeIn("1, 2"), 1u);
}

TEST(DecimalPlace, GoesByTheSignOfTheLanguage) {
    EXPECT_EQ(decimalPlace("12,5", ","), 2u);
    EXPECT_EQ(decimalPlace("1.234,5", ","), 5u);
    EXPECT_EQ(decimalPlace("1\u202F234,5", ","), 7u);
    EXPECT_EQ(decimalPlace("1’234.5", "."), 7u);
}

TEST(DecimalPlace, IsTheEndOfTextWithoutDigits) {
    EXPECT_EQ(placeIn("none"), 4u);
    EXPECT_EQ(placeIn(""), 0u);
}

}  // namespace
}  // namespace rackbook
