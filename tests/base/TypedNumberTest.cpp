#include "base/TypedNumber.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

TEST(TypedNumber, TakesAPointOrAComma) {
    EXPECT_EQ(parseTypedNumber("12.5"), 12.5);
    EXPECT_EQ(parseTypedNumber("12,5"), 12.5);
    EXPECT_EQ(parseTypedNumber("-0,25"), -0.25);
    EXPECT_EQ(parseTypedNumber("1,234"), 1.234);
    EXPECT_EQ(parseTypedNumber("7"), 7);
}

TEST(TypedNumber, TakesNothingElse) {
    for (const char* text :
         {"", ",", "1.234,5", "1,234.5", "1,2,3", "12,5 g", "nan", "inf", "1e999"})
        EXPECT_FALSE(parseTypedNumber(text)) << text;
}

}  // namespace
}  // namespace rackbook
