// The layers and the count of an edition, for rackbook show.
#pragma once

#include "cli/Console.h"
#include "records/Edition.h"
#include "store/BookFile.h"

namespace rackbook {

void printEdition(Console& console, const BookFile& book, const Edition& edition);

}  // namespace rackbook
