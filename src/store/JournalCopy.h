// The journal from one book into another, entry by entry, with the hashes that prove it.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "records/JournalRow.h"
#include "store/Verification.h"

namespace rackbook {

// Every entry of the journal, in order, as it was when the call began.
void eachJournalRow(const BookFile& book, const std::function<void(const JournalRow&)>& see);

// Gives the next entry; false at the end.
using NextJournalRow = std::function<bool(JournalRow&)>;
// Gives the bytes of an attachment by their SHA-256, or nothing where they are not at hand.
using BytesByHash = std::function<std::optional<std::string>(const std::string&)>;

// A new book at options.path with these entries, their hashes and times as they are, and the tables
// made from them; how many entries it has. Throws StoreError where a file is there already, and
// InputError naming the entry where the chain of hashes is broken or an entry cannot be read; no
// file is left then. `onEntries` may be empty.
std::int64_t bookOfJournal(const BookOptions& options, const NextJournalRow& next,
                           const BytesByHash& bytesOf, const RecordDecoder& decode,
                           const OnEntries& onEntries = {});

}  // namespace rackbook
