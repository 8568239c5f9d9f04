#include "pdf/PdfMetadata.h"

#include <gtest/gtest.h>

#include "SampleSheet.h"
#include "sheets/ErrorText.h"

namespace rackbook {
namespace {

// ISO 32000-1, 7.9.4.
TEST(PdfMetadata, WritesDatesAsThePdfStandardAsks) {
    EXPECT_EQ(pdfDate("2026-03-04T08:30:05Z"), "D:20260304083005+00'00'");
    EXPECT_EQ(pdfDate("2026-03-04T08:30:05-03:30"), "D:20260304083005-03'30'");
    EXPECT_EQ(pdfDate("2026-03-04T08:30:05+01:00"), "D:20260304083005+01'00'");
}

TEST(PdfMetadata, RefusesOtherDates) {
    EXPECT_EQ(messageOf<RenderError>([] { pdfDate("4 March 2026"); }),
              "document date: \"4 March 2026\" is not a date with time and zone. Write it as "
              "2026-03-04T08:30:00Z.");
    EXPECT_THROW(pdfDate(""), RenderError);
    EXPECT_THROW(pdfDate("2026-03-04T08:30:05"), RenderError);
    EXPECT_THROW(pdfDate("2026-03-04T08:30:05+0100"), RenderError);
}

TEST(PdfMetadata, EscapesWhatXmlReserves) {
    const std::string packet = xmpPacket(sampleInfo());
    EXPECT_NE(packet.find("Record of an edition &amp; its &lt;proofs&gt;"), std::string::npos);
    EXPECT_NE(packet.find("<pdf:Keywords>reduction linocut, Ωmega, Жёлтый</pdf:Keywords>"),
              std::string::npos);
}

TEST(PdfMetadata, LeavesOutWhatIsEmpty) {
    DocumentInfo info;
    info.title = "A";
    info.created = "2026-03-04T08:30:00Z";
    const std::string packet = xmpPacket(info);
    for (const char* name : {"dc:creator", "dc:description", "dc:language", "pdf:Keywords"})
        EXPECT_EQ(packet.find(name), std::string::npos) << name;
}

TEST(PdfMetadata, RefusesAnEmptyTitle) {
    DocumentInfo info = sampleInfo();
    info.title.clear();
    EXPECT_EQ(messageOf<RenderError>([&] { xmpPacket(info); }),
              "document title: it is empty. Give the sheet a title.");
}

TEST(PdfMetadata, RefusesTextThatXmlCannotHold) {
    DocumentInfo info = sampleInfo();
    info.author = "a\x01";
    EXPECT_EQ(messageOf<RenderError>([&] { xmpPacket(info); }),
              "document author: \"a\\u0001\" holds bytes that are no readable text. Write it again "
              "without them.");
}

}  // namespace
}  // namespace rackbook
