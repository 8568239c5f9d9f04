// What the book holds already, for tables that are taken in.
#pragma once

#include "exchange/TableRecords.h"
#include "store/BookFile.h"

namespace rackbook {

// Reads each kind once, when it is first asked for. The book must outlive it.
StandingRecords standingIn(const BookFile& book);

}  // namespace rackbook
