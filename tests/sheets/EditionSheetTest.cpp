#include "sheets/EditionSheet.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"
#include "calc/Disclosure.h"

namespace rackbook {
namespace {

using test::editionBook;
using test::onDay;

const test::SheetMeasurer measurer;

PageModel sheetOf(const RecordSet& records, const char* day = "2026-03-20",
                  std::vector<std::string> sections = {}) {
    const TemplateRules rules = editionSheetRules();
    const SheetTemplate chosen = test::templateWith(
        "edition", rules, sections.empty() ? rules.sections : std::move(sections));
    return editionSheet(editionFactsOf(records, records.of<Edition>().front(), onDay(day)), chosen,
                        measurer, test::fixedClock);
}

// The line that begins with the text, its runs with a bar between them.
std::string lineWith(const PageModel& model, const std::string& text) {
    const std::string all = test::linesOf(model);
    const std::size_t at = all.find("  " + text);
    if (at == std::string::npos)
        return "(no such line)";
    return all.substr(at + 2, all.find('\n', at) - at - 2);
}

RecordSet emptyEdition(const std::string& title = "Nothing Known") {
    build::Book book;
    Edition edition;
    edition.id = edition.code = "NK";
    edition.title = title;
    edition.maker = {"gone"};
    book.add(edition);
    return book.records;
}

TEST(EditionSheet, FollowsTheOrderOfTheTemplate) {
    const std::string all = test::wordsOf(sheetOf(editionBook().records));
    std::size_t last = 0;
    for (const char* heading :
         {"The edition", "Inscriptions", "Paper and sizes", "How many there are", "Blocks",
          "Printing sequence", "What the inks are made of", "Impressions",
          "What became of the blocks", "Statement", "Answers for a buyer", "Signed"}) {
        const std::size_t at = all.find("\n" + std::string(heading) + "\n", last);
        ASSERT_NE(at, std::string::npos) << heading;
        last = at;
    }
    const std::string turned =
        test::wordsOf(sheetOf(editionBook().records, "2026-03-20", {"statement", "identity"}));
    EXPECT_LT(turned.find("\nStatement\n"), turned.find("\nThe edition\n"));
    EXPECT_EQ(turned.find("\nBlocks\n"), std::string::npos);
}

TEST(EditionSheet, SaysWhoMadeWhat) {
    const PageModel model = sheetOf(editionBook().records);
    EXPECT_EQ(lineWith(model, "Artist"), "Artist | maker");
    EXPECT_EQ(lineWith(model, "Printer"), "Printer | Ole Printer");
    EXPECT_EQ(lineWith(model, "Publisher"), "Publisher | not recorded");
    EXPECT_EQ(model.info.title, "Harbour (HB)");
    EXPECT_EQ(model.info.author, "Studio at the Old Weir");
    EXPECT_EQ(model.info.created, test::fixedClock);
    EXPECT_TRUE(test::says(model, "300 × 300 mm"));
}

TEST(EditionSheet, GivesInchesWhereTheStudioUsesThem) {
    build::Book book = editionBook();
    EditionFacts facts =
        editionFactsOf(book.records, book.records.of<Edition>().front(), onDay("2026-03-20"));
    facts.lengthUnit = LengthUnit::in;
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    // 300 / 25.4 = 11.811, 400 / 25.4 = 15.748
    const PageModel model = editionSheet(facts, shipped, measurer, test::fixedClock);
    EXPECT_TRUE(test::says(model, "11.81 × 11.81 in (300 × 300 mm)"));
    EXPECT_TRUE(test::says(model, "15.75 × 15.75 in (400 × 400 mm)"));
}

// Declared 5 + 2 + 1 = 8. By 20 March four numbered sheets less one not yet signed then: 3
// numbered, 1 AP, 1 BAT = 5. Sheets: 10 printed, 1 spoiled, 1 destroyed, 8 kept, 4 of them signed.
TEST(EditionSheet, ShowsTheArithmeticOfTheCount) {
    const PageModel model = sheetOf(editionBook().records);
    EXPECT_EQ(lineWith(model, "Numbered | "), "Numbered | 1–3 / 5 | 5 | 3 | −2");
    EXPECT_EQ(lineWith(model, "Artist's proof | "), "Artist's proof | AP I/II | 2 | 1 | −1");
    EXPECT_EQ(lineWith(model, "Bon à tirer | "), "Bon à tirer | BAT | 1 | 1 | 0");
    EXPECT_EQ(lineWith(model, "Together"), "Together | 8 | 5 | −3");
    EXPECT_TRUE(test::says(
        model,
        "10 printed at layer 1 − 1 spoiled while printing − 1 destroyed since = 8 in existence"));
    EXPECT_EQ(lineWith(model, "Of those in existence"),
              "Of those in existence | 4 signed + 4 not signed = 8");
    EXPECT_TRUE(test::says(model, "so there can never be more than 10."));
    EXPECT_TRUE(test::says(model, "All together are declared as 8; the parts come to the same."));
}

// The record of an old edition may begin late: 4 known sheets, a 30 edition.
TEST(EditionSheet, CallsNoCountFinalWhereTheRecordIsNotWhole) {
    build::Book book = editionBook();
    EditionFacts facts =
        editionFactsOf(book.records, book.records.of<Edition>().front(), onDay("2026-03-20"));
    facts.edition.declaredNumbered = 30;
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    EXPECT_FALSE(test::says(editionSheet(facts, shipped, measurer, test::fixedClock),
                            "so there can never be more"));
    facts.edition.declaredNumbered.reset();
    EXPECT_FALSE(test::says(editionSheet(facts, shipped, measurer, test::fixedClock),
                            "so there can never be more"));
}

TEST(EditionSheet, PutsNoSignaturesOnAPageOfTheirOwn) {
    build::Book book = editionBook();
    for (int extra = 0; extra < 40; ++extra) {
        EditionFacts facts =
            editionFactsOf(book.records, book.records.of<Edition>().front(), onDay("2026-03-20"));
        for (int line = 0; line < extra; ++line)
            facts.edition.inscriptions.push_back({"words", "back", "pencil"});
        const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
        const PageModel model = editionSheet(facts, shipped, measurer, test::fixedClock);
        const std::vector<TextRun>& last = model.pages.back().texts;
        EXPECT_NE(last[1].text, "Signed") << extra;
    }
}

TEST(EditionSheet, PointsOutATotalThatDoesNotAddUp) {
    build::Book book;
    book.edition("HB", [](Edition& r) { r.declaredTotal = 9; });
    EXPECT_TRUE(test::says(sheetOf(book.records),
                           "All together are declared as 9, but the parts come to 3."));
}

TEST(EditionSheet, LeavesOutWhatCameLater) {
    const PageModel later = sheetOf(editionBook().records, "2026-04-02");
    EXPECT_EQ(lineWith(later, "Numbered | "), "Numbered | 1–4 / 5 | 5 | 4 | −1");
    const PageModel early = sheetOf(editionBook().records, "2026-01-05");
    EXPECT_EQ(lineWith(early, "Together"), "Together | 8 | 0 | −8");
    EXPECT_TRUE(test::says(
        early, "10 printed at layer 1 − 0 spoiled while printing − 0 destroyed since ="));
    EXPECT_TRUE(test::says(early, "not printed yet"));
    EXPECT_FALSE(test::says(early, "so there can never be more"));
}

// 4 g on 10 sheets × 0.3 m × 0.3 m × 0.5 = 0.45 m²: 4 / 0.45 = 8.89; the knife's 0.5 g (the default
// rule): 3.5 / 0.45 = 7.78 and 4.5 / 0.45 = 10.
TEST(EditionSheet, EstimatesTheFilmWithItsSpread) {
    const PageModel model = sheetOf(editionBook().records);
    EXPECT_TRUE(test::says(model, "8.9 (7.8–10.0)"));
    EXPECT_TRUE(test::says(model, "The film laid down is an estimate"));
    EXPECT_TRUE(test::says(model, "allows 0.5 g a run"));
}

TEST(EditionSheet, DrawsSwatchesBesideTheirFigures) {
    const PageModel model = sheetOf(editionBook().records);
    std::vector<Swatch> swatches;
    for (const Page& page : model.pages)
        swatches.insert(swatches.end(), page.swatches.begin(), page.swatches.end());
    ASSERT_EQ(swatches.size(), 1u);
    EXPECT_DOUBLE_EQ(swatches[0].colour.lightness, 71.9);
    EXPECT_DOUBLE_EQ(swatches[0].colour.b, -5.25);
    EXPECT_TRUE(test::says(model, "L* 71.9 a* 17.9 b* −5.3"));
    EXPECT_TRUE(test::says(model, "D50, 2°, white backing"));
}

TEST(EditionSheet, DrawsNoSwatchOfAReadingUnderOtherLight) {
    build::Book book = editionBook();
    RecordSet changed;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (R record : book.records.of<R>()) {
            if constexpr (std::is_same_v<R, Reading>)
                record.illuminant = Illuminant::D65;
            changed.add(record);
        }
    });
    const PageModel model = sheetOf(changed);
    for (const Page& page : model.pages)
        EXPECT_TRUE(page.swatches.empty());
    EXPECT_TRUE(test::says(model, "L* 71.9 a* 17.9 b* −5.3"));
    EXPECT_TRUE(test::says(model, "Readings under other light or another observer have figures"));
}

