// Whole sheets as text: page, height of each baseline in mm, words. Where a change is meant, run
// the test with RACKBOOK_WRITE_GOLDEN=1 and read the difference.
#include <gtest/gtest.h>

#include <cstdlib>

#include "EditionBook.h"
#include "InkSheetFacts.h"
#include "SheetTools.h"
#include "sheets/EditionSheet.h"
#include "sheets/MixBookSheet.h"
#include "sheets/ReadinessSheet.h"
#include "sheets/RecipeSheet.h"
#include "sheets/StockSheet.h"

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
