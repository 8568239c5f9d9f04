#include "sheets/LabelGrid.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "ErrorText.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

const test::SheetMeasurer measurer;

// 190 × 277 mm inside the margins: two columns, 90 + 10 + 90, and six rows of 40 with gaps of 5.
LabelGridSetup setupOf() {
    LabelGridSetup setup;
    setup.margins = {10, 10, 10, 10};
    setup.labelWidth_mm = 90;
    setup.labelHeight_mm = 40;
    setup.columnGap_mm = 10;
    setup.rowGap_mm = 5;
    setup.info.title = "Labels";
    return setup;
}

Label labelOf(const std::string& text, const std::string& code = "rackbook place drawer-1") {
    return {code, "QR code: " + code, {{text, 18, 9, true}, {"second line", 9.5, 6, false}}};
}

PageModel pagesOf(const std::vector<Label>& labels, const LabelGridSetup& setup = setupOf()) {
    return labelPages(labels, setup, measurer);
}

std::string refusalOf(const std::vector<Label>& labels, const LabelGridSetup& setup) {
    return messageOf<RenderError>([&] { pagesOf(labels, setup); });
}

double largestType(const PageModel& model) {
    double largest_pt = 0;
    for (const TextRun& run : model.pages.front().texts)
        largest_pt = std::max(largest_pt, run.size_pt);
    return largest_pt;
}

TEST(LabelGrid, FillsPagesRowByRow) {
    std::vector<Label> labels;
    for (int i = 1; i <= 13; ++i)
        labels.push_back(labelOf("L" + std::to_string(i)));
    const PageModel model = pagesOf(labels);
    ASSERT_EQ(model.pages.size(), 2u);
    EXPECT_EQ(model.pages[0].fills.size(), 12u);
    EXPECT_EQ(model.pages[1].fills.size(), 1u);
    const std::vector<TextRun>& texts = model.pages[0].texts;
    EXPECT_EQ(texts[0].text, "L1");
    EXPECT_EQ(texts[2].text, "L2");
    EXPECT_NEAR(texts[2].x_mm - texts[0].x_mm, 100, 1e-9);
    EXPECT_NEAR(texts[4].baselineY_mm - texts[0].baselineY_mm, 45, 1e-9);
    expectTidy(model, setupOf().margins);
}

TEST(LabelGrid, KeepsEverythingInsideItsLabel) {
    const PageModel model = pagesOf({labelOf("Plan chest, drawer 1")});
    const auto isInside = [](double x_mm, double y_mm) {
        return x_mm >= 10 - 1e-9 && x_mm <= 100 + 1e-9 && y_mm >= 10 - 1e-9 && y_mm <= 50 + 1e-9;
    };
    for (const Fill& fill : model.pages[0].fills)
        for (const Box& box : fill.boxes)
            EXPECT_TRUE(isInside(box.x_mm, box.y_mm) &&
                        isInside(box.x_mm + box.width_mm, box.y_mm + box.height_mm));
    for (const Rule& rule : model.pages[0].rules)
        EXPECT_TRUE(isInside(rule.fromX_mm, rule.fromY_mm) && isInside(rule.toX_mm, rule.toY_mm));
    EXPECT_EQ(model.pages[0].rules.size(), 8u);
    for (const TextRun& run : model.pages[0].texts) {
        const double right_mm = run.x_mm + measurer.width_mm(run.role, run.size_pt, run.text);
        EXPECT_TRUE(
            isInside(run.x_mm, run.baselineY_mm - measurer.ascent_mm(run.role, run.size_pt)));
        EXPECT_TRUE(
            isInside(right_mm, run.baselineY_mm + measurer.descent_mm(run.role, run.size_pt)));
        EXPECT_GT(run.x_mm, 10 + 37.0);  // right of the code's square
    }
}

