// Whether the reader of codes can be relied on: codes made by another library come back, and a page
// without any gives none.
#include "CodesOnPage.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <qrcodegen/qrcodegen.hpp>

#include "OutsideReader.h"
#include "SampleSheet.h"
#include "archival/Twin.h"
#include "pdf/PdfWriter.h"

namespace rackbook {
namespace {

using qrcodegen::QrCode;

QrCode codeOf(const std::string& text) {
    return QrCode::encodeText(text.c_str(), QrCode::Ecc::MEDIUM);
}

// A plain bitmap, six dots a module, with the quiet zone of four modules (ISO/IEC 18004).
std::string bitmapOf(const QrCode& code) {
    constexpr int dots = 6, quiet = 4;
    const int side = (code.getSize() + 2 * quiet) * dots;
    std::string image = "P1\n" + std::to_string(side) + " " + std::to_string(side) + "\n";
    for (int y = 0; y < side; ++y)
        for (int x = 0; x < side; ++x)
            image += code.getModule(x / dots - quiet, y / dots - quiet) ? "1\n" : "0\n";
    return image;
}

// Squares of half a millimetre.
std::string operatorsFor(const QrCode& code, double left_pt, double top_pt) {
    constexpr double module_pt = 0.5 * 72 / 25.4;
    std::string operators = "0 g\n";
    for (int y = 0; y < code.getSize(); ++y)
        for (int x = 0; x < code.getSize(); ++x)
            if (code.getModule(x, y))
                operators += std::to_string(left_pt + x * module_pt) + " " +
                             std::to_string(top_pt - (y + 1) * module_pt) + " " +
                             std::to_string(module_pt) + " " + std::to_string(module_pt) + " re\n";
    return operators + "f";
}

std::string plainPage() {
    const PdfFonts fonts;
    return writePdf(shortSheet(fonts, "Two layers on thin paper."), fonts);
}

TEST(CodesOnPage, ReadsACodeThatAnotherLibraryMade) {
    const std::string image = fileWith(bitmapOf(codeOf("EEL-12/Ωmega 0.5 g")), "code.pbm");
    EXPECT_EQ(decodedCodesOf(image), std::vector<std::string>{"EEL-12/Ωmega 0.5 g"});
}

TEST(CodesOnPage, ReadsCodesOffADrawnPage) {
    Twin twin(plainPage());
    twin.draw(operatorsFor(codeOf("EEL-12"), 100, 300) + "\n" +
              operatorsFor(codeOf("LOT-2026-07"), 300, 300));
    std::vector<std::string> codes = decodedCodes(twin.bytes(), 1);
    std::sort(codes.begin(), codes.end());
    EXPECT_EQ(codes, (std::vector<std::string>{"EEL-12", "LOT-2026-07"}));
}

TEST(CodesOnPage, FindsNoneWhereThereIsNone) {
    EXPECT_TRUE(decodedCodes(plainPage(), 1).empty());
}

}  // namespace
}  // namespace rackbook
