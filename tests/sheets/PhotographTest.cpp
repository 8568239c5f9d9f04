#include "sheets/Photograph.h"

#include <gtest/gtest.h>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"
#include "sheets/EditionSheet.h"

namespace rackbook {
namespace {

using test::onDay;

const test::SheetMeasurer measurer;

Attachment picture(const char* id, const char* takenOn) {
    Attachment attachment;
    attachment.id = id;
    attachment.caption = id;
    attachment.edition = Ref<Edition>{"HB"};
    if (*takenOn != '\0')
        attachment.takenOn = build::on(takenOn);
    return attachment;
}

PictureFile tall() {
    return {"image/png", std::make_shared<const std::string>("bytes"), 300, 400, 1};
}

std::string newestOf(const std::vector<Attachment>& all, const std::string& missing = {}) {
    std::vector<const Attachment*> candidates;
    for (const Attachment& attachment : all)
        candidates.push_back(&attachment);
    const std::optional<Photograph> found = newestPhotograph(
        candidates,
        [&](const Attachment& attachment) {
            return attachment.id == missing ? std::nullopt : std::optional(tall());
        },
        onDay("2026-03-20"));
    return found ? found->caption : "";
}

TEST(Photograph, IsTheNewestWhoseBytesAreThere) {
    const std::vector<Attachment> all = {picture("undated", ""), picture("b", "2026-03-02"),
                                         picture("a", "2026-02-02"), picture("c", "2026-03-21")};
    EXPECT_EQ(newestOf(all), "b");
    EXPECT_EQ(newestOf(all, "b"), "a");
    EXPECT_EQ(newestOf({}), "");
    EXPECT_EQ(newestOf({all[0]}), "undated");
    EXPECT_EQ(newestOf({all[0]}, "undated"), "");
    EXPECT_EQ(newestOf({all[3]}), "");
    EXPECT_EQ(newestOf({picture("first", "2026-03"), picture("second", "2026-03")}), "second");
}

PageModel editionWith(const std::optional<Photograph>& photograph) {
    const build::Book book = test::editionBook();
    EditionFacts facts =
        editionFactsOf(book.records, book.records.of<Edition>().front(), onDay("2026-03-20"));
    facts.photograph = photograph;
    return editionSheet(facts, test::shippedTemplate("edition", editionSheetRules()), measurer,
                        test::fixedClock);
}

TEST(Photograph, StandsOnTheEditionSheetWithCaptionAndDay) {
    const PageModel model =
        editionWith(Photograph{tall(), "The proof in daylight", build::on("2026-03-15")});
    const std::string all = test::wordsOf(model);
    const std::size_t heading = all.find("\nPhotograph\n");
    EXPECT_LT(all.find("\nThe edition\n"), heading);
    EXPECT_LT(heading, all.find("\nInscriptions\n"));
    EXPECT_TRUE(test::says(model, "The proof in daylight – photographed 15 March 2026"));
    ASSERT_EQ(model.pictures.size(), 1u);
    const Picture& shown = model.pages[0].pictures.empty() ? model.pages.at(1).pictures.at(0)
                                                           : model.pages[0].pictures[0];
    EXPECT_DOUBLE_EQ(shown.box.height_mm, 75);
    EXPECT_DOUBLE_EQ(shown.box.width_mm, 56.25);
    expectTidy(model, Margins{});
}

TEST(Photograph, SaysWhereNoDayIsRecorded) {
    EXPECT_TRUE(test::says(editionWith(Photograph{tall(), "", {}}), "day not recorded"));
}

TEST(Photograph, LeavesNoHeadingWhereThereIsNone) {
    EXPECT_EQ(test::wordsOf(editionWith(std::nullopt)).find("\nPhotograph\n"), std::string::npos);
}

}  // namespace
}  // namespace rackbook