// Portion a: 3 g ochre, 96 g base, 1 g drier of 100 g. Portion b: 50 g base and 50 to 150 g ochre,
// so 25 to 50 % base.
TEST(EditionSheet, ListsInksByLotAndPigment) {
    const PageModel model = sheetOf(editionBook().records);
    EXPECT_TRUE(test::says(model, "Layer 1: grey – printed 2 January 2026"));
    EXPECT_EQ(lineWith(model, "Clear base | extender | 96"), "Clear base | extender | 96.000");
    EXPECT_EQ(lineWith(model, "Ochre | ink | PY42 | 3"), "Ochre | ink | PY42 | 3.000");
    EXPECT_EQ(lineWith(model, "Drier | drier | "), "Drier | drier | cobalt 6 % of the | 1.000");
    EXPECT_EQ(lineWith(model, "Clear base | extender | not"),
              "Clear base | extender | not known | 25.000–50.000");
    EXPECT_EQ(lineWith(model, "Ochre | ink | PY42 | not"),
              "Ochre | ink | PY42 | not known | 50.000–75.000");
    EXPECT_TRUE(test::says(model, "Ochre; dull"));
    EXPECT_TRUE(test::says(model, "Figures with a range are estimates"));
    EXPECT_TRUE(test::says(model, "Driers hold metal compounds"));
    EXPECT_TRUE(test::says(model, "As remembered: about 85 % extender"));
    EXPECT_TRUE(test::says(model, "about 85,"));
    EXPECT_TRUE(test::says(model, "as remembered"));
    EXPECT_TRUE(test::says(model, "Layer 3: grey – printed about January 2026"));
}

