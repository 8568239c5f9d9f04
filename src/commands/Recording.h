// The one way into a book: checked records, one transaction, and a plain account of it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "commands/Command.h"
#include "exchange/RecordFiles.h"
#include "records/Record.h"
#include "store/Intake.h"

namespace rackbook {

// How many of each kind were recorded, changed or found unchanged.
struct IntakeTally {
    struct Line {
        RecordKind kind = RecordKind::book;
        std::size_t recorded = 0;
        std::size_t updated = 0;
        std::size_t corrected = 0;
        std::size_t struck = 0;
        std::size_t unchanged = 0;
    };
    std::vector<Line> lines;  // kinds that occurred, in the order of RecordKind
    std::size_t written() const;
    std::size_t unchanged() const;
};

// Takes everything that `reader` holds. A record that differs from the book is an update where
// `changedOn` (EDTF) is given, else a correction. Throws RefusedInput with every finding where
// anything is wrong; then the book is as it was.
IntakeTally takeIncoming(BookFile& book, RecordFileReader& reader, const IntakeTerms& terms,
                         const std::optional<std::string>& changedOn);

// The same, with a date of its own for each record of the reader that is an update.
using ChangedOnOf = std::function<std::optional<std::string>(const IncomingRecord&)>;
IntakeTally takeIncoming(BookFile& book, RecordFileReader& reader, const IntakeTerms& terms,
                         const ChangedOnOf& changedOn);

// The same, with entries made of the records of the reader, in its order.
using EntryOfIncoming = std::function<Entry(const IncomingRecord&)>;
IntakeTally takeIncoming(BookFile& book, RecordFileReader& reader, const IntakeTerms& terms,
                         const EntryOfIncoming& entryOf);

// Recorded by whom and when, and whether it is only tried, as the arguments say.
IntakeTerms termsOf(const CommandContext& context);

// A record that a verb has made; changedOn and strikes as in Entry.
struct MadeRecord {
    Record record;
    std::optional<std::string> changedOn = std::nullopt;
    bool strikes = false;
    std::string bytes = {};  // of an attachment, to be kept with it; may be empty
};

// Checks and records what a verb has made, and prints it: a line for each record, and whether it
// was kept. `reason` is why the book was wrong, for records that differ without changedOn and for
// those that are struck out. Throws like takeIncoming.
ExitCode recordMade(CommandContext& context, BookFile& book, const std::vector<MadeRecord>& made,
                    const std::optional<std::string>& reason = std::nullopt);

// A new id that no other machine will choose: "pull-2026-03-04-k7x2mq".
std::string freshId(RecordKind kind, const EdtfDate& at);

}  // namespace rackbook
