#include "base/Numbers.h"

#include <gtest/gtest.h>

#include <clocale>
#include <cmath>
#include <limits>
#include <locale>

namespace rackbook {
namespace {

using Number = std::optional<double>;
using Whole = std::optional<long long>;

// Sets a locale with a decimal comma where the machine has one, and puts the old one back.
class CommaLocale {
public:
    CommaLocale() : m_before(std::setlocale(LC_ALL, nullptr)) {
        for (const char* name : {"da_DK.UTF-8", "de_DE.UTF-8", "fr_FR.UTF-8", "da_DK", "de_DE"})
            if (std::setlocale(LC_ALL, name) != nullptr && *std::localeconv()->decimal_point == ',')
                m_found = true;
    }
    CommaLocale(const CommaLocale&) = delete;
    CommaLocale& operator=(const CommaLocale&) = delete;
    ~CommaLocale() { std::setlocale(LC_ALL, m_before.c_str()); }
    bool found() const { return m_found; }

private:
    std::string m_before;
    bool m_found = false;
};

TEST(Numbers, ReadsTheWholeTextOrNothing) {
    EXPECT_EQ(parseNumber("1.5"), Number(1.5));
    EXPECT_EQ(parseNumber("-0.25"), Number(-0.25));
    EXPECT_EQ(parseNumber("1e3"), Number(1000));
    EXPECT_EQ(parseNumber("12"), Number(12));
    for (const char* wrong : {"", " 1", "1 ", "1,5", "1.5g", "+1", "0x10", "--1", "one", "inf",
                              "nan", "1e999", "-infinity"})
        EXPECT_EQ(parseNumber(wrong), Number()) << wrong;
}

TEST(Numbers, ReadsWholeNumbers) {
    EXPECT_EQ(parseWhole("-12"), Whole(-12));
    EXPECT_EQ(parseWhole("9223372036854775807"), Whole(INT64_MAX));
    for (const char* wrong : {"", "1.0", "1e3", " 1", "+1", "9223372036854775808", "0x1"})
        EXPECT_EQ(parseWhole(wrong), Whole()) << wrong;
}

TEST(Numbers, WritesFixedDecimals) {
    EXPECT_EQ(formatFixed(1.5, 2), "1.50");
    EXPECT_EQ(formatFixed(2.0 / 3, 3), "0.667");
    EXPECT_EQ(formatFixed(12, 0), "12");
    EXPECT_EQ(formatFixed(-1.25, 1), "-1.2");
    EXPECT_EQ(formatFixed(-0.04, 1), "0.0");
    EXPECT_EQ(formatFixed(-0.0, 0), "0");
    EXPECT_EQ(formatFixed(1e300, 0).size(), 301u);
}

TEST(Numbers, WritesTheFewestDigitsThatReadBackEqual) {
    EXPECT_EQ(formatShortest(0.1), "0.1");
    EXPECT_EQ(formatShortest(0.1 + 0.2), "0.30000000000000004");
    EXPECT_EQ(formatShortest(12), "12");
    // As people write them, not 2e+05 and 1e-04.
    EXPECT_EQ(formatShortest(200000), "200000");
    EXPECT_EQ(formatShortest(-1e-4), "-0.0001");
    EXPECT_EQ(formatShortest(0), "0");
    EXPECT_EQ(formatShortest(1e15), "1e+15");
    for (const double value : {1e14, 1e-5, 2e-6, 1.0 / 3, 6.02214076e23, 5e-324,
                               std::numeric_limits<double>::max(), -123.456, 100000.0})
        EXPECT_EQ(parseNumber(formatShortest(value)), Number(value));
}

// Streams follow the global locale of C++; strtod and printf follow that of C.
class CommaPunctuation : public std::numpunct<char> {
protected:
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

TEST(Numbers, DoNotDependOnTheLocaleOfStreams) {
    const std::locale before =
        std::locale::global(std::locale(std::locale::classic(), new CommaPunctuation));
    EXPECT_EQ(parseNumber("1.5"), Number(1.5));
    EXPECT_EQ(formatFixed(1234.5, 2), "1234.50");
    EXPECT_EQ(formatShortest(1234.5), "1234.5");
    std::locale::global(before);
}

TEST(Numbers, DoNotDependOnTheLocale) {
    const CommaLocale comma;
    if (!comma.found())
        GTEST_SKIP() << "this machine has no locale with a decimal comma";
    EXPECT_EQ(parseNumber("1.5"), Number(1.5));
    EXPECT_EQ(parseNumber("1,5"), Number());
    EXPECT_EQ(formatFixed(1234.5, 2), "1234.50");
    EXPECT_EQ(formatShortest(1234.5), "1234.5");
}

TEST(Numbers, RoundToFiveDigits) {
    EXPECT_EQ(roundedToFive(0.123456789), 0.12346);
    EXPECT_EQ(roundedToFive(-98765.4321), -98765);
    EXPECT_EQ(roundedToFive(9999996), 1e7);
    EXPECT_EQ(roundedToFive(0), 0);
    EXPECT_TRUE(std::isnan(roundedToFive(std::nan(""))));
    EXPECT_TRUE(std::isinf(roundedToFive(std::numeric_limits<double>::infinity())));
}

}  // namespace
}  // namespace rackbook
