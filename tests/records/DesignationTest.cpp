#include "records/Designation.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

struct Row {
    const char* written;
    int number;  // 0: none
    int of;
    int kind;  // of DesignationKind, or -1
    const char* key;
};

constexpr int kindNumber(DesignationKind kind) {
    return static_cast<int>(kind);
}

constexpr int none = -1;
constexpr int numbered = kindNumber(DesignationKind::numbered);
constexpr int artists = kindNumber(DesignationKind::artistsProof);
constexpr int printers = kindNumber(DesignationKind::printersProof);
constexpr int hors = kindNumber(DesignationKind::horsCommerce);

constexpr Row rows[] = {
    {"7/30", 7, 30, numbered, "7/30"},
    {" 7 / 30 ", 7, 30, numbered, "7/30"},
    {"100000/100000", 100000, 100000, numbered, "100000/100000"},
    {"VII/XXX", 7, 30, numbered, "VII/XXX"},
    {"vii/xxx", 7, 30, numbered, "VII/XXX"},
    {"AP II/III", 2, 3, artists, "AP II/III"},
    {"A.P. ii / iii", 2, 3, artists, "AP II/III"},
    {"AP  2/3", 2, 3, artists, "AP 2/3"},
    {"AP2/3", 2, 3, artists, "AP2/3"},
    {"AP", 0, 0, artists, "AP"},
    {"AP 2", 2, 0, artists, "AP 2"},
    {"AP II", 2, 0, artists, "AP II"},
    {"E.A. 1/5", 1, 5, artists, "EA 1/5"},
    {"BAT", 0, 0, kindNumber(DesignationKind::bonATirer), "BAT"},
    {"B.A.T.", 0, 0, kindNumber(DesignationKind::bonATirer), "BAT"},
    {"PP 1/2", 1, 2, printers, "PP 1/2"},
    {"HC IV/V", 4, 5, hors, "HC IV/V"},
    {"H.C.", 0, 0, hors, "HC"},
    {"TP 3", 3, 0, kindNumber(DesignationKind::trialProof), "TP 3"},
    {"WP", 0, 0, kindNumber(DesignationKind::workingProof), "WP"},
    {"archive", 0, 0, kindNumber(DesignationKind::archive), "ARCHIVE"},
    {"SP 1/2", 1, 2, none, "SP 1/2"},
    {"CP", 0, 0, none, "CP"},
    {"", 0, 0, none, ""},
    {"12", 12, 0, none, "12"},
    {"IIII/V", 0, 0, none, "IIII/V"},
    {"IC/C", 0, 0, none, "IC/C"},
    {"7/", 7, 0, none, "7/"},
    {"/30", 0, 0, none, "/30"},
    {"VII/30", 7, 30, numbered, "VII/30"},
    {"AP/3", 0, 0, none, "AP/3"},
    {"7/30/2", 7, 0, none, "7/30/2"},
    {"0/30", 0, 30, numbered, "0/30"},
};

TEST(Designation, ReadsWhatIsWritten) {
    for (const Row& row : rows) {
        SCOPED_TRACE(row.written);
        const DesignationParts parts = designationParts(row.written);
        EXPECT_EQ(parts.number.value_or(0), row.number);
        EXPECT_EQ(parts.of.value_or(0), row.of);
        const std::optional<DesignationKind> kind = designationKindOf(row.written);
        EXPECT_EQ(kind ? kindNumber(*kind) : none, row.kind);
        EXPECT_EQ(designationKey(row.written), row.key);
    }
}

TEST(Designation, GuessesNothing) {
    EXPECT_FALSE(designationParts("AP").number);
    EXPECT_FALSE(designationParts("AP II").of);
    EXPECT_FALSE(designationParts("1234567/30").number);
}

// Roman numerals as they are written today: subtraction only of I, X and C from the next two
// steps (from memory).
TEST(Designation, ReadsEveryRomanNumeralToAThousand) {
    const char* ones[] = {"", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX"};
    const char* tens[] = {"", "X", "XX", "XXX", "XL", "L", "LX", "LXX", "LXXX", "XC"};
    const char* hundreds[] = {"", "C", "CC", "CCC", "CD", "D", "DC", "DCC", "DCCC", "CM"};
    for (int n = 1; n < 1000; ++n) {
        const std::string text = std::string(hundreds[n / 100]) + tens[n / 10 % 10] + ones[n % 10];
        EXPECT_EQ(designationParts("AP " + text).number.value_or(0), n) << text;
    }
}

TEST(Designation, AgreesWithItselfHoweverItIsWritten) {
    EXPECT_EQ(designationKey("AP  ii/iii"), designationKey("A.P. II / III"));
    EXPECT_NE(designationKey("AP 1/3"), designationKey("AP 2/3"));
    EXPECT_NE(designationKey("AP 1/3"), designationKey("PP 1/3"));
}

TEST(Designation, HasWordsForEachKind) {
    EXPECT_STREQ(designationWords(DesignationKind::numbered), "numbered");
    EXPECT_STREQ(designationWords(DesignationKind::artistsProof), "artist's proof");
    EXPECT_STREQ(designationWords(DesignationKind::bonATirer), "bon à tirer");
    EXPECT_STREQ(designationWords(DesignationKind::presentationProof), "presentation proof");
    EXPECT_STREQ(designationWords(DesignationKind::archive), "archive");
}

}  // namespace
}  // namespace rackbook
