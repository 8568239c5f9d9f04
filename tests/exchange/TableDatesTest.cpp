#include "exchange/TableDates.h"

#include <gtest/gtest.h>

namespace rackbook {
namespace {

const DateForm none;
const DateForm dmy{DateOrder::dayMonthYear, std::nullopt};
const DateForm mdy{DateOrder::monthDayYear, std::nullopt};
const DateForm ymd{DateOrder::yearMonthDay, std::nullopt};

std::string read(const std::string& text, const DateForm& form) {
    const CellValue<std::string> date = dateIn(text, form);
    return date.value ? *date.value : "refused: " + date.what;
}

TEST(TableDates, ReadsIsoAndEdtfWithoutAnOrder) {
    for (const std::string text : {"1998", "2004-06", "2004-06-23", "2004-06-23T09:30", "1998~",
                                   "199X", "2003/2005", "../2019", "1998-21"})
        for (const DateForm& form : {none, dmy, mdy, ymd})
            EXPECT_EQ(read(text, form), text);
}

TEST(TableDates, ReadsTheOrderThatIsSaid) {
    EXPECT_EQ(read("3.4.2019", dmy), "2019-04-03");
    EXPECT_EQ(read("03/04/2019", dmy), "2019-04-03");
    EXPECT_EQ(read("03/04/2019", mdy), "2019-03-04");
    EXPECT_EQ(read("12/31/1999", mdy), "1999-12-31");
    EXPECT_EQ(read("2019/4/3", ymd), "2019-04-03");
    EXPECT_EQ(read("4.2019", dmy), "2019-04");
    EXPECT_EQ(read("3.4.2019 14:30", dmy), "2019-04-03T14:30");
    EXPECT_EQ(read("29.2.2024", dmy), "2024-02-29");
}

TEST(TableDates, RefusesWithoutAnOrderAndSaysTheReadings) {
    EXPECT_EQ(read("03/04/2019", none), "refused: this date can be 2019-04-03 or 2019-03-04");
    EXPECT_EQ(read("23.4.2019", none),
              "refused: the mapping does not say in which order dates are written");
    EXPECT_EQ(read("4.4.2019", none),
              "refused: the mapping does not say in which order dates are written");
}

TEST(TableDates, RefusesDaysThatTheCalendarDoesNotHave) {
    EXPECT_EQ(read("31.11.2006", dmy), "refused: the calendar has no such day");
    EXPECT_EQ(read("29.2.2023", dmy), "refused: the calendar has no such day");
    EXPECT_EQ(read("13/31/1999", mdy), "refused: the calendar has no such day");
    EXPECT_EQ(read("0.4.2019", mdy), "refused: the calendar has no such day");
    EXPECT_EQ(read("Fr\u00FChjahr", dmy).substr(0, 24), "refused: this is no date");
    EXPECT_EQ(read("3.4/2019", dmy).substr(0, 24), "refused: this is no date");
}

TEST(TableDates, ReadsTwoDigitYearsOnlyWhereTheirBeginningIsSaid) {
    EXPECT_EQ(read("3.4.98", dmy), "refused: the year has two digits");
    const DateForm from1950{DateOrder::dayMonthYear, 1950};
    EXPECT_EQ(read("3.4.98", from1950), "1998-04-03");
    EXPECT_EQ(read("3.4.50", from1950), "1950-04-03");
    EXPECT_EQ(read("3.4.49", from1950), "2049-04-03");
    EXPECT_EQ(read("3.4.20", {DateOrder::dayMonthYear, 1999}), "2020-04-03");
}

// Names of months from CLDR, by way of Qt.
TEST(TableDates, ReadsNamesOfMonthsInGermanAndEnglish) {
    EXPECT_EQ(read("März 2019", none), "2019-03");
    EXPECT_EQ(read("3. März 2019", none), "2019-03-03");
    EXPECT_EQ(read("March 3, 2019", none), "2019-03-03");
    EXPECT_EQ(read("3 Mar 2019", none), "2019-03-03");
    EXPECT_EQ(read("DEZEMBER 1999", none), "1999-12");
    EXPECT_EQ(read("Jänner 2001", none), "2001-01");
    EXPECT_EQ(read("31. Juni 2001", none), "refused: the calendar has no such day");
}

TEST(TableDates, ReadsAboutAndPerhaps) {
    EXPECT_EQ(read("um 1998", none), "1998~");
    EXPECT_EQ(read("ca. 1998", none), "1998~");
    EXPECT_EQ(read("ca.1998", none), "1998~");
    EXPECT_EQ(read("about May 1998", none), "1998-05~");
    EXPECT_EQ(read("1998 ?", none), "1998?");
    EXPECT_EQ(read("um 1998?", none), "1998%");
    EXPECT_EQ(read("ca. 3.4.1998", dmy), "1998-04-03~");
}

TEST(TableDates, KnowsTheOrdersOfADateInDigits) {
    EXPECT_EQ(ordersOf("13.4.2019"), std::vector<DateOrder>{DateOrder::dayMonthYear});
    EXPECT_EQ(ordersOf("4/13/2019"), std::vector<DateOrder>{DateOrder::monthDayYear});
    EXPECT_EQ(ordersOf("3.4.2019").size(), 2u);
    EXPECT_EQ(ordersOf("2019/4/13"), std::vector<DateOrder>{DateOrder::yearMonthDay});
    EXPECT_TRUE(ordersOf("May 2019").empty());
}

}  // namespace
}  // namespace rackbook
