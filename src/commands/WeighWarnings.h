// What a weighing should make one look at twice.
#pragma once

#include <cstddef>

#include "cli/Console.h"
#include "records/Weighing.h"
#include "store/BookFile.h"
#include "store/HistoryPart.h"

namespace rackbook {

// The mixes and lots that weighings have to do with.
InkPartWanted inkPartBehind(const std::vector<Weighing>& weighings);

// Says where a weighing of that part, from the position `first` on, takes more out of a mix or a
// lot than can be there, by more than the house rule allows.
void warnOfWeighings(Console& console, const BookFile& book, const PartOfInk& part,
                     std::size_t first);

}  // namespace rackbook
