#include "pdf/PdfWriter.h"

#include <gtest/gtest.h>

#include <limits>
#include <locale>
#include <sstream>

#include "OutsideReader.h"
#include "SampleSheet.h"
#include "base/Files.h"
#include "sheets/ErrorText.h"

namespace rackbook {
namespace {

class PdfWriterTest : public testing::Test {
protected:
    std::string written(const PageModel& model) const { return writePdf(model, m_fonts); }
    std::string refusal(const PageModel& model) const {
        return messageOf<RenderError>([&] { written(model); });
    }
    PageModel shortOne() const { return shortSheet(m_fonts, "Three layers on thin paper."); }

    const PdfFonts m_fonts;
};

std::string identifierIn(const std::string& bytes) {
    const std::size_t at = bytes.find('<', bytes.rfind("/ID"));
    return bytes.substr(at + 1, 32);
}

TEST_F(PdfWriterTest, IsCleanForQpdf) {
    const std::string path = fileWith(written(sampleSheet(m_fonts)), "clean.pdf");
    const ToolRun check = readWith("qpdf --check " + path);
    EXPECT_EQ(check.exitCode, 0) << check.output;
    EXPECT_NE(check.output.find("No syntax or stream encoding errors found"), std::string::npos)
        << check.output;
    EXPECT_EQ(check.output.find("WARNING"), std::string::npos) << check.output;
}

TEST_F(PdfWriterTest, EmbedsEveryFontAsASubsetWithUnicode) {
    const ToolRun fonts =
        readWith("pdffonts " + fileWith(written(sampleSheet(m_fonts)), "fonts.pdf"));
    ASSERT_EQ(fonts.exitCode, 0) << fonts.output;
    std::istringstream lines(fonts.output);
    std::vector<std::string> listed;
    for (std::string line; std::getline(lines, line);)
        listed.push_back(line);
    ASSERT_EQ(listed.size(), 5u) << "two lines of heading and three fonts\n" << fonts.output;
    for (std::size_t i = 2; i < listed.size(); ++i) {
        EXPECT_EQ(listed[i].substr(6, 9), "+NotoSans") << listed[i];
        EXPECT_NE(listed[i].find(" CID TrueType "), std::string::npos) << listed[i];
        EXPECT_NE(listed[i].find(" Identity-H       yes yes yes "), std::string::npos) << listed[i];
    }
}

TEST_F(PdfWriterTest, GivesItsTextBack) {
    const ToolRun text = readWith("pdftotext -layout -enc UTF-8 " +
                                  fileWith(written(sampleSheet(m_fonts)), "text.pdf") + " -");
    ASSERT_EQ(text.exitCode, 0) << text.output;
    for (const char* expected :
         {"Βράδυ στο φράγμα", "Вечер у плотины", "Večer při jezu, Wieczór, Łódź",
          "Evening by the Weir, with Alders", "b* −42.5", "Record made on 4 March 2026",
          "Page 1 of 5", "Page 5 of 5", "second is a little warmer", "Artist, date"})
        EXPECT_NE(text.output.find(expected), std::string::npos) << expected;
    for (int i = 1; i <= 96; ++i)
        EXPECT_EQ(timesIn(text.output, " " + std::to_string(i) + "/96 "), 1u) << i;
}

// The outside reader's boxes against our own widths: measuring and drawing agree.
TEST_F(PdfWriterTest, DrawsWordsAsWideAsTheyWereMeasured) {
    const std::string word = "Quinacridone−Ωδός";
    const PageModel model = shortSheet(m_fonts, word);
    const ToolRun boxes =
        readWith("pdftotext -bbox " + fileWith(written(model), "boxes.pdf") + " -");
    const std::size_t at = boxes.output.rfind("<word", boxes.output.find(word));
    ASSERT_NE(at, std::string::npos) << boxes.output;
    const auto edge_mm = [&](const std::string& name) {
        const std::size_t value = boxes.output.find(name + "=\"", at) + name.size() + 2;
        return std::stod(boxes.output.substr(value)) * mmPerPoint;
    };
    EXPECT_NEAR(edge_mm("xMax") - edge_mm("xMin"), m_fonts.width_mm(FontRole::body, 9.5, word),
                0.01);
    EXPECT_NEAR(edge_mm("xMin"), 24, 0.01) << "the left margin";
}

TEST_F(PdfWriterTest, WritesTheSameBytesForTheSameModel) {
    EXPECT_EQ(written(sampleSheet(m_fonts)), written(sampleSheet(PdfFonts())));
}

TEST_F(PdfWriterTest, IdentifiesTheFileByItsContent) {
    const std::string one = written(shortOne());
    const std::string other = written(shortSheet(m_fonts, "Three layers on thick paper."));
    EXPECT_NE(identifierIn(one), identifierIn(other));
    EXPECT_EQ(timesIn(one.substr(one.rfind("trailer")), identifierIn(one)), 2u);
    EXPECT_EQ(identifierIn(one), identifierIn(written(shortOne())));
}

class CommaDecimal : public std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
};

TEST_F(PdfWriterTest, WritesTheSameBytesInALocaleWithDecimalCommas) {
    const std::string expected = written(sampleSheet(m_fonts));
    const std::locale before =
        std::locale::global(std::locale(std::locale::classic(), new CommaDecimal));
    const std::string found = written(sampleSheet(m_fonts));
    std::locale::global(before);
    EXPECT_EQ(found, expected);
}

TEST_F(PdfWriterTest, TakesThePaperOfTheModel) {
    PageModel letter = shortOne();
    letter.paper = {215.9, 279.4};
    const ToolRun info = readWith("pdfinfo " + fileWith(written(letter), "letter.pdf"));
    EXPECT_NE(info.output.find("612 x 792 pts (letter)"), std::string::npos) << info.output;
}

TEST_F(PdfWriterTest, RefusesAModelWithoutPages) {
    PageModel empty;
    empty.info = sampleInfo();
    EXPECT_EQ(refusal(empty), "page model: it has no pages. Report this fault of the program.");
}

TEST_F(PdfWriterTest, RefusesMeasuresThatAreNoNumbers) {
    PageModel model = shortOne();
    model.pages[0].texts[0].x_mm = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(refusal(model),
              "page model: a measure is not a finite number. Report this fault of the program.");
}

TEST_F(PdfWriterTest, RefusesColoursOutOfRange) {
    PageModel model = shortOne();
    model.pages[0].swatches.push_back({30, 30, 10, 10, {50, 10, -160.5}, 0});
    EXPECT_EQ(refusal(model),
              "swatch: the colour L* 50, a* 10, b* -160.5 lies outside 0 to 100 and -160 to 160. "
              "Check the reading that it came from.");
}

TEST_F(PdfWriterTest, RefusesCharactersThatItWouldDrawAsBoxes) {
    PageModel model = shortOne();
    model.pages[0].texts[0].text = "a\U0001D400";
    EXPECT_EQ(refusal(model),
              "page model: no font of this sheet has U+1D400 in \"a\U0001D400\". Write the text "
              "without it, or add a font family that has it to the template.");
}

}  // namespace
}  // namespace rackbook
