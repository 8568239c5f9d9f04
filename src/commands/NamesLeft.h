// Where in a book a name still stands that it was to forget.
#pragma once

#include <string>
#include <vector>

#include "commands/ForgetPlan.h"

namespace rackbook {

struct NameLeft {
    std::string where;  // "transfer sold-1, terms", "journal entry 12 (look l1), reason"
    std::string found;  // what of the names stands there
};

// In every record as it stands, in what the journal keeps of earlier states, in its reasons and the
// names of those who recorded, and in ids. What only names the party by its id is not told; entries
// that the plan empties are passed over.
std::vector<NameLeft> namesLeft(const BookFile& book, const ForgetPlan& plan);

// Copies of the book that rackbook restore left beside it, and the note of its last backup where
// that says a name.
std::vector<std::string> copiesBeside(const std::string& bookPath, const SoughtNames& names);

}  // namespace rackbook
