// What stands on the labels of drawers and of sleeves.
#include <gtest/gtest.h>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"
#include "sheets/DrawerLabels.h"
#include "sheets/SleeveLabels.h"

namespace rackbook {
namespace {

const test::SheetMeasurer measurer;
const Margins narrow = {12, 12, 12, 12};

DrawerLabelsFacts drawersOf() {
    build::Book book;
    book.place("drawer-1", PlaceKind::drawer, [](Place& r) {
        r.name = "Plan chest, drawer 1";
        r.capacity = 60;
        r.note = "private words";
    });
    book.place("box", PlaceKind::box);
    return {"Studio at the Old Weir", book.records.of<Place>()};
}

PageModel drawersIn(const std::string& language) {
    return drawerLabels(drawersOf(),
                        test::shippedTemplate("drawer-labels", drawerLabelsRules(), language),
                        measurer, test::fixedClock);
}

SleeveLabelsFacts sleevesOf(const char* day = "2026-03-20") {
    const build::Book book = test::editionBook();
    return sleeveLabelsFactsOf(book.records, book.records.of<Edition>().front(),
                               book.records.of<Impression>(), test::onDay(day));
}

PageModel sleevesIn(const SleeveLabelsFacts& facts, const std::string& language = "en") {
    return sleeveLabels(facts,
                        test::shippedTemplate("sleeve-labels", sleeveLabelsRules(), language),
                        measurer, test::fixedClock);
}

bool hasCode(const PageModel& model, const std::string& text) {
    for (const StructureElement& element : model.structure)
        if (element.kind == ElementKind::figure && element.alternate == "QR code: " + text)
            return true;
    return false;
}

TEST(DrawerLabels, NameThePlaceItsKindAndItsRoom) {
    const PageModel model = drawersIn("en");
    EXPECT_TRUE(test::says(
        model, "Plan chest, drawer 1 Drawer Room for 60 impressions drawer-1 box Box box"));
    EXPECT_TRUE(hasCode(model, "rackbook place drawer-1"));
    EXPECT_TRUE(hasCode(model, "rackbook place box"));
    EXPECT_FALSE(test::says(model, "private"));
    EXPECT_EQ(model.info.title, "Labels for drawers, boxes and shelves");
    EXPECT_EQ(model.info.language, "en");
    EXPECT_TRUE(test::says(drawersIn("de"), "Schublade"));
    EXPECT_TRUE(test::says(drawersIn("ja"), "引き出し"));
}

TEST(SleeveLabels, NameThePrintAndItsEdition) {
    const PageModel model = sleevesIn(sleevesOf());
    EXPECT_TRUE(test::says(model, "1/5 Harbour HB · #1 · 2026 Sheet 400 × 400 mm"));
    EXPECT_TRUE(test::says(model, "#7 Harbour HB · #7 · 2026"));
    EXPECT_TRUE(hasCode(model, "rackbook HB 1/5 HB-1"));
    EXPECT_TRUE(hasCode(model, "rackbook HB AP I/II HB-4"));
    EXPECT_TRUE(hasCode(model, "rackbook HB #7 HB-7"));
    for (const char* word : {"Secret", "secret", "private"})
        EXPECT_FALSE(test::says(model, word)) << word;
}

TEST(SleeveLabels, LeaveOutWhatCameLaterOrIsNotRecorded) {
    EXPECT_TRUE(hasCode(sleevesIn(sleevesOf("2026-01-05")), "rackbook HB #1 HB-1"));
    SleeveLabelsFacts facts = sleevesOf();
    facts.edition.year.reset();
    facts.edition.sheetWidth_mm.reset();
    EXPECT_TRUE(test::says(sleevesIn(facts), "1/5 Harbour HB · #1 2/5 Harbour"));
}

TEST(SleeveLabels, GiveLongTitlesRoomInEveryLanguage) {
    SleeveLabelsFacts facts = sleevesOf();
    facts.edition.title =
        "The Long Way Home along the Shingle, in Rain, with a Dog and No Umbrella";
    for (const char* language : {"de", "en", "es", "fr", "ja"}) {
        const PageModel model = sleevesIn(facts, language);
        EXPECT_TRUE(test::says(model, facts.edition.title));
        expectTidy(model, narrow);
        expectTidy(drawersIn(language), narrow);
    }
}

// Inside the margins a page of the shipped template has 2 columns of 90 mm and 9 rows of 30 mm on
// A4 (186 × 273 mm), 8 on Letter (191.9 × 255.4 mm).
TEST(SleeveLabels, FillAPageOfEitherPaper) {
    SleeveLabelsFacts facts = sleevesOf();
    while (facts.prints.size() < 19)
        facts.prints.push_back(facts.prints.front());
    EXPECT_EQ(sleevesIn(facts).pages.front().fills.size(), 18u);
    EXPECT_EQ(sleevesIn(facts).pages.size(), 2u);
    const TemplateWish wish{"sleeve-labels", {}, {}, "Letter"};
    const SheetTemplate letter =
        SheetTemplate::read(gatherTemplate(test::templateSource(), wish), sleeveLabelsRules());
    EXPECT_EQ(sleeveLabels(facts, letter, measurer, test::fixedClock).pages.front().fills.size(),
              16u);
}

TEST(Labels, HoldTheLinesThatTheTemplateAsksFor) {
    const SheetTemplate plain =
        test::templateWith("drawer-labels", drawerLabelsRules(), {"id", "name"});
    const PageModel model = drawerLabels(drawersOf(), plain, measurer, test::fixedClock);
    EXPECT_TRUE(test::says(model, "drawer-1 Plan chest, drawer 1 box"));
    EXPECT_TRUE(model.pages.front().fills.empty());
    EXPECT_FALSE(test::says(model, "Room"));
}

}  // namespace
}  // namespace rackbook
