// A book in memory that was made of records alone.
#pragma once

#include <vector>

#include "store/BookFile.h"
#include "store/Intake.h"

namespace rackbook {

// Holds just these, and goes with the handle; the file that the options name is only read for its
// form. Throws StoreError, also where the records do not fit together.
BookFile bookOfRecords(const BookOptions& options, const std::vector<Entry>& entries);

}  // namespace rackbook