TEST(EditionSheet, ListsImpressionsByDesignation) {
    const PageModel model = sheetOf(editionBook().records);
    EXPECT_EQ(lineWith(model, "1/5"), "1/5 | 1 | 2026-03-01 | 3/5 | 3 | 2026-03-01");
    EXPECT_TRUE(test::says(model, "destroyed 2026-03-10"));
    EXPECT_TRUE(test::says(model, "by working number: 6–8, 10"));
    EXPECT_TRUE(test::says(model, "by working number: 9 spoiled 9 January 2026"));
    EXPECT_FALSE(test::says(model, "all signed impressions exist"));
}

TEST(EditionSheet, TellsNothingPrivate) {
    const std::string all = test::wordsOf(sheetOf(editionBook().records));
    for (const char* word : {"Secret", "secret", "private"})
        EXPECT_EQ(all.find(word), std::string::npos) << word;
}

TEST(EditionSheet, HoldsThePromiseAgainstTheRecord) {
    const PageModel model = sheetOf(editionBook().records);
    EXPECT_TRUE(test::says(model, "cut away in printing, by 2026-02"));
    EXPECT_TRUE(
        test::says(model, "The day that was promised has passed, and nothing records that it was"));
    const PageModel early = sheetOf(editionBook().records, "2026-02-10");
    EXPECT_TRUE(test::says(early, "Planned and not yet done: HB-block."));
    // Also beside the answers for a buyer, where the day has passed.
    const auto buyers = [](const char* day) {
        return sheetOf(editionBook().records, day, {"disclosure"});
    };
    EXPECT_TRUE(test::says(buyers("2026-03-20"), "The day that was promised has passed"));
    EXPECT_FALSE(test::says(buyers("2026-02-10"), "Planned and not yet done"));
}

TEST(EditionSheet, GoesThroughEveryItemOfTheChecklist) {
    const PageModel model = sheetOf(editionBook().records);
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    for (const DisclosureItem& item : disclosureItems())
        EXPECT_FALSE(shipped.label(std::string("disclosure.") + item.item).empty());
    EXPECT_EQ(lineWith(model, "Workshop"), "Workshop | stated | Printed at the weir");
    EXPECT_EQ(lineWith(model, "Reproduces"),
              "Reproduces an image in another medium | not applicable");
    EXPECT_TRUE(test::says(model, "“From the record” marks what"));
    EXPECT_EQ(lineWith(model, "framing"), "framing | stated | sold without a frame");
    EXPECT_EQ(lineWith(model, "Printed after"), "Printed after the artist's death | not known");
    EXPECT_TRUE(test::says(
        model, "A checklist, not legal advice; the law differs and changes: follow the law of"));
}

