#include "exchange/MeasurementWords.h"

#include <gtest/gtest.h>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

TEST(MeasurementWords, KnowIlluminants) {
    EXPECT_EQ(illuminantIn("D50"), Illuminant::D50);
    EXPECT_EQ(illuminantIn(" d65 "), Illuminant::D65);
    EXPECT_EQ(illuminantIn("CIE A"), Illuminant::A);
    for (const char* text : {"", "C", "F11", "D50 D65", "D500", "CIE"})
        EXPECT_FALSE(illuminantIn(text)) << text;
}

// "2_Degree" and "10_Degree" are the words of the CxF3 schema.
TEST(MeasurementWords, KnowObservers) {
    for (const char* text : {"2", "2 degree", "2_Degree", "2°", "2deg", "2 deg"})
        EXPECT_EQ(observerIn(text), Observer::deg2) << text;
    EXPECT_EQ(observerIn("10_Degree"), Observer::deg10);
    for (const char* text : {"", "20", "2 10", "degree", "2 metres", "1931"})
        EXPECT_FALSE(observerIn(text)) << text;
}

TEST(MeasurementWords, KnowConditionsAndBackings) {
    EXPECT_EQ(conditionIn("M0_Incandescent"), MeasurementCondition::M0);
    EXPECT_EQ(conditionIn("M3"), MeasurementCondition::M3);
    EXPECT_FALSE(conditionIn("M4 M10 LM1 none"));
    EXPECT_EQ(backingIn("White backing"), Backing::white);
    EXPECT_EQ(backingIn("self"), Backing::self);
    EXPECT_FALSE(backingIn("na"));
}

TEST(MeasurementWords, KnowDaysThatCanBeReadInOneWay) {
    EXPECT_EQ(dayIn("2026-03-04T10:00:00Z", "x")->text(), "2026-03-04");
    EXPECT_FALSE(dayIn("03/04/2026", "x"));
    EXPECT_FALSE(dayIn("March 4, 2026", "x"));
    EXPECT_NE(test::messageOf<InputError>([] { dayIn("2026-02-30", "CREATED"); }).find("CREATED"),
              std::string::npos);
}

TEST(MeasurementWords, MakePlainTextOfAnyText) {
    EXPECT_EQ(plainWords(" a\tb ", 10), "a b");
    EXPECT_EQ(plainWords("aæ", 2), "a");
    EXPECT_FALSE(plainWords(" \t ", 10));
    EXPECT_FALSE(plainWords("", 10));
}

}  // namespace
}  // namespace rackbook
