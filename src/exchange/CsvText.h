// Rows of fields out of comma-separated text: RFC 4180, also with another separator, and with LF
// alone for a line break.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

struct CsvRow {
    int line = 0;  // where the row begins, from 1
    std::vector<std::string> fields;
};

struct CsvFault {
    int line = 0;
    std::string what;
    std::string remedy;
};

// Spaces belong to a field. An empty line is a row of one empty field, as the grammar of RFC 4180
// has it; the line break after the last row may be left out. Rows may differ in length. A byte
// order mark at the beginning is left out. Throws InputError naming `file` and the line where a
// quote stands inside an unquoted field, something follows a closing quote, or a quote is never
// closed.
// `firstLine` is the line of the file that the text begins with.
std::vector<CsvRow> csvRows(std::string_view text, char separator, const std::string& file,
                            int firstLine = 1);

// The same for a whole text, with everything that is wrong in `faults` and as much read as can be.
std::vector<CsvRow> csvRows(std::string_view text, char separator, std::vector<CsvFault>& faults);

// The tab where the first line has one outside quotes, else the semicolon, else the comma.
char csvSeparatorOf(std::string_view text);

}  // namespace rackbook
