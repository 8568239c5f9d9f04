// Rows of fields to comma-separated text: RFC 4180.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

struct CsvWriting {
    char separator = ',';
    bool withMark = false;  // a byte order mark, by which some spreadsheets know UTF-8
};

// Rows end with CR LF; a field is quoted where it holds the separator, a quotation mark, a line
// break, or spaces at an end.
std::string csvText(const std::vector<std::vector<std::string>>& rows, const CsvWriting& writing);

// Text whose beginning (= + - @ or their wide forms, tab, CR, LF) would make a spreadsheet run it
// as a formula gets an apostrophe before it, also where blanks, quotation marks, apostrophes or a
// byte order mark stand before that, so that unguarded() gives back what was there. Numbers stay as
// they are.
std::string guarded(const std::string& text);
std::string unguarded(const std::string& text);

}  // namespace rackbook
