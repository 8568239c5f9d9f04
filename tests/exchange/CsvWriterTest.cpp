#include "exchange/CsvWriter.h"

#include <gtest/gtest.h>

#include "exchange/CsvText.h"
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

// The beginnings that OWASP's page on CSV injection lists: = + - @, tab, CR and LF.
TEST(CsvWriter, GuardsWhatASpreadsheetWouldRun) {
    for (const std::string text :
         {"=1+1", "+49 30", "+4.5", "-x", "@sum", "\tx", "\rx", "\nx", "'=1", "''-a"}) {
        EXPECT_EQ(guarded(text), "'" + text);
        EXPECT_EQ(unguarded(guarded(text)), text);
    }
    for (const std::string text : {"-3", "-1e-05", "", "'", "'tis", "a=b", "x-y", "''"}) {
        EXPECT_EQ(guarded(text), text);
        EXPECT_EQ(unguarded(text), text);
    }
}

}  // namespace
}  // namespace rackbook
