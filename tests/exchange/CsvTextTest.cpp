#include "exchange/CsvText.h"

#include <gtest/gtest.h>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

using Rows = std::vector<std::vector<std::string>>;

Rows rowsOf(const std::string& text, char separator = ',') {
    Rows rows;
    for (const CsvRow& row : csvRows(text, separator, "t.csv"))
        rows.push_back(row.fields);
    return rows;
}

std::string refusalOf(const std::string& text) {
    return test::messageOf<InputError>([&] { csvRows(text, ',', "t.csv"); });
}

// RFC 4180, section 2, its seven rules with their examples.
TEST(CsvText, FollowsTheRulesOfRfc4180) {
    const Rows two = {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
    EXPECT_EQ(rowsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), two);              // 1
    EXPECT_EQ(rowsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx"), two);                  // 2
    EXPECT_EQ(rowsOf("field_name,b\r\naaa,bbb\r\n")[0][0], "field_name");  // 3
    EXPECT_EQ(rowsOf("aaa, b b ,ccc"), (Rows{{"aaa", " b b ", "ccc"}}));   // 4: spaces stay
    EXPECT_EQ(rowsOf("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"), two);      // 5
    EXPECT_EQ(rowsOf("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),        // 6
              (Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
    EXPECT_EQ(rowsOf("\"a,b\",c"), (Rows{{"a,b", "c"}}));                               // 6
    EXPECT_EQ(rowsOf("\"aaa\",\"b\"\"bb\",\"ccc\""), (Rows{{"aaa", "b\"bb", "ccc"}}));  // 7
}

// RFC 4180, section 2, rule 5: quotes may not stand in a field that does not begin with one.
TEST(CsvText, RefusesWhatTheGrammarDoesNotHave) {
    EXPECT_EQ(refusalOf("a,b\r\nc,d\"e\r\n"),
              "t.csv:2: a quotation mark stands inside a field that is not quoted. Put the whole "
              "field in quotation marks and double those inside it.");
    EXPECT_EQ(refusalOf("a,\"b\"c\n"),
              "t.csv:1: something follows a closing quotation mark. Double quotation marks that "
              "belong to a field.");
    EXPECT_EQ(refusalOf("a\n\"b\nc\nd"),
              "t.csv:2: a quoted field is never closed. Add the quotation mark at its end.");
}

TEST(CsvText, KnowsEmptyFieldsRowsAndTexts) {
    EXPECT_EQ(rowsOf(""), Rows{});
    EXPECT_EQ(rowsOf("\n"), Rows{{""}});
    EXPECT_EQ(rowsOf(",\n"), (Rows{{"", ""}}));
    EXPECT_EQ(rowsOf("a,\"\"\n\nb"), (Rows{{"a", ""}, {""}, {"b"}}));
    EXPECT_EQ(rowsOf("a,"), (Rows{{"a", ""}}));
}

TEST(CsvText, LeavesOutAByteOrderMark) {
    EXPECT_EQ(rowsOf("\xEF\xBB\xBF\"a\",b"), (Rows{{"a", "b"}}));
}

TEST(CsvText, CountsLinesAlsoInsideFields) {
    const std::vector<CsvRow> rows = csvRows("a\r\n\"b\r\nc\"\r\n\r\nd", ',', "t");
    ASSERT_EQ(rows.size(), 4u);
    EXPECT_EQ(rows[1].line, 2);
    EXPECT_EQ(rows[2].line, 4);
    EXPECT_EQ(rows[3].line, 5);
}

// Written by the csv module of Python 3.11 from the rows below: its dialects excel, excel-tab and
// unix, and semicolons with QUOTE_NONNUMERIC.
TEST(CsvText, ReadsWhatPythonWrites) {
    const Rows rows = {{"sample", "380", "390"},     {"plain", "0.1", "0.2"},
                       {"with,comma", "0.3", "0.4"}, {"say \"hi\"", "1", "2"},
                       {"two\nlines", "", "x"},      {"", " sp ", ""}};
    EXPECT_EQ(rowsOf("sample,380,390\r\nplain,0.1,0.2\r\n\"with,comma\",0.3,0.4\r\n"
                     "\"say \"\"hi\"\"\",1,2\r\n\"two\nlines\",,x\r\n, sp ,\r\n"),
              rows);
    EXPECT_EQ(rowsOf("sample\t380\t390\r\nplain\t0.1\t0.2\r\nwith,comma\t0.3\t0.4\r\n"
                     "\"say \"\"hi\"\"\"\t1\t2\r\n\"two\nlines\"\t\tx\r\n\t sp \t\r\n",
                     '\t'),
              rows);
    EXPECT_EQ(
        rowsOf("\"sample\",\"380\",\"390\"\n\"plain\",\"0.1\",\"0.2\"\n\"with,comma\",\"0.3\","
               "\"0.4\"\n\"say \"\"hi\"\"\",\"1\",\"2\"\n\"two\nlines\",\"\",\"x\"\n\"\","
               "\" sp \",\"\"\n"),
        rows);
    EXPECT_EQ(rowsOf("\"sample\";\"380\";\"390\"\r\n\"plain\";\"0.1\";\"0.2\"\r\n\"with,comma\";"
                     "\"0.3\";\"0.4\"\r\n\"say \"\"hi\"\"\";\"1\";\"2\"\r\n\"two\nlines\";\"\";"
                     "\"x\"\r\n\"\";\" sp \";\"\"\r\n",
                     ';'),
              rows);
}

TEST(CsvText, GuessesTheSeparatorFromTheFirstLine) {
    EXPECT_EQ(csvSeparatorOf("a,b\nc;d\te"), ',');
    EXPECT_EQ(csvSeparatorOf("a,x;b\n"), ';');
    EXPECT_EQ(csvSeparatorOf("a;b\tc"), '\t');
    EXPECT_EQ(csvSeparatorOf("\"a;b\",c"), ',');
    EXPECT_EQ(csvSeparatorOf("\"a\n;\";c"), ';');
    EXPECT_EQ(csvSeparatorOf(""), ',');
}

}  // namespace
}  // namespace rackbook
