// Sheets that went through the same layer before.
#pragma once

#include <string>
#include <vector>

#include "records/Edition.h"
#include "records/Impression.h"
#include "records/Pull.h"
#include "store/BookFile.h"

namespace rackbook {

// Which of the sheets had the layer of the pull already, and when; empty where none had. No rule
// forbids it, since a layer may be pulled in several runs; but an evening may be told twice.
// Pre: the pull is not in the book yet. Throws StoreError.
std::string pulledBeforeWords(const BookFile& book, const Pull& pull, const Edition& edition,
                              const std::vector<Impression>& printed);

}  // namespace rackbook
