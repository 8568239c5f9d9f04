#include "sheets/BenchSheet.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"
#include "sheets/BenchFields.h"

namespace rackbook {
namespace {

const test::SheetMeasurer measurer;

BenchSheet sheetOf(const RecordSet& records, const std::string& layer,
                   const char* day = "2026-01-05", const std::string& language = "en") {
    const SheetTemplate shipped = test::shippedTemplate("bench", benchSheetRules(), language);
    BenchFacts facts = benchFactsOf(records, *records.find<Layer>(layer), test::onDay(day));
    if (layer == "HB-layer2")
        facts.mix = "Ochre stock";
    return benchSheet(facts, shipped, measurer, test::fixedClock);
}

std::vector<FieldPlace> placesOf(const BenchSheet& sheet, const std::string& field) {
    std::vector<FieldPlace> places;
    for (const FieldPlace& place : sheet.fields)
        if (benchFieldAt(place).name == field)
            places.push_back(place);
    return places;
}

TEST(BenchSheet, SaysWhatIsPrinted) {
    const PageModel model = sheetOf(test::editionBook().records, "HB-layer1", "2026-01-01").model;
    EXPECT_TRUE(test::says(model, "Harbour, layer 1"));
    EXPECT_TRUE(test::says(model, "Harbour (HB)"));
    EXPECT_TRUE(test::says(model, "1 of the 3 planned so far"));
    EXPECT_TRUE(test::says(model, "Colour grey"));
    EXPECT_TRUE(test::says(model, "Block HB-block"));
    EXPECT_TRUE(test::says(model, "State 1: cut"));
    EXPECT_TRUE(test::says(model, "Mix not recorded"));
    EXPECT_TRUE(test::says(model, "5 g/m²"));
    EXPECT_EQ(model.info.title, "Harbour (HB), layer 1");
    EXPECT_EQ(model.info.author, "Studio at the Old Weir");
}

TEST(BenchSheet, SaysWhatIsNotRecorded) {
    build::Book book;
    book.edition("E").layer("E", 1);
    const PageModel model = sheetOf(book.records, "E-layer1").model;
    for (const char* words : {"Block not recorded", "State not recorded", "Mix not recorded",
                              "Film aimed at not recorded"})
        EXPECT_TRUE(test::says(model, words)) << words;
    EXPECT_TRUE(test::says(model, "No impression of this edition is recorded as in existence."));
}

// Each field of the table once, those of impressions once for each.
TEST(BenchSheet, HasEveryFieldOfTheTable) {
    const BenchSheet sheet = sheetOf(test::editionBook().records, "HB-layer2");
    std::set<std::string> names;
    for (const FieldPlace& place : sheet.fields)
        EXPECT_TRUE(names.insert(place.name).second) << place.name;
    for (const BenchField& field : benchFields()) {
        const std::size_t forAll = field.name == std::string("printed") ? 1 : 0;
        EXPECT_EQ(placesOf(sheet, field.name).size(), isOfImpressions(field) ? 10 + forAll : 1)
            << field.name;
    }
    for (int number = 1; number <= 10; ++number)
        for (const char* field : {".printed", ".spoiled", ".remark"})
            EXPECT_EQ(names.count("sheet.HB-" + std::to_string(number) + field), 1u)
                << field << number;
    EXPECT_EQ(names.count(everyPrinted), 1u);
}

// What would be filled in there could not be taken.
TEST(BenchSheet, HasNoBoxesForAPortionWhereNoMixIsRecorded) {
    const BenchSheet sheet = sheetOf(test::editionBook().records, "HB-layer1", "2026-01-01");
    for (const BenchField& field : benchFields())
        EXPECT_EQ(placesOf(sheet, field.name).empty(), isOfPortion(field)) << field.name;
    EXPECT_TRUE(test::says(sheet.model, "No mix is recorded for this layer"));
}

// A pencil wants 7 mm; boxes to tick may be smaller, but their rows not.
TEST(BenchSheet, LeavesRoomForAPencil) {
    const BenchSheet sheet = sheetOf(test::editionBook().records, "HB-layer2");
    for (const FieldPlace& place : sheet.fields)
        if (benchFieldAt(place).kind != FieldKind::tick) {
            EXPECT_GE(place.box.height_mm,
                      benchFieldAt(place).name == std::string("remark") ? 6 : 7)
                << place.name;
            EXPECT_GE(place.box.width_mm, 18) << place.name;
        }
    std::vector<FieldPlace> printed = placesOf(sheet, "printed");
    printed.erase(printed.begin());  // the row for all
    for (std::size_t i = 2; i < printed.size(); i += 2)
        if (printed[i].page == printed[i - 2].page) {
            EXPECT_GE(printed[i].box.y_mm - printed[i - 2].box.y_mm, 7);
        }
}

TEST(BenchSheet, PutsTheCautionBelowTheDriers) {
    const BenchSheet sheet = sheetOf(test::editionBook().records, "HB-layer2");
    const FieldPlace drier = placesOf(sheet, "portion.drier_g").at(0);
    bool found = false;
    for (const TextRun& text : sheet.model.pages.at(drier.page).texts)
        if (text.text.rfind("Driers hold metal compounds", 0) == 0) {
            found = true;
            EXPECT_GT(text.baselineY_mm, drier.box.y_mm);
            EXPECT_LT(text.baselineY_mm, drier.box.y_mm + 45);
        }
    EXPECT_TRUE(found);
    EXPECT_TRUE(test::says(sheet.model, "Oily rags can heat up and catch fire"));
}

TEST(BenchSheet, SaysWhichImpressionsItLeavesOut) {
    build::Book book;
    book.edition("E").impressions("E", 1, 8);
    book.layer("E", 1).layer("E", 2);
    book.pull("E-layer1", "2026-01-02", build::impressionIds("E", 1, 7));
    book.pull("E-layer2", "2026-01-03", build::impressionIds("E", 1, 3));
    const PageModel model = sheetOf(book.records, "E-layer2").model;
    EXPECT_TRUE(test::says(
        model, "Printed with this layer already, and not listed, by working number: 1–3."));
    EXPECT_TRUE(
        test::says(model, "Not printed with layer 1, and not listed, by working number: 8."));
    EXPECT_TRUE(test::says(sheetOf(book.records, "E-layer1").model,
                           "Printed with this layer already, and not listed, by working number: "
                           "1–7."));
    book.pull("E-layer2", "2026-01-04", build::impressionIds("E", 4, 7));
    EXPECT_TRUE(test::says(sheetOf(book.records, "E-layer2").model,
                           "Every impression in existence has this layer already."));
}

TEST(BenchSheet, TellsNothingPrivate) {
    build::Book book = test::editionBook();
    book.layer("HB", 4, [](Layer& r) { r.note = "private words"; });
    const BenchSheet sheet = sheetOf(book.records, "HB-layer4", "2026-03-20");
    EXPECT_TRUE(test::says(sheet.model, "AP I/II"));
    EXPECT_FALSE(test::says(sheet.model, "Secret"));
    EXPECT_FALSE(test::says(sheet.model, "private"));
}

TEST(BenchSheet, IsTidyWhateverStandsOnIt) {
    build::Book book = test::editionBook();
    std::string words;
    while (words.size() < 600)
        words += "a long name ";
    book.edition("L", [&](Edition& r) { r.title = words; }).impressions("L", 1, 151);
    book.layer("L", 1, [&](Layer& r) { r.colourWords = words; });
    book.signedImpression("L", 152, "a designation of many words, TP II/III",
                          DesignationKind::trialProof, "2026-01-01");
    for (const char* language : {"en", "de", "fr", "es", "ja"}) {
        expectTidy(sheetOf(book.records, "HB-layer2", "2026-01-05", language).model, Margins{});
        const BenchSheet large = sheetOf(book.records, "L-layer1", "2026-01-05", language);
        expectTidy(large.model, Margins{});
        EXPECT_EQ(placesOf(large, "printed").size(), 153u);
        const SheetTemplate shipped = test::shippedTemplate("bench", benchSheetRules(), language);
        test::expectWholeHeadings(large.model, shipped, benchSheetRules());
    }
}

}  // namespace
}  // namespace rackbook
