// Every sheet against every rule, in both levels.
#include "ArchivalChecker.h"

#include <gtest/gtest.h>

#include "CheckedSheets.h"

namespace rackbook {
namespace {

TEST(ArchivalChecker, FindsNothingOnAnySheet) {
    for (const CheckedSheet& sheet : checkedSheets())
        EXPECT_EQ(linesOf(archivalFindings(sheet.bytes)), "") << sheet.name;
}

TEST(ArchivalChecker, FindsNothingOnAnySheetAfterPartOne) {
    for (const CheckedSheet& sheet : checkedSheets())
        EXPECT_EQ(linesOf(archivalFindings(sheet.firstPart, PdfLevel::a1b)), "") << sheet.name;
}

}  // namespace
}  // namespace rackbook
