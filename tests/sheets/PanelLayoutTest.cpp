#include "sheets/PanelLayout.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "ErrorText.h"
#include "EvenMeasurer.h"
#include "PanelMeasures.h"
#include "base/Error.h"

namespace rackbook {
namespace {

const EvenMeasurer measurer;
const TypeScale scale = TypeScale::of(9.5);

struct SetRow {
    Strip strip;
    std::vector<StructureElement> structure;
};

SetRow setRow(const std::vector<Panel>& panels, double width_mm = 168, double height_mm = 45,
              const std::vector<PictureFile>& pictures = {}) {
    StructureBuilder structure;
    SetRow row;
    row.strip =
        layOutPanels(panels, {width_mm, height_mm}, pictures, measurer, scale, structure, "here");
    row.structure = structure.take();
    return row;
}

PictureFile picture(int width_px, int height_px, int orientation = 1) {
    return {"image/png", std::make_shared<const std::string>("bytes"), width_px, height_px,
            orientation};
}

Plot plot() {
    Plot made;
    made.x = evenAxis(0, 10, "days", 5, [](double, int) { return "9"; });
    made.y = evenAxis(0, 10, "light", 5, [](double, int) { return "9"; });
    made.lines = {{{{0, 0}, {10, 10}}, false, 0, "likely"}};
    made.marks = {{5, "true"}};
    made.bands = {{2, 4}};
    return made;
}

std::string words(int count) {
    std::string text;
    for (int i = 0; i < count; ++i)
        text += (i == 0 ? "word" : " word") + std::to_string(i);
    return text;
}

// Everything that a row can hold.
std::vector<Panel> allKinds() {
    return {{EmptyFrame{}, "Glue it in here", "room for a proof", 1},
            {LabColour{50, 20, -30}, words(30), "violet", 1},
            {PictureNumber{0}, "A picture", "the block", 1},
            {QrText{"https://studio.example/1"}, "A code", "a code", 1},
            {plot(), words(9), "a plot", 2}};
}

TEST(PanelLayout, KeepsEverythingInsideItsRow) {
    const SetRow row = setRow(allKinds(), 168, 45, {picture(4000, 3000)});
    test::expectInside(row.strip.content, 168, row.strip.height_mm);
    test::expectApart(row.strip.content);
    EXPECT_GT(row.strip.height_mm, 45);  // the captions are below
    for (const TextRun& text : row.strip.content.texts)
        if (text.text.find("word") == 0) {
            EXPECT_GT(test::extentOf(text).y_mm, 45 - test::slack_mm);
        }
}

// 168 mm less two gaps, in the proportions 1 : 2 : 1.
TEST(PanelLayout, DividesTheWidthByShares) {
    const LabColour grey{50, 0, 0};
    const SetRow row = setRow({{grey, "", "a", 1}, {grey, "", "b", 2}, {grey, "", "c", 1}});
    const std::vector<Swatch>& swatches = row.strip.content.swatches;
    ASSERT_EQ(swatches.size(), 3u);
    const double one_mm = (168 - 2 * scale.columnGap_mm) / 4;
    EXPECT_NEAR(swatches[0].width_mm, one_mm, 1e-9);
    EXPECT_NEAR(swatches[1].width_mm, 2 * one_mm, 1e-9);
    EXPECT_NEAR(swatches[1].x_mm, one_mm + scale.columnGap_mm, 1e-9);
    EXPECT_NEAR(swatches[2].x_mm + swatches[2].width_mm, 168, 1e-9);
    for (const Swatch& swatch : swatches)
        EXPECT_EQ(swatch.height_mm, 45);
}

TEST(PanelLayout, GivesCodesASquareOfTheRow) {
    const SetRow row = setRow({{QrText{"x"}, "", "a code", 7}, {LabColour{50, 0, 0}, "", "b", 1}});
    const Swatch& swatch = row.strip.content.swatches.at(0);
    EXPECT_NEAR(swatch.x_mm, 45 + scale.columnGap_mm, 1e-9);
    ASSERT_EQ(row.strip.content.fills.size(), 1u);
    for (const Box& box : row.strip.content.fills[0].boxes)
        test::expectInside(box, 45, 45, "a module");
}

// 4000 by 3000 in 81.6 by 45 mm is held by its height: 60 by 45; lying on its side, 33.75 by 45.
TEST(PanelLayout, KeepsTheProportionsOfPictures) {
    const SetRow row = setRow({{PictureNumber{0}, "", "flat", 1}, {PictureNumber{1}, "", "up", 1}},
                              168, 45, {picture(4000, 3000), picture(4000, 3000, 6)});
    const std::vector<Picture>& pictures = row.strip.content.pictures;
    ASSERT_EQ(pictures.size(), 2u);
    EXPECT_NEAR(pictures[0].box.width_mm, 60, 1e-9);
    EXPECT_NEAR(pictures[0].box.height_mm, 45, 1e-9);
    EXPECT_NEAR(pictures[1].box.width_mm, 33.75, 1e-9);
    EXPECT_NEAR(pictures[1].box.height_mm, 45, 1e-9);
    // A wide one is held by the width of its panel.
    const SetRow wide = setRow({{PictureNumber{0}, "", "wide", 1}}, 168, 45, {picture(8000, 1000)});
    EXPECT_NEAR(wide.strip.content.pictures.at(0).box.width_mm, 168, 1e-9);
    EXPECT_NEAR(wide.strip.content.pictures.at(0).box.height_mm, 21, 1e-9);
}

TEST(PanelLayout, LeavesAGapFree) {
    const LabColour grey{50, 0, 0};
    const SetRow pair = setRow({{grey, "", "a", 1}, {grey, "", "b", 1}});
    const SetRow alone = setRow({{grey, "", "a", 1}, {Gap{}, "", "", 1}});
    ASSERT_EQ(alone.strip.content.swatches.size(), 1u);
    EXPECT_EQ(alone.strip.content.swatches[0].width_mm, pair.strip.content.swatches[0].width_mm);
    EXPECT_EQ(alone.structure.size(), 1u);
}

TEST(PanelLayout, SaysInWordsWhatEachPanelShows) {
    const SetRow row = setRow(allKinds(), 168, 45, {picture(4000, 3000)});
    std::vector<std::string> alternates;
    for (std::size_t i = 0; i < row.structure.size(); ++i)
        if (row.structure[i].kind == ElementKind::figure) {
            alternates.push_back(row.structure[i].alternate);
            EXPECT_EQ(row.structure.at(i + 1).kind, ElementKind::caption);
        }
    EXPECT_EQ(alternates, (std::vector<std::string>{"room for a proof", "violet", "the block",
                                                    "a code", "a plot"}));
    const auto figureOf = [&](int element) {
        return row.structure.at(static_cast<std::size_t>(element)).alternate;
    };
    EXPECT_EQ(figureOf(row.strip.content.swatches.at(0).element), "violet");
    EXPECT_EQ(figureOf(row.strip.content.pictures.at(0).element), "the block");
    EXPECT_EQ(figureOf(row.strip.content.fills.at(0).element), "a code");
    EXPECT_EQ(figureOf(row.strip.content.curves.at(0).element), "a plot");
    for (const Rule& rule : row.strip.content.rules)
        EXPECT_NE(rule.element, noElement);
}

TEST(PanelLayout, RefusesPanelsWithTooLittleRoom) {
    const std::vector<Panel> many(14, {EmptyFrame{}, "", "a", 1});
    EXPECT_NE(messageOf<RenderError>([&] { setRow(many); }).find("here: the pictures and plots"),
              std::string::npos);
    const std::vector<Panel> codes(4, {QrText{"x"}, "", "a", 1});
    EXPECT_NE(messageOf<RenderError>([&] { setRow(codes); }).find("too little room"),
              std::string::npos);
}

}  // namespace
}  // namespace rackbook
