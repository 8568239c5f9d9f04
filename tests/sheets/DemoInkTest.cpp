// The shares on the sheet of a demonstration layer, against a calculation by hand.
#include <gtest/gtest.h>

#include "SheetTools.h"
#include "base/Files.h"
#include "exchange/RecordFiles.h"
#include "records/RecordSet.h"
#include "sheets/EditionSheet.h"
#include "support/DemoRecords.h"

namespace rackbook {
namespace {

// Layer 1 of EEL, both portions alike:
//   straw stock      18 g ochre + 6 g base            ochre 18 / 24 = 0.75, base 0.25
//   let-down         2.3 g straw stock + 69.7 g base  72 g
//                    ochre 2.3 × 0.75 / 72            = 1.725 / 72   = 0.02395833
//                    base (2.3 × 0.25 + 69.7) / 72    = 70.275 / 72  = 0.97604167
//   portion a        24 g let-down + 0.48 g drier     24.48 g (b: 22 g + 0.44 g, the same ratio)
//                    ochre 0.02395833 × 24 / 24.48    = 0.02348856
//                    base  0.97604167 × 24 / 24.48    = 0.95690359
//                    drier 0.48 / 24.48               = 0.01960784
TEST(DemoInk, AgreesWithACalculationByHand) {
    const RecordSet records = test::demoRecords();
    const Edition* edition = records.find<Edition>("EEL");
    ASSERT_NE(edition, nullptr);
    const EditionFacts facts =
        editionFactsOf(records, *edition, EdtfDate::parse("2026-03-20").latest());
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    const test::SheetMeasurer measurer;
    const std::string lines =
        test::linesOf(editionSheet(facts, shipped, measurer, test::fixedClock));
    const std::size_t begin = lines.find("Layer 1: Pale straw");
    ASSERT_NE(begin, std::string::npos);
    const std::string layer = lines.substr(begin, lines.find("Layer 2: ", begin) - begin);
    EXPECT_NE(layer.find("| 95.690\n"), std::string::npos) << layer;
    EXPECT_NE(layer.find("| PY42 | 2.349\n"), std::string::npos) << layer;
    EXPECT_NE(layer.find("| 1.961\n"), std::string::npos) << layer;
    EXPECT_NE(layer.find("printed 12 January 2026 and 13 January 2026"), std::string::npos)
        << layer;
}

}  // namespace
}  // namespace rackbook
