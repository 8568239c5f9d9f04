// Reading out of a damaged book whatever can be proved to be what was recorded.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "store/BookFile.h"
#include "store/Verification.h"

namespace rackbook {

struct Loss {
    std::string what;   // "journal entries 12 to 15", "journal entry 16, mix veil"
    std::string cause;  // "nothing of them can be read"
};

struct Salvaged {
    std::int64_t entries = 0;    // that were kept
    std::int64_t firstKept = 0;  // their numbers in the damaged book, 0 where there are none
    std::int64_t lastKept = 0;
    std::string lastRecordedAt;  // of the last
    std::int64_t files = 0;      // of attachments
    // Every entry up to the last has its place, and the journal its old hashes; else the entries
    // that were kept are chained anew, with numbers of their own.
    bool isSameJournal = false;
    std::vector<Loss> losses;
    std::vector<std::string>
        notPlaced;  // records that can be read, as JSON, but name what was lost
};

// The files are read as bytes, whatever they hold, and left alone. Each entry carries the hashes of
// itself and of its record, and an attachment that of its bytes: what does not fit them is left
// out, so that nothing comes in that was not recorded. Throws InputError where the file cannot be
// read by the system or is no book at all, StoreError.
// Pre: `into` is empty and open to write.
Salvaged salvage(const std::string& damagedPath, BookFile& into, const RecordDecoder& decode);

}  // namespace rackbook
