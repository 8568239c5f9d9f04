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
    std::int64_t entries = 0;               // of the journal
    std::int64_t forgotten = 0;             // entries whose payload was taken out
    std::string lastHash;                   // hexadecimal; stands for the whole journal
    std::int64_t bytesKept = 0;             // files of attachments that are in the book
    std::vector<std::string> withoutBytes;  // ids of attachments that are known by their hash alone
    std::vector<Finding> findings;
};

// Called now and then with how many journal entries were looked at since the call before.
using OnEntries = std::function<void(std::size_t)>;

// Checks SQLite's own integrity, references, every hash, that of attachments' bytes among them, and
// every table against the same table made again from the journal in memory; each entry is looked at
// twice. Throws StoreError where the file cannot be read at all. `onEntries` may be empty.
Verification verify(const BookFile& book, const RecordDecoder& decode,
                    const OnEntries& onEntries = {});

// How many entries the journal has.
std::int64_t journalLength(const BookFile& book);

// Empties every table but the journal and the bytes of attachments, and makes it again from the
// journal, in one transaction.
// Throws StoreError where the journal itself is damaged.
// Pre: `book` was opened to write.
void rebuild(BookFile& book, const RecordDecoder& decode);

}  // namespace rackbook
