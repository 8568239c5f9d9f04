// What a weighing should make one look at twice.
#pragma once

#include <cstddef>

#include "cli/Console.h"
#include "records/History.h"
#include "store/BookFile.h"

namespace rackbook {

// Says where a weighing of the history, from the position `first` on, takes more out of a mix or a
// lot than can be there, by more than the house rule allows.
void warnOfWeighings(Console& console, const BookFile& book, const History& history,
                     std::size_t first);

}  // namespace rackbook
