// How far a journal has come, as something that can be kept elsewhere and compared.
#pragma once

#include <cstdint>
#include <string>

#include "store/BookFile.h"

namespace rackbook {

// The hash stands for all entries up to that one.
struct JournalEnd {
    std::int64_t entry = 0;  // 0: there is none
    std::string hash;        // hexadecimal
};

// Throw StoreError, both.
JournalEnd journalEndOf(const BookFile& book);
// Whether the journal holds that very entry, and so all before it.
bool holds(const BookFile& book, const JournalEnd& end);

// The last entry that both journals hold; entry 0 where they have none in common.
JournalEnd lastInCommon(const BookFile& one, const BookFile& other);

}  // namespace rackbook
