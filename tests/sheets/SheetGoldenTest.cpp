// Whole sheets as text: page, height of each baseline in mm, words. Where a change is meant, run
// the test with RACKBOOK_WRITE_GOLDEN=1 and read the difference.
#include <gtest/gtest.h>

#include <cstdlib>

#include "EditionBook.h"
#include "SheetTools.h"
#include "sheets/BenchSheet.h"
#include "sheets/EditionSheet.h"
#include "sheets/ReadinessSheet.h"

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
    const BenchFacts facts = benchFactsOf(book.records, *book.records.find<Layer>("HB-layer2"),
                                          test::onDay("2026-01-05"));
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

}  // namespace
}  // namespace rackbook
