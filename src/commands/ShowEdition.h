// The layers and the count of an edition, for rackbook show.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "records/Edition.h"
#include "store/BookFile.h"

namespace rackbook {

void printEdition(Console& console, const BookFile& book, const Edition& edition);

// Adds the same to a report, as "layers" and "count".
void addEdition(Tree& report, const BookFile& book, const Edition& edition);

}  // namespace rackbook
