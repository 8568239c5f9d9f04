// A book as it was at an earlier time.
#pragma once

#include <string>

#include "store/Verification.h"

namespace rackbook {

// What the book said before `before` (UTC, ISO 8601), made anew in memory from its journal; the
// file stays as it is. Corrections that came later are not in it. Throws StoreError where the
// journal cannot be replayed.
BookFile bookAsSaid(const BookFile& book, const std::string& before, const RecordDecoder& decode);

}  // namespace rackbook
