#include "sheets/SheetLocale.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

// Unicode CLDR, locale data of the languages and countries, from memory: decimal and group signs
// of numbers, wide month names.
struct Facts {
    const char* tag;
    const char* grouped;  // 1234567.25
    const char* march;
};

constexpr Facts facts[] = {{"en", "1,234,567.25", "March"},
                           {"en-GB", "1,234,567.25", "March"},
                           {"de", "1.234.567,25", "März"},
                           {"fr", "1\u202F234\u202F567,25", "mars"},
                           {"es", "1.234.567,25", "marzo"},
                           {"ja", "1,234,567.25", "3月"},
                           {"de-AT", "1\u00A0234\u00A0567,25", "März"},
                           {"de-CH", "1’234’567.25", "März"},
                           {"fr-CA", "1\u00A0234\u00A0567,25", "mars"},
                           {"es-MX", "1,234,567.25", "marzo"}};

TEST(SheetLocale, WritesFiguresAsTheCountryDoes) {
    for (const Facts& one : facts) {
        const SheetLocale locale(one.tag);
        EXPECT_EQ(locale.figure("1234567.25"), one.grouped) << one.tag;
        EXPECT_EQ(locale.monthInDate(3), one.march) << one.tag;
    }
}

TEST(SheetLocale, GroupsFromTenThousandOn) {
    EXPECT_EQ(SheetLocale("en").figure("9999"), "9999");
    EXPECT_EQ(SheetLocale("en").figure("10000"), "10,000");
    EXPECT_EQ(SheetLocale("de").figure("-10000.125"), "−10.000,125");
    EXPECT_EQ(SheetLocale("de").figure("0.00025"), "0,00025");
    EXPECT_EQ(SheetLocale("de").figure("1e+20"), "1e+20");
}

TEST(SheetLocale, KnowsMonthsOfCountriesAndAlone) {
    EXPECT_EQ(SheetLocale("de-AT").monthInDate(1), "Jänner");
    // A Slavic genitive in a day's date, the nominative alone.
    EXPECT_EQ(SheetLocale("cs").monthInDate(3), "března");
    EXPECT_EQ(SheetLocale("cs").monthAlone(3), "březen");
}

TEST(SheetLocale, FallsBackToEnglishForTagsThatNobodyKnows) {
    EXPECT_EQ(SheetLocale("xx-YY").figure("12345.5"), "12,345.5");
    EXPECT_EQ(SheetLocale("xx-YY").monthInDate(3), "March");
}

}  // namespace
}  // namespace rackbook
