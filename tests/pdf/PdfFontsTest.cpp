#include "pdf/PdfFonts.h"

#include <gtest/gtest.h>

#include "base/Files.h"
#include "sheets/ErrorText.h"

namespace rackbook {
namespace {

// Advances and heights of Noto Sans in thousandths of an em, from its hmtx and hhea tables
// (read out with a script of a few lines: A 639, i 258, space 260, digits 572; ascent 1069, descent
// 293).
TEST(PdfFonts, MeasuresWithTheWidthsOfTheFont) {
    const PdfFonts fonts;
    const double em_mm = 10 * mmPerPoint;
    EXPECT_NEAR(fonts.width_mm(FontRole::body, 10, "A"), 0.639 * em_mm, 1e-4);
    EXPECT_NEAR(fonts.width_mm(FontRole::body, 10, "i A"), (0.258 + 0.260 + 0.639) * em_mm, 1e-4);
    EXPECT_NEAR(fonts.width_mm(FontRole::body, 20, "A"), 0.639 * em_mm * 2, 1e-4);
    EXPECT_NEAR(fonts.width_mm(FontRole::bodyStrong, 10, "A"), 0.690 * em_mm, 1e-4);
    EXPECT_NEAR(fonts.ascent_mm(FontRole::body, 10), 1.069 * em_mm, 1e-4);
    EXPECT_NEAR(fonts.descent_mm(FontRole::body, 10), 0.293 * em_mm, 1e-4);
}

TEST(PdfFonts, SetsAllDigitsInOneWidth) {
    const PdfFonts fonts;
    for (const FontRole role : {FontRole::figures, FontRole::figuresStrong})
        for (const char* digit : {"0", "1", "4", "7", "9"})
            EXPECT_NEAR(fonts.width_mm(role, 10, digit), 0.572 * 10 * mmPerPoint, 1e-4);
}

TEST(PdfFonts, MeasuresLettersBeyondTheFirst256) {
    const PdfFonts fonts;
    for (const char* letter : {"Ω", "Ж", "ě", "ớ"})
        EXPECT_GT(fonts.width_mm(FontRole::body, 10, letter), 1) << letter;
}

TEST(PdfFonts, ReportsTheFirstCharacterThatNoFamilyHas) {
    const PdfFonts fonts;
    EXPECT_FALSE(fonts.missingGlyph(FontRole::body, "Ωmega − Жёлтый Věra"));
    EXPECT_EQ(fonts.missingGlyph(FontRole::body, "a\u6F22\u5B57"), char32_t{0x6F22});
    EXPECT_EQ(fonts.missingGlyph(FontRole::body, "a\U0001D400"), char32_t{0x1D400});
}

// U+2212 is in Noto Sans Math and not in Noto Sans (Debian 12).
TEST(PdfFonts, LetsTheNextFamilyDrawWhatTheFirstLacks) {
    const PdfFonts fonts;
    const auto pieces = fonts.pieces(FontRole::bodyStrong, "a\u22125");
    ASSERT_EQ(pieces.size(), 3u);
    EXPECT_EQ(fileNameOf(fonts.files()[pieces[0].file]), "NotoSans-Bold.ttf");
    EXPECT_EQ(fileNameOf(fonts.files()[pieces[1].file]), "NotoSansMath-Regular.ttf");
    EXPECT_EQ(pieces[1].text, "\u2212");
    EXPECT_EQ(pieces[2].text, "5");
    EXPECT_EQ(pieces[2].file, pieces[0].file);
}

TEST(PdfFonts, OpensEachFileOnce) {
    EXPECT_EQ(PdfFonts().files().size(), 3u);
    EXPECT_EQ(PdfFonts({{"Noto Serif"}, {"Noto Sans"}}).files().size(), 4u);
}

TEST(PdfFonts, RefusesAFirstFamilyWithoutABoldWeight) {
    EXPECT_EQ(messageOf<RenderError>([] {
                  PdfFonts({{"Noto Sans Math"}, {"Noto Sans"}});
              }),
              "font family \"Noto Sans Math\": its TrueType outlines in the bold weight are not on "
              "this machine. Install the Debian package fonts-noto-core, or name another family in "
              "the template.");
}

TEST(PdfFonts, RefusesANextFamilyThatIsNotInstalled) {
    EXPECT_EQ(messageOf<RenderError>([] {
                  PdfFonts({{"Noto Sans", "Noto Sand"}, {"Noto Sans"}});
              }),
              "font family \"Noto Sand\": its TrueType outlines in the regular weight are not on "
              "this machine. Install a package that has it, or name another family in the "
              "template; Noto Sans is in the Debian package fonts-noto-core.");
}

TEST(PdfFonts, RefusesARoleWithoutFamilies) {
    EXPECT_EQ(messageOf<RenderError>([] {
                  PdfFonts({{}, {"Noto Sans"}});
              }),
              "fonts: a role has no font family. Name at least one family for text and for "
              "figures.");
}

}  // namespace
}  // namespace rackbook
