#include "sheets/Pagination.h"

#include <gtest/gtest.h>

#include "ErrorText.h"

namespace rackbook {
namespace {

// A strip of 10 mm that holds its name at 8 mm.
Strip strip(const std::string& name, bool keeps = false, double before_mm = 0) {
    Strip made;
    made.height_mm = 10;
    made.before_mm = before_mm;
    made.keepsWithNext = keeps;
    made.content.texts.push_back({FontRole::body, 9, 1, 8, name, 0});
    return made;
}

// 40 mm on the first page, 30 mm on the others.
const PageArea area{20, 10, 20, 50};

std::string namesOn(const Page& page) {
    std::string names;
    for (const TextRun& text : page.texts)
        names += text.text;
    return names;
}

TEST(Pagination, FillsPagesInOrder) {
    const auto pages =
        paginate({strip("a"), strip("b"), strip("c"), strip("d"), strip("e")}, {}, area, "sheet");
    ASSERT_EQ(pages.size(), 2u);
    EXPECT_EQ(namesOn(pages[0]), "abcd");
    EXPECT_EQ(namesOn(pages[1]), "e");
    EXPECT_DOUBLE_EQ(pages[0].texts[1].baselineY_mm, 28);
    EXPECT_DOUBLE_EQ(pages[0].texts[1].x_mm, 21);
    EXPECT_DOUBLE_EQ(pages[1].texts[0].baselineY_mm, 28);
}

TEST(Pagination, MakesAPageOfNothing) {
    EXPECT_EQ(paginate({}, {}, area, "sheet").size(), 1u);
}

TEST(Pagination, KeepsStripsTogether) {
    const auto pages =
        paginate({strip("a"), strip("b"), strip("c"), strip("d", true), strip("e")}, {}, area, "");
    ASSERT_EQ(pages.size(), 2u);
    EXPECT_EQ(namesOn(pages[0]), "abc");
    EXPECT_EQ(namesOn(pages[1]), "de");
}

TEST(Pagination, PartsWhatNoPageHolds) {
    const auto pages = paginate({strip("a"), strip("b", true), strip("c", true), strip("d", true),
                                 strip("e", true), strip("f")},
                                {}, area, "sheet");
    ASSERT_EQ(pages.size(), 3u);
    EXPECT_EQ(namesOn(pages[0]), "a");
    EXPECT_EQ(namesOn(pages[1]), "bcd");
    EXPECT_EQ(namesOn(pages[2]), "ef");
}

TEST(Pagination, LeavesOutSpaceAtTheTopOfAPage) {
    const auto pages =
        paginate({strip("a", false, 7), strip("b", false, 15), strip("c", false, 7)}, {}, area, "");
    ASSERT_EQ(pages.size(), 2u);
    EXPECT_DOUBLE_EQ(pages[0].texts[0].baselineY_mm, 18);
    EXPECT_DOUBLE_EQ(pages[0].texts[1].baselineY_mm, 43);
    EXPECT_DOUBLE_EQ(pages[1].texts[0].baselineY_mm, 28);
}

TEST(Pagination, RepeatsTheHeaderOnAContinuedPage) {
    StripGroup strips = {strip("h", true)};
    for (const char* name : {"1", "2", "3", "4", "5", "6"}) {
        strips.push_back(strip(name));
        strips.back().repeatedHeader = 0;
    }
    const auto pages = paginate(strips, {{strip("h")}}, area, "sheet");
    ASSERT_EQ(pages.size(), 3u);
    EXPECT_EQ(namesOn(pages[0]), "h123");
    EXPECT_EQ(namesOn(pages[1]), "h45");
    EXPECT_EQ(namesOn(pages[2]), "h6");
}

TEST(Pagination, CountsTheRepeatedHeaderIntoTheHeightOfWhatFollowsIt) {
    StripGroup strips = {strip("h", true)};
    for (const char* name : {"1", "2", "3", "4", "5", "6"}) {
        strips.push_back(strip(name, *name == '4' || *name == '5'));
        strips.back().repeatedHeader = 0;
    }
    const auto pages = paginate(strips, {{strip("h")}}, area, "sheet");
    ASSERT_EQ(pages.size(), 3u);
    EXPECT_EQ(namesOn(pages[1]), "h45");
    EXPECT_EQ(namesOn(pages[2]), "h6");
}

TEST(Pagination, RefusesAStripTallerThanAPage) {
    Strip tall = strip("t");
    tall.height_mm = 41;
    EXPECT_EQ(messageOf<RenderError>([&] { paginate({tall}, {}, area, "sheet \"A\""); }),
              "sheet \"A\": a part of the sheet is taller than a page. Use larger paper, smaller "
              "margins or a smaller type size in the template.");
}

}  // namespace
}  // namespace rackbook
