#include "sheets/JoinedModels.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

std::shared_ptr<const std::string> bytes(const std::string& text) {
    return std::make_shared<const std::string>(text);
}

// A heading with a row of a table below it, one of everything, and two pictures.
PageModel model(const std::string& name, const std::shared_ptr<const std::string>& shared,
                const std::shared_ptr<const std::string>& own) {
    PageModel made;
    made.info.title = name;
    made.structure = {{ElementKind::heading, noElement, "", 1},
                      {ElementKind::table, noElement, "", 1},
                      {ElementKind::tableRow, 1, "", 1},
                      {ElementKind::figure, noElement, name + " figure", 2}};
    made.pictures = {{"image/png", own, 3, 4, 1}, {"image/png", shared, 5, 6, 1}};
    made.files = {{name + ".json", "application/json", "records", name}};
    Page page;
    page.texts.push_back({FontRole::body, 8, 1, 2, name, 0, 0});
    page.texts.push_back({FontRole::body, 8, 1, 9, "a running title", 0, noElement});
    page.rules.push_back({0, 0, 1, 1, 1, 0, 2});
    page.swatches.push_back({0, 0, 1, 1, {}, 0, 3});
    page.curves.push_back({{{0, 0}, {1, 1}}, 1, 0, 0, 3});
    page.fills.push_back({{{0, 0, 1, 1}}, 0, 3});
    page.pictures.push_back({0, {0, 0, 3, 4}, 3});
    page.pictures.push_back({1, {0, 0, 5, 6}, 3});
    made.pages = {page, Page{}};
    return made;
}

const std::shared_ptr<const std::string> shared = bytes("on every sheet");

PageModel joinedThree() {
    return joinedModels({model("one", shared, bytes("first")),
                         model("two", shared, bytes("second")),
                         model("three", shared, bytes("third"))});
}

TEST(JoinedModels, HoldAllPagesInOrder) {
    const PageModel joined = joinedThree();
    ASSERT_EQ(joined.pages.size(), 6u);
    EXPECT_EQ(joined.pages[0].texts[0].text, "one");
    EXPECT_EQ(joined.pages[2].texts[0].text, "two");
    EXPECT_EQ(joined.pages[4].texts[0].text, "three");
    EXPECT_EQ(joined.info.title, "one");
    ASSERT_EQ(joined.files.size(), 3u);
    EXPECT_EQ(joined.files[2].name, "three.json");
}

TEST(JoinedModels, KeepEachThingWithItsElement) {
    const PageModel joined = joinedThree();
    ASSERT_EQ(joined.structure.size(), 12u);
    const auto at = [&](int element) -> const StructureElement& {
        return joined.structure.at(static_cast<std::size_t>(element));
    };
    for (const std::size_t number : {0u, 1u, 2u}) {
        const Page& page = joined.pages[number * 2];
        const std::string figure = page.texts[0].text + " figure";
        EXPECT_EQ(at(page.texts[0].element).kind, ElementKind::heading);
        EXPECT_EQ(page.texts[1].element, noElement);
        EXPECT_EQ(at(page.rules[0].element).kind, ElementKind::tableRow);
        EXPECT_EQ(at(at(page.rules[0].element).parent).kind, ElementKind::table);
        EXPECT_EQ(at(page.rules[0].element).parent, static_cast<int>(number) * 4 + 1);
        EXPECT_EQ(at(page.texts[0].element).parent, noElement);
        EXPECT_EQ(at(page.swatches[0].element).alternate, figure);
        EXPECT_EQ(at(page.curves[0].element).alternate, figure);
        EXPECT_EQ(at(page.fills[0].element).alternate, figure);
        EXPECT_EQ(at(page.pictures[0].element).alternate, figure);
        EXPECT_EQ(at(page.pictures[0].element).columns, 2);
    }
}

TEST(JoinedModels, HoldEachPictureOnce) {
    const PageModel joined = joinedThree();
    ASSERT_EQ(joined.pictures.size(), 4u);  // the shared one, and three of their own
    const char* own[] = {"first", "second", "third"};
    for (const std::size_t number : {0u, 1u, 2u}) {
        const std::vector<Picture>& shown = joined.pages[number * 2].pictures;
        EXPECT_EQ(*joined.pictures.at(shown[0].file).bytes, own[number]);
        EXPECT_EQ(joined.pictures.at(shown[1].file).bytes, shared);
        EXPECT_EQ(joined.pictures.at(shown[1].file).width_px, 5);
    }
}

// The same file, looked at turned, is another picture.
TEST(JoinedModels, TellTurnedPicturesApart) {
    PageModel turned = model("two", shared, bytes("second"));
    turned.pictures[1].orientation = 6;
    const PageModel joined = joinedModels({model("one", shared, bytes("first")), turned});
    ASSERT_EQ(joined.pictures.size(), 4u);
    EXPECT_EQ(joined.pictures.at(joined.pages[2].pictures[1].file).orientation, 6);
}

// "the same bytes", in whatever memory they lie.
TEST(JoinedModels, KnowPicturesByTheirBytes) {
    const PageModel joined = joinedModels({model("one", bytes("seal"), bytes("first")),
                                           model("two", bytes("seal"), bytes("second"))});
    EXPECT_EQ(joined.pictures.size(), 3u);
}

TEST(JoinedModels, LeaveOneModelAsItIs) {
    const PageModel joined = joinedModels({model("one", shared, bytes("first"))});
    EXPECT_EQ(joined.pages.size(), 2u);
    EXPECT_EQ(joined.structure.size(), 4u);
    EXPECT_EQ(joined.pictures.size(), 2u);
    EXPECT_EQ(joined.pages[0].rules[0].element, 2);
}

}  // namespace
}  // namespace rackbook