TEST(EditionSheet, SaysNotRecordedWhereNothingIsKnown) {
    const PageModel model = sheetOf(emptyEdition());
    const std::string all = test::wordsOf(model);
    EXPECT_EQ(lineWith(model, "Artist |"), "Artist | not recorded");
    EXPECT_EQ(lineWith(model, "Year |"), "Year | not recorded");
    EXPECT_EQ(lineWith(model, "Numbered |"), "Numbered | not recorded | 0");
    EXPECT_EQ(lineWith(model, "Sheets of paper"), "Sheets of paper | not recorded");
    for (const char* section :
         {"Inscriptions", "Blocks", "Printing sequence", "What the inks are made of", "Impressions",
          "What became of the blocks", "Statement"})
        EXPECT_NE(all.find("\n" + std::string(section) + "\nnot recorded\n"), std::string::npos)
            << section;
}

// The only digits are those of the date, the page, the count of nothing signed, and the label.
TEST(EditionSheet, MakesUpNoNumberWhereNothingIsKnown) {
    for (const Page& page : sheetOf(emptyEdition(), "2026-03-20",
                                    {"identity", "inscriptions", "paper", "blocks", "layers",
                                     "mixes", "impressions", "matrix", "statement"})
                                .pages)
        for (const TextRun& run : page.texts) {
            const bool isFrame = run.text.rfind("Page ", 0) == 0 ||
                                 run.text.find("as of 20 March 2026") != std::string::npos;
            EXPECT_TRUE(isFrame || run.text.find_first_of("0123456789") == std::string::npos)
                << run.text;
        }
}

TEST(EditionSheet, WrapsATitleOfTwoThousandCharacters) {
    std::string title;
    while (title.size() < 2000)
        title += "Harbour ";
    title.resize(2000);
    const PageModel model = sheetOf(emptyEdition(title));
    expectTidy(model, Margins{});
    std::size_t found = 0;
    for (const Page& page : model.pages)
        for (const TextRun& run : page.texts)
            if (run.role == FontRole::bodyStrong && run.text.find("Harbour") == 0)
                found += run.text.size() + 1;
    EXPECT_GE(found, 1990u);
    const std::string& running = model.pages.back().texts[model.pages.back().texts.size() - 3].text;
    EXPECT_EQ(running.rfind("NK · Harbour", 0), 0u) << running;
    EXPECT_LT(running.size(), 110u);
}

TEST(EditionSheet, SetsSixtyLayersAndThreeHundredImpressions) {
    build::Book book = editionBook();
    book.party("extra");
    for (int layer = 4; layer <= 60; ++layer) {
        book.layer("HB", layer, [](Layer& r) {
            r.colourWords = "a long name for a colour that has to be broken over lines";
            r.block = Ref<Block>{"HB-block"};
            r.blockState = 3;
        });
        book.pull("HB-layer" + std::to_string(layer), "2026-02-01",
                  build::impressionIds("HB", 1, 8),
                  [](Pull& r) { r.portion = Ref<Mix>{"portion"}; });
    }
    for (int number = 11; number <= 300; ++number)
        book.signedImpression("HB", number, std::to_string(number) + "/300",
                              DesignationKind::numbered, "2026-03-02");
    const PageModel model = sheetOf(book.records);
    expectTidy(model, Margins{});
    for (int layer = 1; layer <= 60; ++layer)
        EXPECT_TRUE(test::says(model, "Layer " + std::to_string(layer) + ": "));
    for (int number = 11; number <= 300; ++number)
        EXPECT_TRUE(test::says(model, " " + std::to_string(number) + "/300 ")) << number;
    EXPECT_TRUE(
        test::says(model, "10 printed at layer 1 + 290 recorded but not printed at layer 1 −"));
    EXPECT_FALSE(test::says(model, "so there can never be more"));
}

TEST(EditionSheet, IsTidy) {
    expectTidy(sheetOf(editionBook().records), Margins{});
    expectTidy(sheetOf(emptyEdition()), Margins{});
}

// Proofs of two are declared; the third carries a number beyond them.
TEST(EditionSheet, PointsOutADesignationBeyondWhatIsDeclared) {
    EXPECT_FALSE(test::says(sheetOf(editionBook().records), "Beyond what is declared"));
    const RecordSet records = test::changed<Impression>(editionBook().records, [](Impression& r) {
        if (r.id == "HB-4")
            r.designation = "AP III/II";
    });
    EXPECT_TRUE(
        test::says(sheetOf(records), "Beyond what is declared (Artist's proof: 2): AP III/II."));
    const RecordSet undeclared =
        test::changed<Edition>(records, [](Edition& r) { r.declaredProofs.clear(); });
    EXPECT_TRUE(test::says(sheetOf(undeclared), "beyond what it is counted out of: AP III/II."));
}

