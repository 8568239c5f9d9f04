#include "sheets/SheetWords.h"

#include <gtest/gtest.h>

#include "SheetTools.h"
#include "sheets/EditionSheet.h"

namespace rackbook {
namespace {

std::string dateWords(const char* written) {
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    return SheetWords(shipped).tableDate(EdtfDate::parse(written));
}

TEST(SheetWords, PrintsGoodDatesAsTheyAre) {
    for (const char* date : {"1998", "2026-03", "2026-03-04", "-0044", "Y17000"})
        EXPECT_EQ(dateWords(date), date);
    EXPECT_EQ(dateWords("2026-03-04T09:30"), "2026-03-04");
}

TEST(SheetWords, ReadsBadlyKnownDatesOut) {
    EXPECT_EQ(dateWords("1998~"), "1998~ (about 1998)");
    EXPECT_EQ(dateWords("2004-06?"), "2004-06? (2004-06, uncertain)");
    EXPECT_EQ(dateWords("2011%"), "2011% (about 2011, uncertain)");
    EXPECT_EQ(dateWords("201X"), "201X (between 2010-01-01 and 2019-12-31)");
    EXPECT_EQ(dateWords("1985-04-XX"), "1985-04-XX (between 1985-04-01 and 1985-04-30)");
    EXPECT_EQ(dateWords("2001-21"), "2001-21 (spring 2001)");
    EXPECT_EQ(dateWords("2001-24~"), "2001-24~ (about winter 2001)");
    EXPECT_EQ(dateWords("1998/1999~"), "1998/1999~ (from 1998 to about 1999)");
    EXPECT_EQ(dateWords("2019/.."), "2019/.. (from 2019 on)");
    EXPECT_EQ(dateWords("2019/"), "2019/ (from 2019, end not known)");
    EXPECT_EQ(dateWords("../2019"), "../2019 (until 2019)");
    EXPECT_EQ(dateWords("/2019"), "/2019 (until 2019, beginning not known)");
}

TEST(SheetWords, FillsEveryMarkOnce) {
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    const SheetWords words(shipped);
    EXPECT_EQ(words.filled("layers.stateOf", {{"block", "{state}"}, {"state", "3"}}),
              "{state}, state 3");
}

TEST(SheetWords, WritesRangesWithDashes) {
    EXPECT_EQ(numberRanges({1, 2, 3, 5}), "1–3, 5");
    EXPECT_EQ(shortWords("Ochre; dull"), "Ochre");
    EXPECT_EQ(shortWords("Ochre, dull"), "Ochre, dull");
}

}  // namespace
}  // namespace rackbook
