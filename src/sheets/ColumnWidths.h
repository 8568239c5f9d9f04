// Room for the words in columns. Private to sheets/.
#pragma once

#include <vector>

namespace rackbook {

struct ColumnWidth {
    double width_mm = 0;
    double ofHeader_mm = 0;   // below this a word of its header would be broken between letters
    double ofContent_mm = 0;  // below this a word in one of its cells would be
};

// Widens columns that are narrower than a word of their header or of a cell, and takes that from
// others, from each in proportion to what it can spare. Headers come first: for them a column also
// gives what its cells want. Where all headers together are wider than the columns, some stay too
// narrow. The sum of the widths stays.
void makeRoomForWords(std::vector<ColumnWidth>& columns);

}  // namespace rackbook
