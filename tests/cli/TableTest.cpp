#include "cli/Table.h"

#include <gtest/gtest.h>

#include <sstream>
#include <stdexcept>

#include "base/Text.h"

namespace rackbook {
namespace {

TEST(Table, AlignsColumnsUnderTheirHeadings) {
    Table table({{"Code", Align::left}, {"Title", Align::left}, {"Sheets", Align::right}});
    table.addRow({"heron", "Heron at dusk", "42"});
    table.addRow({"elm", "Elm", "7"});
    EXPECT_EQ(table.text(80, ""),
              "Code   Title          Sheets\n"
              "-----  -------------  ------\n"
              "heron  Heron at dusk      42\n"
              "elm    Elm                 7\n");
}

TEST(Table, AlignsDecimalsAtTheEndOfTheWholePart) {
    Table table({{"Mass", Align::decimal}, {"Of", Align::left}});
    table.addRow({"1.25 g", "a"});
    table.addRow({"120 g", "b"});
    table.addRow({"-3.5 g", "c"});
    table.addRow({"not known", "d"});
    table.addRow({"", "e"});
    EXPECT_EQ(table.text(80, ""),
              "     Mass  Of\n"
              "---------  --\n"
              "   1.25 g  a\n"
              " 120 g     b\n"
              "  -3.5 g   c\n"
              "not known  d\n"
              "           e\n");
}

TEST(Table, WidensDecimalColumnsForWholePartsAndFractionsTogether) {
    Table table({{"x", Align::decimal}});
    table.addRow({"1000"});
    table.addRow({"0.125"});
    EXPECT_EQ(table.text(80, ""),
              "       x\n"
              "--------\n"
              "1000\n"
              "   0.125\n");
}

TEST(Table, LeavesNoSpacesAtTheEndsOfLines) {
    Table table({{"A", Align::left}, {"B", Align::decimal}, {"C", Align::left}});
    table.addRow({"long first cell", "1", ""});
    table.addRow({"", "2.25", ""});
    table.addRow({"", "", ""});
    std::istringstream lines(table.text(12, ""));
    for (std::string line; std::getline(lines, line);)
        EXPECT_TRUE(line.empty() || line.back() != ' ') << line;
}

TEST(Table, WrapsTheWidestLeftColumn) {
    Table table({{"Code", Align::left}, {"Title", Align::left}, {"n", Align::right}});
    table.addRow({"heron", "Heron at dusk over the mill", "42"});
    table.addRow({"elm", "Elm", "7"});
    EXPECT_EQ(table.text(25, ""),
              "Code   Title            n\n"
              "-----  --------------  --\n"
              "heron  Heron at dusk   42\n"
              "       over the mill\n"
              "elm    Elm              7\n");
}

TEST(Table, SharesTheLackAmongSeveralWideColumns) {
    Table table({{"A", Align::left}, {"B", Align::left}});
    table.addRow({"aa aa aa aa aa", "bb bb bb bb"});
    EXPECT_EQ(table.text(18, ""),
              "A         B\n"
              "--------  --------\n"
              "aa aa aa  bb bb bb\n"
              "aa aa     bb\n");
}

TEST(Table, GrowsRatherThanCutWhatCannotWrap) {
    Table table({{"Hash", Align::left}, {"n", Align::right}});
    table.addRow({"0123456789abcdef", "12345678"});
    EXPECT_EQ(table.text(10, ""),
              "Hash                     n\n"
              "----------------  --------\n"
              "0123456789abcdef  12345678\n");
}

TEST(Table, KeepsTheIndentOfWrappedCells) {
    Table table({{"Place", Align::left}});
    table.addRow({"Studio"});
    table.addRow({"  Rack by the door"});
    EXPECT_EQ(table.text(10, ""),
              "Place\n"
              "----------\n"
              "Studio\n"
              "  Rack by\n"
              "  the door\n");
}

TEST(Table, MeasuresColumnsNotBytes) {
    Table table({{"Titel", Align::left}, {"n", Align::right}});
    table.addRow({"Überfahrt", "1"});
    table.addRow({"木版画", "22"});
    EXPECT_EQ(table.text(80, ""),
              "Titel       n\n"
              "---------  --\n"
              "Überfahrt   1\n"
              "木版画     22\n");
}

TEST(Table, ShowsControlCharactersAsEscapes) {
    Table table({{"A\tB", Align::left}});
    table.addRow({"x\x1b[2J\ny\xff"});
    EXPECT_EQ(table.text(80, ""),
              "A\\u0009B\n"
              "-----------------------\n"
              "x\\u001B[2J\\u000Ay\\uFFFD\n");
}

TEST(Table, SaysSoWhereThereIsNothing) {
    const Table table({{"A", Align::left}});
    EXPECT_TRUE(table.isEmpty());
    EXPECT_EQ(table.text(80, "The book holds no editions."), "The book holds no editions.\n");
}

TEST(Table, RefusesRowsOfTheWrongLength) {
    Table table({{"A", Align::left}, {"B", Align::left}});
    try {
        table.addRow({"1", "2", "3"});
        FAIL() << "the row was taken";
    } catch (const std::invalid_argument& error) {
        EXPECT_STREQ(error.what(), "Table: a row has 3 cells for 2 columns.");
    }
    EXPECT_TRUE(table.isEmpty());
}

}  // namespace
}  // namespace rackbook
