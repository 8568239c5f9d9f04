// Records as the cells of a table, every field flat.
#pragma once

#include <string>
#include <vector>

#include "records/Record.h"

namespace rackbook {

// A row of headings, then one for each record. Headings are the paths of fields, id first, as
// fieldAt() takes them; lists of parts get columns for as many as the record with the most has.
// Items of lists have semicolons between; yes and no stand for what is either so or not; text is
// guarded as guarded() says. Pre: all are of that kind; decimal is '.' or ','.
std::vector<std::vector<std::string>> cellsOf(RecordKind kind, const std::vector<Record>& records,
                                              char decimal);

}  // namespace rackbook
