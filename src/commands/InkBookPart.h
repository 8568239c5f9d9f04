// Books about ink that leave out what is not asked for.
#pragma once

#include <vector>

#include "commands/InkBook.h"

namespace rackbook {

// Records of those kinds alone; the history holds no impressions. Positions in it are those of the
// records of kinds that are there, pulls apart. Pre: the kinds have the book's own record.
InkBook inkBookWith(const BookFile& book, const std::vector<RecordKind>& kinds);

// Adds the pulls of the day before that moment, which tell how warm the room is.
void addPullsBefore(InkBook& ink, const BookFile& book, CivilMinute asOf);

}  // namespace rackbook
