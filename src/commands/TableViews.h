// Tables of several kinds of record put together, to be read in a spreadsheet.
#pragma once

#include <string>
#include <vector>

#include "commands/Command.h"
#include "store/BookFile.h"

namespace rackbook {

struct TableView {
    const char* name;
    const char* summary;
    // A row of headings, then one for each thing; `edition` is an id, empty for all.
    std::vector<std::vector<std::string>> (*rows)(const BookFile& book, const std::string& edition,
                                                  char decimal);
};

const std::vector<TableView>& tableViews();

}  // namespace rackbook
