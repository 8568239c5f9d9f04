// Rules of PDF/A-3b (ISO 19005-3), each from memory and checked one by one on the file as qpdf
// writes it out in plain text. They stand in for a validator of that part.
#include <gtest/gtest.h>

#include "OutsideReader.h"
#include "SampleSheet.h"
#include "base/Files.h"
#include "pdf/PdfMetadata.h"
#include "pdf/PdfWriter.h"
#include "pdf/SrgbProfile.h"

namespace rackbook {
namespace {

class ArchivalRules : public testing::Test {
protected:
    void SetUp() override {
        const PdfFonts fonts;
        m_bytes = writePdf(sampleSheet(fonts), fonts);
        const std::string path = fileWith(m_bytes, "archive.pdf");
        const ToolRun plain =
            readWith("qpdf --qdf --object-streams=disable " + path + " " + path + ".plain");
        ASSERT_EQ(plain.exitCode, 0) << plain.output;
        m_plain = readFile(path + ".plain", 1 << 26);
    }

    bool holds(const std::string& text) const { return m_plain.find(text) != std::string::npos; }

    std::size_t countOf(const std::string& text) const { return timesIn(m_plain, text); }

    std::string m_bytes;
    std::string m_plain;
};

TEST_F(ArchivalRules, HeaderIsFollowedByABinaryComment) {
    ASSERT_EQ(m_bytes.substr(0, 10), "%PDF-1.7\n%");
    for (std::size_t i = 10; i < 14; ++i)
        EXPECT_GT(static_cast<unsigned char>(m_bytes[i]), 127);
}

TEST_F(ArchivalRules, TrailerHasAnIdentifierAndNoEncryption) {
    const std::size_t at = m_bytes.rfind("/ID [ <");
    ASSERT_NE(at, std::string::npos);
    const std::string identifier = m_bytes.substr(at + 7, 32);
    EXPECT_EQ(identifier.find_first_not_of("0123456789abcdef"), std::string::npos) << identifier;
    EXPECT_EQ(m_bytes.substr(at + 39, 36), "> <" + identifier + ">");
    EXPECT_FALSE(holds("/Encrypt"));
}

TEST_F(ArchivalRules, MetadataAreUncompressedAndClaimTheLevel) {
    EXPECT_NE(m_bytes.find("<pdfaid:part>3</pdfaid:part>"), std::string::npos);
    EXPECT_NE(m_bytes.find("<pdfaid:conformance>B</pdfaid:conformance>"), std::string::npos);
    EXPECT_TRUE(holds("/Subtype /XML"));
}

// The outside reader's view of the Info dictionary against the packet.
TEST_F(ArchivalRules, InfoDictionaryEqualsTheMetadata) {
    const ToolRun info = readWith("pdfinfo -isodates -enc UTF-8 " + fileWith(m_bytes, "info.pdf"));
    const std::string title =
        "Evening by the Weir, with Alders and the Lights of the Paper Mill on "
        "the Far Bank";
    for (const std::string& line :
         {"Title:           " + title, std::string("Author:          Studio at the Old Weir"),
          std::string("Subject:         Record of an edition & its <proofs>"),
          std::string("Keywords:        reduction linocut, Ωmega, Жёлтый"),
          std::string("Creator:         Rackbook"), std::string("Producer:        Rackbook"),
          std::string("CreationDate:    2026-03-04T08:30:00Z"),
          std::string("ModDate:         2026-03-04T08:30:00Z")})
        EXPECT_NE(info.output.find(line + "\n"), std::string::npos) << line << info.output;
    DocumentInfo expected = sampleInfo();
    expected.title = title;
    EXPECT_NE(m_bytes.find(xmpPacket(expected)), std::string::npos);
}

TEST_F(ArchivalRules, OutputIntentHoldsAnRgbProfile) {
    EXPECT_TRUE(holds("/S /GTS_PDFA1"));
    EXPECT_TRUE(holds("/OutputConditionIdentifier (sRGB)"));
    EXPECT_TRUE(holds("/N 3\n"));
    EXPECT_TRUE(holds(srgbProfile()));
}

TEST_F(ArchivalRules, ProfileIsADisplayProfileWithAFixedDate) {
    const std::string profile = srgbProfile();
    EXPECT_EQ(profile.substr(12, 12), "mntrRGB XYZ ");
    EXPECT_EQ(profile.substr(36, 4), "acsp");
    EXPECT_EQ(profile[8], 2) << "version 2";
    EXPECT_EQ(profile.substr(24, 12), std::string("\x07\xE4\0\1\0\1\0\0\0\0\0\0", 12));
    EXPECT_EQ(profile, srgbProfile());
}

TEST_F(ArchivalRules, FontsAreEmbeddedWithIdentityMapsAndUnicode) {
    EXPECT_EQ(countOf("/Subtype /Type0\n"), 3u);
    EXPECT_EQ(countOf("/Encoding /Identity-H\n"), 3u);
    EXPECT_EQ(countOf("/ToUnicode "), 3u);
    EXPECT_EQ(countOf("/CIDToGIDMap /Identity\n"), 3u);
    EXPECT_EQ(countOf("/FontFile2 "), 3u);
    EXPECT_EQ(m_bytes.find("/CIDSet"), std::string::npos);
}

// CIELAB under D50; greys are covered by the output intent.
TEST_F(ArchivalRules, ColoursDoNotDependOnADevice) {
    EXPECT_TRUE(holds("/WhitePoint [\n      0.964200\n      1.000000\n      0.824900\n"));
    EXPECT_TRUE(holds("/LabD50 cs 38.400 -12.000 -42.500 sc"));
    for (const char* deviceColour : {" rg\n", " RG\n", " k\n", " K\n"})
        EXPECT_FALSE(holds(deviceColour)) << deviceColour;
    EXPECT_FALSE(holds("/DeviceCMYK"));
}

TEST_F(ArchivalRules, HasNoTransparencyActionsOrOutsideStreams) {
    for (const char* key : {"/SMask", "/CA ", "/ca ", "/BM ", "/JavaScript", "/OpenAction", "/AA ",
                            "/FFilter", "/LZWDecode", "/AcroForm", "/Annots"})
        EXPECT_FALSE(holds(key)) << key;
}

TEST_F(ArchivalRules, NamesItsLanguage) {
    EXPECT_TRUE(holds("/Lang (en)"));
}

}  // namespace
}  // namespace rackbook
