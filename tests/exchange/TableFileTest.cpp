#include "exchange/TableFile.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>

#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using Rows = std::vector<std::vector<std::string>>;

Rows rowsOf(const TableFile& table) {
    Rows rows;
    for (const CsvRow& row : table.rows)
        rows.push_back(row.fields);
    return rows;
}

TableFile tableOf(const std::string& text) {
    return tableFileFrom(text, {}, "t.csv");
}

// Written by tables/make-python-csv.py; its rows.
const Rows pythonRows = {{"Code", "Titel", "Preis"},
                         {"A", "plain", "12,50"},
                         {"B", "with;semicolon, comma\tand tab", "-3"},
                         {"C", "say \"hi\"", ""},
                         {"D", "two\nlines", " sp "},
                         {"Ü", "Größe é", "1"}};

TEST(TableFile, ReadsWhatPythonWritesInAnyDialectAndEncoding) {
    const std::map<std::string, std::string> encodings = {{"cp1252", "windows-1252"},
                                                          {"iso-8859-15", "iso-8859-15"},
                                                          {"mac-roman", "macintosh"},
                                                          {"cp850", "ibm850"}};
    int count = 0;
    for (const auto& entry :
         std::filesystem::directory_iterator(test::sourcePath("tests/exchange/tables"))) {
        const std::string name = entry.path().filename().string();
        if (name.rfind("python-", 0) != 0)
            continue;
        ++count;
        TableForm form;
        for (const auto& [ending, encoding] : encodings)
            if (name.find("-" + ending + ".csv") != std::string::npos)
                form.encoding = encoding;
        const TableFile table = tableFileFrom(test::bytesOf(entry.path().string()), form, name);
        EXPECT_EQ(rowsOf(table), pythonRows) << name;
        EXPECT_TRUE(table.faults.empty()) << name;
    }
    EXPECT_EQ(count, 9);
}

TEST(TableFile, TellsTheSeparatorByHowEvenlyItParts) {
    EXPECT_EQ(tableOf("List of 2004, old\nA;B\n1,5;2\n3;4,5\n").separator, ';');
    EXPECT_EQ(tableOf("a,b\n\"x;y\",2\n\"p;q\",3\n").separator, ',');
    EXPECT_EQ(tableOf("a\tb\n1,2\t3\n").separator, '\t');
    EXPECT_EQ(tableOf("one\ntwo\n").separator, ',');
    EXPECT_EQ(tableOf("a,b\n1,\"x;y\nx;y\nx;y\"\n").separator, ',');
}

TEST(TableFile, KeepsRowsAsASpreadsheetNumbersThem) {
    const TableFile table = tableOf("a;b\r\n\"x\r\ny\";1\r\n;\r\nz;2\r\n");
    ASSERT_EQ(table.rows.size(), 4u);
    EXPECT_EQ(table.rows[1].fields[0], "x\ny");
    EXPECT_TRUE(isEmptyRow(table.rows[2]));
    EXPECT_EQ(table.rows[3].line, 5);
    EXPECT_EQ(placeInTable("t.csv", 4, 5, "a"), "t.csv, row 4 (line 5), column \"a\"");
    EXPECT_EQ(placeInTable("t.csv", 2, 2, ""), "t.csv, row 2");
}

TEST(TableFile, ReadsOnAfterAFaultOfGrammar) {
    const TableFile table = tableOf("a;b\n12\" roller;2\n\"x\"y;3\nz;4\n\"open;5\n");
    ASSERT_EQ(table.faults.size(), 3u);
    EXPECT_EQ(table.faults[0].line, 2);
    EXPECT_EQ(table.faults[1].line, 3);
    EXPECT_EQ(table.faults[2].line, 5);
    EXPECT_EQ(table.rows[3].fields, (std::vector<std::string>{"z", "4"}));
}

TEST(TableFile, IsNoXml) {
    EXPECT_EQ(
        test::messageOf([] { tableOf("<?xml version='1.0'?>\n<a;b/>\n"); }),
        "t.csv: this is XML or a page of the web, no CSV text. Open it in the spreadsheet and "
        "save its sheet as CSV.");
}

TEST(TableFile, TakesSpacesAndGuardsOffCells) {
    EXPECT_EQ(cellText(" \u00A0x y\t", false), "x y");
    EXPECT_EQ(cellText(" x ", true), " x ");
    EXPECT_EQ(cellText("'=1+1", false), "=1+1");
    EXPECT_EQ(cellText("'tis", false), "'tis");
}

}  // namespace
}  // namespace rackbook
