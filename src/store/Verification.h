// Proving that a book is what was recorded: the file, the chain of the journal, and the tables
// against the journal.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "base/Finding.h"
#include "records/Record.h"
#include "store/BookFile.h"

namespace rackbook {

// Turns a journal entry's JSON text into its record; throws InputError where it cannot.
using RecordDecoder = std::function<Record(std::string_view)>;

struct Verification {
    std::int64_t entries = 0;    // of the journal
    std::int64_t forgotten = 0;  // entries whose payload was taken out
    std::string lastHash;        // hexadecimal; stands for the whole journal
    std::vector<Finding> findings;
};

// Checks SQLite's own integrity, references, every hash, the definitions of the tables, and every
// table against the same table made again from the journal in memory. Throws StoreError where the
// file cannot be read at all.
Verification verify(const BookFile& book, const RecordDecoder& decode);

// Empties every table but the journal and makes it again from the journal, in one transaction.
// Pre: `book` was opened to write.
void rebuild(BookFile& book, const RecordDecoder& decode);

}  // namespace rackbook
