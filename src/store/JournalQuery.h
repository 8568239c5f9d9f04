// What the journal says about records and intakes.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "records/RecordKind.h"
#include "store/BookFile.h"

namespace rackbook {

enum class JournalAction { record, update, correct, strike };

// One entry as it was recorded; kinds that this program does not know are left out everywhere.
struct JournalEntry {
    std::int64_t entry = 0;
    std::int64_t intake = 0;  // entries of one intake were recorded together
    std::string recordedAt;   // UTC, ISO 8601
    std::string recordedBy;
    JournalAction action = JournalAction::record;
    RecordKind kind = RecordKind::book;
    std::string id;
    std::optional<std::int64_t> earlier;  // the entry that this one takes the place of
    std::optional<std::string> reason;
    std::optional<std::string> payload;  // the record as JSON; absent where it had to be forgotten
    std::optional<std::string> happenedAt;  // EDTF
};

// Of one record, from the first to the last. Throws StoreError, like all of these.
std::vector<JournalEntry> journalOf(const BookFile& book, RecordKind kind, const std::string& id);

// Those recorded together under that number, in their order; empty where there are none.
std::vector<JournalEntry> journalOfIntake(const BookFile& book, std::int64_t intake);

// The entry of that number.
std::optional<JournalEntry> journalEntry(const BookFile& book, std::int64_t entry);

// The entries of the latest intakes, at most `most` of them, the latest first.
std::vector<std::vector<JournalEntry>> latestIntakes(const BookFile& book, std::size_t most);

}  // namespace rackbook
