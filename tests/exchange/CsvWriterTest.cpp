#include "exchange/CsvWriter.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include "exchange/CsvText.h"
#include "support/NaughtyTexts.h"
#include "support/RunShell.h"

namespace rackbook {
namespace {

using Rows = std::vector<std::vector<std::string>>;

const Rows tricky = {{"aaa", "b,b", "c;c"},
                     {"zzz", "y\"y", "x\nx"},
                     {"", " sp ", "\ttab"},
                     {"ü €", "\"\"", "'=x"},
                     {"", "", ""}};

// RFC 4180, section 2: rules 1 and 2 (CR LF, also behind the last row), 4 (no comma behind the last
// field), 6 and 7 (quotation marks).
TEST(CsvWriter, FollowsTheRulesOfRfc4180) {
    EXPECT_EQ(csvText({{"a", "b"}, {"c", "d"}}, {}), "a,b\r\nc,d\r\n");
    EXPECT_EQ(csvText({{"a,b", "c\"d", "e\nf", "g\r\nh"}}, {}),
              "\"a,b\",\"c\"\"d\",\"e\nf\",\"g\r\nh\"\r\n");
    EXPECT_EQ(csvText({{"a;b", "c,d"}}, {';', true}), "\xEF\xBB\xBF\"a;b\";c,d\r\n");
}

TEST(CsvWriter, IsReadBackAsItWasWritten) {
    for (const char separator : {',', ';', '\t'}) {
        Rows rows;
        for (const CsvRow& row : csvRows(csvText(tricky, {separator, true}), separator, "t"))
            rows.push_back(row.fields);
        EXPECT_EQ(rows, tricky);
    }
}

// The csv module of Python, strict, is another reader of the same grammar.
TEST(CsvWriter, IsReadByPython) {
    const auto read = test::runOn(csvText(tricky, {}),
                                  "/usr/bin/python3 -c \"import csv; print(list(csv.reader(open("
                                  "'$FILE', newline='', encoding='utf-8'), strict=True)))\"");
    EXPECT_EQ(read.exitCode, 0);
    EXPECT_EQ(read.output,
              "[['aaa', 'b,b', 'c;c'], ['zzz', 'y\"y', 'x\\nx'], ['', ' sp ', '\\ttab'], "
              "['ü €', '\"\"', \"'=x\"], ['', '', '']]\n");
}

// The beginnings that OWASP's page on CSV injection lists: = + - @, tab, CR and LF, and the wide
// forms of the signs; behind what a reader may take away first, too.
TEST(CsvWriter, GuardsWhatASpreadsheetWouldRun) {
    for (const std::string text : {"=1+1", "+49 30", "+4.5", "-x", "@sum", "\tx", "\rx", "\nx",
                                   "'=1", "''-a", " =1+1", "\"=1+1\"", "\u00A0@x", "\uFEFF=1",
                                   " '\" -x", "\uFF1D1+1", "\uFF0B1", "\uFF0D1", "\uFF20x"}) {
        EXPECT_EQ(guarded(text), "'" + text);
        EXPECT_EQ(unguarded(guarded(text)), text);
    }
    for (const std::string text :
         {"-3", "-1e-05", "", "'", "'tis", "a=b", "x-y", "''", "\"a\" = b", " a", "\u2212x"}) {
        EXPECT_EQ(guarded(text), text);
        EXPECT_EQ(unguarded(text), text);
    }
}

// What a spreadsheet makes of it that is told to run formulas: every text as it was written. The
// filter's last two words switch that on and have texts quoted in what comes back.
TEST(CsvWriter, StartsNoFormulaInASpreadsheet) {
    // The stroke keeps what reads as a number or a truth from becoming one.
    Rows rows = {{"=1+1"}};  // what is not guarded is run: the spreadsheet does as it is told
    for (const test::NaughtyText& one : test::keptNaughtyTexts())
        rows.push_back({guarded(std::string(one.text)) + "|"});
    const std::string folder =
        testing::TempDir() + "rackbook-spreadsheet-" + std::to_string(getpid());
    if (!test::hasProgram("soffice"))
        GTEST_SKIP() << "no LibreOffice here";
    const auto read = test::runOn(
        csvText(rows, {}),
        "mkdir -p '" + folder + "' && cp \"$FILE\" '" + folder + "/t.csv' && cd '" + folder +
            "' && timeout 120 soffice --headless -env:UserInstallation=file://$PWD/profile "
            "--infilter='CSV:44,34,76,1,,0,false,false,false,false,false,0,true' --convert-to "
            "'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,true,true,false,false,false,-1' "
            "--outdir out t.csv >said 2>&1; cat out/*.csv || cat said; rm -rf '" +
            folder + "'");
    Rows back;
    for (const CsvRow& row : csvRows(read.output, ',', "t"))
        back.push_back(row.fields);
    rows.front().front() = "2";
    EXPECT_EQ(back, rows);
}

}  // namespace
}  // namespace rackbook
