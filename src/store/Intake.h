// Recording: many records in one transaction, all or nothing.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "records/Record.h"
#include "store/BookFile.h"

namespace rackbook {

// One record to be recorded, with the JSON text that the journal keeps of it.
struct Entry {
    Record record;
    std::string payload;
    // Set where the thing itself has changed since it was recorded, and when (EDTF); a record that
    // differs without it is a correction and needs a reason.
    std::optional<std::string> changedOn;
    // The record should never have been recorded: it goes, and the journal keeps it. Needs a
    // reason; its id is never given again.
    bool strikes = false;
};

struct IntakeTerms {
    std::string recordedBy;
    std::string recordedAt;             // UTC, ISO 8601
    std::optional<std::string> reason;  // for corrections
    bool dryRun = false;                // everything is tried, nothing is kept
    // Gives the bytes of an attachment by their SHA-256, or nothing where they are not at hand;
    // asked for those that the book does not hold yet, so that they come in with their record. May
    // be empty. What it throws leaves the book as it was.
    std::function<std::optional<std::string>(const std::string&)> bytesOf;
    // Called now and then with the number of entries done; may be empty.
    std::function<void(std::size_t)> onProgress;
};

enum class EntryOutcome { recorded, updated, corrected, struck, unchanged };

// Why an entry cannot be taken.
struct IntakeProblem {
    std::size_t index = 0;  // in the list of entries
    std::string pointer;    // JSON pointer inside the record
    std::string what;
    std::string value;
    std::string remedy;
    std::optional<RecordKind> wanted =
        std::nullopt;  // the kind of record that `value` should name, but does not
};

struct IntakeResult {
    std::vector<EntryOutcome> outcomes;   // one for each entry; empty where there are problems
    std::vector<IntakeProblem> problems;  // all of them; where there is one, nothing was kept
    std::int64_t firstEntry = 0;          // the journal entries written, 0 where none were
    std::int64_t lastEntry = 0;
};

// Pre: `book` was opened to write; each record is sound by itself. Throws StoreError.
IntakeResult take(BookFile& book, const std::vector<Entry>& entries, const IntakeTerms& terms);

}  // namespace rackbook