// A code of version 2 has 25 modules and 4 empty ones on each side (ISO/IEC 18004): 37 mm / 33.
TEST(LabelGrid, MakesTheCodeAsLargeAsTheLabelAllows) {
    const PageModel model = pagesOf({labelOf("A")});
    double least_mm = 100;
    for (const Box& box : model.pages[0].fills[0].boxes)
        least_mm = std::min(least_mm, box.height_mm);
    EXPECT_NEAR(least_mm, 37.0 / 33, 1e-9);
}

TEST(LabelGrid, NamesWhatStandsOnALabel) {
    const PageModel model = pagesOf({labelOf("A"), labelOf("B")});
    ASSERT_EQ(model.structure.size(), 8u);
    EXPECT_EQ(model.structure[0].kind, ElementKind::section);
    EXPECT_EQ(model.structure[1].kind, ElementKind::figure);
    EXPECT_EQ(model.structure[1].alternate, "QR code: rackbook place drawer-1");
    EXPECT_EQ(model.structure[2].kind, ElementKind::paragraph);
    for (const int child : {1, 2, 3})
        EXPECT_EQ(model.structure[static_cast<std::size_t>(child)].parent, 0);
    EXPECT_EQ(model.pages[0].texts[1].element, 3);
}

// In 47 mm of width, 18 pt of half an em (3.175 mm) sets 14 characters in a line, 12 pt 22.
TEST(LabelGrid, MakesTextSmallerBeforeItPartsAWord) {
    EXPECT_DOUBLE_EQ(largestType(pagesOf({labelOf("Fourteen chars")})), 18);
    const PageModel longer = pagesOf({labelOf("Portfoliosammlungen")});
    EXPECT_LT(largestType(longer), 18);
    EXPECT_GE(largestType(longer), 9);
    EXPECT_TRUE(test::says(longer, "Portfoliosammlungen"));
    const PageModel wrapped = pagesOf({labelOf("The upper drawer of the old plan chest")});
    EXPECT_DOUBLE_EQ(largestType(wrapped), 18);
    EXPECT_TRUE(test::says(wrapped, "The upper drawer of the old plan chest"));
}

TEST(LabelGrid, LosesNothingOfALongText) {
    std::string words;
    for (int i = 0; i < 30; ++i)
        words += (i ? " w" : "w") + std::to_string(i);
    const PageModel model = pagesOf({labelOf(words)});
    EXPECT_TRUE(test::says(model, words));
    expectTidy(model, setupOf().margins);
    const std::string unbroken(60, 'x');
    std::string set;
    const PageModel parted = pagesOf({labelOf(unbroken)});
    for (const TextRun& run : parted.pages[0].texts)
        if (run.role == FontRole::bodyStrong)
            set += run.text;
    EXPECT_EQ(set, unbroken);
}

TEST(LabelGrid, RefusesWhatCannotFit) {
    const std::string refusal = refusalOf({labelOf(std::string(2000, 'x'))}, setupOf());
    EXPECT_NE(refusal.find("sheet \"Labels\", label \"xxx"), std::string::npos) << refusal;
    EXPECT_NE(refusal.find("the text does not fit on a label of 90 × 40 mm"), std::string::npos)
        << refusal;
    EXPECT_NE(refusal.find("Make labelWidth_mm or labelHeight_mm larger"), std::string::npos);
}

TEST(LabelGrid, RefusesACodeThatIsTooFineAndALabelThatIsTooLarge) {
    LabelGridSetup small = setupOf();
    small.labelHeight_mm = 12;
    EXPECT_NE(refusalOf({labelOf("A", std::string(400, 'x'))}, small).find("too fine to be read"),
              std::string::npos);
    LabelGridSetup large = setupOf();
    large.labelWidth_mm = 191;
    EXPECT_NE(refusalOf({labelOf("A")}, large)
                  .find("a label of 191 × 40 mm is larger than the page inside its margins"),
              std::string::npos);
}

TEST(LabelGrid, SetsLabelsWithoutACode) {
    const PageModel model = pagesOf({labelOf("A", "")});
    EXPECT_TRUE(model.pages[0].fills.empty());
    EXPECT_NEAR(model.pages[0].texts[0].x_mm, 13, 1e-9);
}

}  // namespace
}  // namespace rackbook
