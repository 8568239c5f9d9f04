// What another book says that this one does not, record by record, and who is ahead.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "store/JournalQuery.h"

namespace rackbook {

// A record that two books say differently, and neither follows from the other.
struct Divergence {
    JournalEntry here;  // the last entries about it
    JournalEntry there;
};

struct BookDifference {
    std::vector<JournalEntry> toTake;     // of the other book: new there, or changed since here
    std::vector<Divergence> divergences;  // in the order of the other journal
    std::size_t alike = 0;
    std::size_t aheadHere = 0;                // changed here since what the other book says
    std::size_t onlyStruckThere = 0;          // recorded and struck out there, and never here
    std::size_t forgotten = 0;                // had to be forgotten here, and stays so
    std::vector<std::string> forgottenThere;  // "party ane": had to be forgotten there, and are
                                              // still known here
};

// A book follows another in a record where what the other says last was said by it before. Neither
// book is changed. `onEntries` is called with how many journal entries were read since the call
// before; it may be empty. Throws StoreError.
BookDifference differenceOf(const BookFile& here, const BookFile& there,
                            const std::function<void(std::size_t)>& onEntries = {});

}  // namespace rackbook
