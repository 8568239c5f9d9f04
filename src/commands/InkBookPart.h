// Books about ink that leave out what is not asked for.
#pragma once

#include <vector>

#include "commands/InkBook.h"

namespace rackbook {

// Records of those kinds alone; the history holds no impressions. Positions in it are those of the
// records of kinds that are there, pulls apart. Pre: the kinds have the book's own record.
InkBook inkBookWith(const BookFile& book, const std::vector<RecordKind>& kinds);

// Those mixes (ids), with those that what is in them came from, and no other kinds but the book's
// own record; positions of mixes in the history are those of the records. Costs what it gives.
InkBook inkBookOfMixes(const BookFile& book, const std::vector<std::string>& mixes);

}  // namespace rackbook
