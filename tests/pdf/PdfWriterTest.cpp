#include "pdf/PdfWriter.h"

#include <gtest/gtest.h>

#include "OutsideReader.h"
#include "SampleSheet.h"

namespace rackbook {
namespace {

TEST(PdfWriter, SampleCanBeWritten) {
    const PdfFonts fonts;
    const std::string path = fileWith(writePdf(sampleSheet(fonts), fonts), "sample.pdf");
    std::cout << path << "\n";
    const Reading check = readWith("qpdf --check " + path);
    EXPECT_EQ(check.exitCode, 0) << check.output;
}

}  // namespace
}  // namespace rackbook
