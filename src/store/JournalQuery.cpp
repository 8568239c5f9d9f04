#include "store/JournalQuery.h"

#include <algorithm>

#include "store/BookInner.h"
#include "store/Columns.h"

namespace rackbook {

namespace {

constexpr const char* columns =
    "SELECT entry, intake, recordedAt, recordedBy, action, kind, id, earlier, reason, payload, "
    "happenedAt FROM journal ";

JournalAction actionOf(std::string_view word) {
    if (word == "update")
        return JournalAction::update;
    if (word == "correct")
        return JournalAction::correct;
    return word == "strike" ? JournalAction::strike : JournalAction::record;
}

std::vector<JournalEntry> entriesOf(Statement& rows) {
    std::vector<JournalEntry> entries;
    while (rows.step()) {
        const std::optional<RecordKind> kind = enumFrom<RecordKind>(rows.view(5));
        if (!kind)
            continue;
        JournalEntry entry;
        entry.entry = rows.whole(0);
        entry.intake = rows.whole(1);
        entry.recordedAt = rows.text(2);
        entry.recordedBy = rows.text(3);
        entry.action = actionOf(rows.view(4));
        entry.kind = *kind;
        entry.id = rows.text(6);
        if (!rows.isNull(7))
            entry.earlier = rows.whole(7);
        if (!rows.isNull(8))
            entry.reason = rows.text(8);
        if (!rows.isNull(9))
            entry.payload = rows.text(9);
        if (!rows.isNull(10))
            entry.happenedAt = rows.text(10);
        entries.push_back(std::move(entry));
    }
    return entries;
}

Statement select(const BookFile& book, const std::string& tail) {
    return book.inner().database->prepare(columns + tail);
}

// The entry that stands for the record now, or the one that struck it out.
std::optional<std::int64_t> lastEntryOf(const BookFile& book, RecordKind kind,
                                        const std::string& id) {
    const Database& database = *book.inner().database;
    Statement standing =
        database.prepare("SELECT entry FROM " + quoted(textOf(kind)) + " WHERE id = ?");
    standing.bindText(1, id);
    if (standing.step())
        return standing.whole(0);
    Statement struck = database.prepare(
        "SELECT entry FROM journal WHERE action = 'strike' AND kind = ? AND id = ?");
    struck.bindText(1, textOf(kind));
    struck.bindText(2, id);
    return struck.step() ? std::optional(struck.whole(0)) : std::nullopt;
}

}  // namespace

std::optional<JournalEntry> journalEntry(const BookFile& book, std::int64_t entry) {
    Statement rows = select(book, "WHERE entry = ?");
    rows.bind(1, entry);
    std::vector<JournalEntry> found = entriesOf(rows);
    return found.empty() ? std::nullopt : std::optional(std::move(found.front()));
}

std::vector<JournalEntry> journalOf(const BookFile& book, RecordKind kind, const std::string& id) {
    std::vector<JournalEntry> entries;
    std::optional<std::int64_t> next = lastEntryOf(book, kind, id);
    while (next) {
        std::optional<JournalEntry> entry = journalEntry(book, *next);
        if (!entry)
            break;
        next = entry->earlier;
        entries.push_back(std::move(*entry));
    }
    std::reverse(entries.begin(), entries.end());
    return entries;
}

// Intakes rise with entries, so the rows of one lie together; the late ones are found soonest.
std::vector<JournalEntry> journalOfIntake(const BookFile& book, std::int64_t intake) {
    Statement numbers =
        book.inner().database->prepare("SELECT entry, intake FROM journal ORDER BY entry DESC");
    std::int64_t first = 0;
    std::int64_t last = 0;
    while (numbers.step() && numbers.whole(1) >= intake) {
        if (numbers.whole(1) != intake)
            continue;
        first = numbers.whole(0);
        last = std::max(last, first);
    }
    Statement rows = select(book, "WHERE entry BETWEEN ? AND ? ORDER BY entry");
    rows.bind(1, first);
    rows.bind(2, last);
    return entriesOf(rows);
}

std::vector<std::vector<JournalEntry>> latestIntakes(const BookFile& book, std::size_t most) {
    Statement numbers =
        book.inner().database->prepare("SELECT entry, intake FROM journal ORDER BY entry DESC");
    std::int64_t first = 0;
    std::int64_t intake = 0;
    std::size_t seen = 0;
    while (numbers.step()) {
        if (seen == 0 || numbers.whole(1) != intake) {
            if (seen == most)
                break;
            ++seen;
        }
        first = numbers.whole(0);
        intake = numbers.whole(1);
    }
    Statement rows = select(book, "WHERE entry >= ? ORDER BY entry");
    rows.bind(1, first);
    std::vector<std::vector<JournalEntry>> intakes;
    for (JournalEntry& entry : entriesOf(rows)) {
        if (intakes.empty() || intakes.back().front().intake != entry.intake)
            intakes.emplace_back();
        intakes.back().push_back(std::move(entry));
    }
    std::reverse(intakes.begin(), intakes.end());
    return intakes;
}

}  // namespace rackbook
