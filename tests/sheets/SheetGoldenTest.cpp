// Whole sheets as text: page, height of each baseline in mm, words. Where a change is meant, run
// the test with RACKBOOK_WRITE_GOLDEN=1 and read the difference.
#include <gtest/gtest.h>

#include <cstdlib>

#include "DrawerBook.h"
#include "EditionBook.h"
#include "InkSheetFacts.h"
#include "SheetTools.h"
#include "sheets/BenchSheet.h"
#include "sheets/CertificateSheet.h"
#include "sheets/DrawerLabels.h"
#include "sheets/DrawerSheet.h"
#include "sheets/EditionSheet.h"
#include "sheets/LedgerSheet.h"
#include "sheets/MixBookSheet.h"
#include "sheets/ReadinessSheet.h"
#include "sheets/RecipeSheet.h"
#include "sheets/SleeveLabels.h"
#include "sheets/StockSheet.h"
#include "sheets/TransferSheet.h"

namespace rackbook {
namespace {

const test::SheetMeasurer measurer;

void expectGolden(const PageModel& model, const std::string& name) {
    const std::string path = std::string(RACKBOOK_GOLDEN) + "/" + name;
    const std::string made = test::linesOf(model);
    if (std::getenv("RACKBOOK_WRITE_GOLDEN") != nullptr)
        writeFileSafely(path, made);
    EXPECT_EQ(readFile(path, 1 << 20), made);
}

TEST(SheetGolden, Edition) {
    const build::Book book = test::editionBook();
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    const EditionFacts facts =
        editionFactsOf(book.records, book.records.of<Edition>().front(), test::onDay("2026-03-20"));
    expectGolden(editionSheet(facts, shipped, measurer, test::fixedClock), "edition.txt");
}

// As it was before the second layer was printed.
TEST(SheetGolden, Bench) {
    const build::Book book = test::editionBook();
    const SheetTemplate shipped = test::shippedTemplate("bench", benchSheetRules());
    BenchFacts facts = benchFactsOf(book.records, *book.records.find<Layer>("HB-layer2"),
                                    test::onDay("2026-01-05"));
    facts.mix = "Ochre stock";
    expectGolden(benchSheet(facts, shipped, measurer, test::fixedClock).model, "bench.txt");
}

TEST(SheetGolden, Readiness) {
    build::Book book = test::editionBook();
    book.place("window", PlaceKind::rack, LightKind::daylight);
    book.move("window", "2026-02-01", build::impressionIds("HB", 1, 4));
    book.look("2026-03-15", {"HB-1"}, Touch::dry, LookColour::trueColour);
    const SheetTemplate shipped = test::shippedTemplate("readiness", readinessSheetRules());
    const ReadinessQuestion question{test::onDay("2026-03-20"), "", false,
                                     shipped.label("atGallery"), shipped.label("atHolder")};
    expectGolden(readinessSheet(readinessFactsOf(book.records, question), shipped, measurer,
                                test::fixedClock),
                 "readiness.txt");
}

build::Book bookWithMoves() {
    build::Book book = test::editionBook();
    book.place("window", PlaceKind::rack, LightKind::daylight);
    book.move("window", "2026-02-01", build::impressionIds("HB", 1, 4));
    book.look("2026-03-15", {"HB-1"}, Touch::dry, LookColour::trueColour);
    book.transfer(TransferKind::sale, "maker", "secret", "2026-03-18", {"HB-1"});
    return book;
}

TEST(SheetGolden, Certificate) {
    const build::Book book = bookWithMoves();
    const SheetTemplate shipped = test::shippedTemplate("certificate", certificateSheetRules());
    const CertificateFacts facts =
        certificateFactsOf(book.records, book.records.of<Edition>().front(),
                           {book.records.of<Impression>().front()}, test::onDay("2026-03-20"),
                           false, [](const Attachment&) { return std::optional<PictureFile>(); });
    expectGolden(certificateSheet(facts, facts.impressions.front(),
                                  {"HB-1-certificate.json", std::string(64, 'a')}, shipped,
                                  measurer, test::fixedClock),
                 "certificate.txt");
}

TEST(SheetGolden, Ledger) {
    const build::Book book = bookWithMoves();
    const SheetTemplate shipped = test::shippedTemplate("ledger", ledgerSheetRules());
    const ReadinessQuestion question{test::onDay("2026-03-20"), "", false,
                                     shipped.label("atGallery"), shipped.label("atHolder")};
    expectGolden(
        ledgerSheet(ledgerFactsOf(book.records, question), shipped, measurer, test::fixedClock),
        "ledger.txt");
}

TEST(SheetGolden, Transfer) {
    build::Book book = test::editionBook();
    book.transfer(TransferKind::consignment, "maker", "printer", "2026-03-18",
                  build::impressionIds("HB", 4, 7), [](Transfer& r) {
                      r.price = 8800;
                      r.currency = "DKK";
                      r.terms = "Forty per cent to the gallery.";
                  });
    const SheetTemplate shipped = test::shippedTemplate("transfer", transferSheetRules());
    expectGolden(transferSheet(transferFactsOf(book.records, book.records.of<Transfer>().front(),
                                               test::onDay("2026-03-20"), false),
                               shipped, measurer, test::fixedClock),
                 "transfer.txt");
}

TEST(SheetGolden, Drawer) {
    const SheetTemplate shipped = test::shippedTemplate("drawer", drawerSheetRules());
    expectGolden(drawerSheet(test::drawerFacts(), shipped, measurer, test::fixedClock),
                 "drawer.txt");
}

TEST(SheetGolden, Labels) {
    build::Book book = test::editionBook();
    book.place("drawer-1", PlaceKind::drawer, [](Place& r) {
        r.name = "Plan chest, drawer 1";
        r.capacity = 60;
    });
    const SheetTemplate drawers = test::shippedTemplate("drawer-labels", drawerLabelsRules());
    expectGolden(drawerLabels({"Studio at the Old Weir", book.records.of<Place>()}, drawers,
                              measurer, test::fixedClock),
                 "drawer-labels.txt");
    const SheetTemplate sleeves = test::shippedTemplate("sleeve-labels", sleeveLabelsRules());
    const SleeveLabelsFacts facts =
        sleeveLabelsFactsOf(book.records, book.records.of<Edition>().front(),
                            book.records.of<Impression>(), test::onDay("2026-03-20"));
    expectGolden(sleeveLabels(facts, sleeves, measurer, test::fixedClock), "sleeve-labels.txt");
}

TEST(SheetGolden, Recipe) {
    const SheetTemplate shipped = test::shippedTemplate("recipe", recipeSheetRules());
    expectGolden(recipeSheet(test::recipeFacts(), shipped, measurer, test::fixedClock),
                 "recipe.txt");
}

TEST(SheetGolden, Mixes) {
    const SheetTemplate shipped = test::shippedTemplate("mixes", mixBookSheetRules());
    const MixBookFacts facts =
        mixBookFactsOf(test::mixBook().records, std::nullopt, test::onDay("2026-03-20"));
    expectGolden(mixBookSheet(facts, shipped, measurer, test::fixedClock), "mixes.txt");
}

TEST(SheetGolden, Stock) {
    const SheetTemplate shipped = test::shippedTemplate("stock", stockSheetRules());
    expectGolden(stockSheet(test::stockFacts(), shipped, measurer, test::fixedClock), "stock.txt");
}

}  // namespace
}  // namespace rackbook
