// The words of a CGATS.17 text, each with its line. The colour library judges the text as a whole
// but keeps no lines, and changes words that begin with digits (007, 2b); what stands in the cells
// is therefore taken from here.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

struct CgatsWord {
    std::string text;  // without quotation marks
    int line = 0;
};

// One table: what stands before its data, the names of its columns, its data.
struct CgatsTable {
    std::vector<CgatsWord> header;
    std::vector<CgatsWord> columns;
    std::vector<CgatsWord> data;
    int dataLine = 0;  // of BEGIN_DATA; 0 where there is none
    bool isClosed = false;

    // The whole number behind a keyword of the header.
    std::optional<long long> count(std::string_view keyword) const;
};

// Words are parted by blanks and line ends, and kept together by single or double quotation marks
// within a line; # begins a comment. The last table may hold nothing but what follows the data.
std::vector<CgatsTable> cgatsTables(std::string_view text);

// Whether two ASCII texts are the same but for capitals.
bool isSameWord(std::string_view a, std::string_view b);

}  // namespace rackbook
