// When a record came into the journal.
#pragma once

#include <optional>
#include <string>

#include "records/RecordKind.h"
#include "store/BookFile.h"

namespace rackbook {

struct EntryNote {
    std::string recordedAt;  // UTC, ISO 8601
    std::string recordedBy;
    bool isStruck = false;  // it was struck out since
};

// Of the record of that id, when it was first recorded; nothing where it never was. Throws
// StoreError.
std::optional<EntryNote> firstEntryOf(const BookFile& book, RecordKind kind, const std::string& id);

}  // namespace rackbook