// An old edition: 13 of 30 numbers up to 23 are recorded, on 18 sheets of which two are not signed;
// at least 8 sheets more were printed. Of state proofs it declares nothing.
TEST(EditionSheet, CallsSheetsRecordedWhereNumbersAreNotTraced) {
    build::Book book;
    book.edition("OLD", [](Edition& r) {
        r.declaredNumbered.reset();
        r.declaredProofs = {{DesignationKind::artistsProof, 3}};
        r.declaredTotal.reset();
    });
    int working = 0;
    for (const int number : {1, 2, 5, 6, 9, 10, 11, 14, 15, 17, 18, 22, 23})
        book.signedImpression("OLD", ++working, std::to_string(number) + "/30",
                              DesignationKind::numbered, "1999");
    book.signedImpression("OLD", 14, "SP", DesignationKind::stateProof, "1999");
    book.impressions("OLD", 15, 16);
    book.layer("OLD", 1);
    book.pull("OLD-layer1", "1998", build::impressionIds("OLD", 1, 16));
    const PageModel model = sheetOf(book.records);
    EXPECT_TRUE(test::says(model, "16 recorded − 0 spoiled while printing"))
        << test::wordsOf(model);
    EXPECT_FALSE(test::says(model, "printed at layer 1 −"));
    EXPECT_TRUE(test::says(model,
                           "Inscribed out of 30, highest number recorded 23; numbers not traced: "
                           "3, 4, 7, 8, 12, 13, 16, 19–21, 24–30."));
    EXPECT_EQ(lineWith(model, "State proof |"), "State proof | SP | not recorded | 1");
}

// Sheets 1–10 went through layers 1 and 2, 1–8 through 3.
TEST(EditionSheet, SaysWhichSheetsEachRunPrinted) {
    const PageModel model = sheetOf(editionBook().records, "2026-03-20", {"layers"});
    EXPECT_NE(test::linesOf(model).find("Portion a | 10 | 1–10 | 0"), std::string::npos)
        << test::linesOf(model);
    EXPECT_NE(test::linesOf(model).find("10 | 1–10 | 1"), std::string::npos);
    EXPECT_NE(test::linesOf(model).find("8 | 1–8 | 0"), std::string::npos);
}

// Two runs of one day from two portions: their headings must not read alike.
TEST(EditionSheet, TellsApartInksOfOneLayerAndDay) {
    build::Book book = editionBook();
    book.mix("other", MixPurpose::portion, [](Mix& r) { r.name = "Portion c"; });
    book.addLot("other", "clear", 10, "2026-01-02T08:00");
    book.impressions("HB", 11, 12);
    book.pull("HB-layer1", "2026-01-02T15:00", build::impressionIds("HB", 11, 12),
              [](Pull& r) { r.portion = Ref<Mix>{"other"}; });
    const PageModel model = sheetOf(book.records, "2026-03-20", {"mixes"});
    EXPECT_TRUE(
        test::says(model, "Layer 1: grey – printed 2 January 2026, sheets 1–10, from “Portion a”"))
        << test::wordsOf(model);
    EXPECT_TRUE(test::says(
        model, "Layer 1: grey – printed 2 January 2026, sheets 11, 12, from “Portion c”"));
    EXPECT_TRUE(test::says(model, "Layer 2: grey – printed 9 January 2026 "));
}

TEST(EditionSheet, SaysWhenInksWereBoughtAndOpened) {
    const RecordSet records = test::changed<Lot>(editionBook().records, [](Lot& lot) {
        lot.container = Container::tin;
        lot.boughtOn = build::on("2025-10-06");
        lot.openedOn = build::on(lot.id == "clear" ? "2026-04-01" : "2025-11-19");
        if (lot.id == "cobalt")
            lot.drierMetals = {{"cobalt", 0.04}};
    });
    const PageModel model = sheetOf(records, "2026-03-20", {"mixes"});
    const std::string all = test::linesOf(model);
    EXPECT_NE(all.find("bought 2025-10-06"), std::string::npos) << all;
    EXPECT_NE(all.find("opened 2025-11-19"), std::string::npos);
    EXPECT_EQ(all.find("opened 2026-04-01"), std::string::npos);
    EXPECT_TRUE(test::says(model, "cobalt 4 % of the"));
}

}  // namespace
}  // namespace rackbook
