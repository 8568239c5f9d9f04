#include "commands/History.h"

#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/Contacts.h"
#include "commands/FieldChanges.h"
#include "commands/FieldText.h"
#include "commands/GivenValues.h"
#include "commands/JournalWords.h"
#include "commands/JsonReport.h"
#include "commands/KindAndId.h"
#include "commands/OptionRows.h"
#include "commands/SheetSelection.h"
#include "exchange/RecordCodec.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

constexpr int usualLast = 20;
constexpr int mostLast = 100'000;

std::optional<Record> recordIn(const JournalEntry& entry) {
    if (!entry.payload)
        return std::nullopt;
    Record record = decodeRecord(*entry.payload);
    withholdContact(record);
    return record;
}

// A code or a working number where the book has it under that; else the id as it was given, which
// may be that of a record struck out.
std::string idMeant(const BookFile& book, RecordKind kind, const std::string& words) {
    if (kind == RecordKind::edition) {
        const std::vector<Edition> coded = thoseOf<Edition>(book, "code", words);
        if (!coded.empty())
            return coded.front().id;
    } else if (kind == RecordKind::impression && words.find(':') != std::string::npos) {
        return sheetsNamed(book, words).sheets.front().id;
    }
    return words;
}

std::string changesInWords(const std::vector<FieldChange>& changes) {
    std::string words;
    for (const FieldChange& change : changes)
        words += (words.empty() ? "" : "; ") + change.field + ": " +
                 (change.before.empty() ? "–" : change.before) + " → " +
                 (change.after.empty() ? "–" : change.after);
    return words;
}

// What an entry said, or what it changed; `before` is the state before it.
std::string saidBy(const JournalEntry& entry, const std::optional<Record>& before,
                   const std::optional<Record>& after) {
    if (!after)
        return "had to be forgotten";
    if (entry.action == JournalAction::strike)
        return {};
    return before ? changesInWords(changesBetween(*before, *after, FieldStyle::plain))
                  : fieldsInOneLine(*after);
}

Tree changesTree(const std::vector<FieldChange>& changes) {
    Tree tree = Tree::array();
    for (const FieldChange& change : changes) {
        Tree one;
        one.set("field", change.field);
        one.set("before", change.before);
        one.set("after", change.after);
        tree.add(std::move(one));
    }
    return tree;
}

ExitCode tellRecord(CommandContext& context, const BookFile& book) {
    const auto [kind, words] = kindAndIdGiven(context);
    const std::string id = idMeant(book, kind, words);
    const std::vector<JournalEntry> entries = journalOf(book, kind, id);
    if (entries.empty())
        throw UsageError("the journal knows no " + nameOf(kind, id),
                         "rackbook list " + std::string(textOf(kind)) + " shows what there is.");
    Tree report = newReport("history");
    Tree told = Tree::array();
    const std::string timeZone = timeZoneOf(book);
    Table table({{"entry", Align::right},
                 {"recorded (" + timeZone + ")"},
                 {"by"},
                 {""},
                 {"what it said or changed"},
                 {"reason"}});
    std::optional<Record> before;
    for (const JournalEntry& entry : entries) {
        std::optional<Record> after = recordIn(entry);
        table.addRow({std::to_string(entry.entry), recordedWords(entry.recordedAt, timeZone),
                      entry.recordedBy, wordOf(entry.action), saidBy(entry, before, after),
                      entry.reason.value_or(std::string())});
        Tree tree = treeOf(entry);
        if (after)
            tree.set("record", treeOf(*after));
        if (before && after)
            tree.set("changes", changesTree(changesBetween(*before, *after)));
        told.add(std::move(tree));
        before = std::move(after);
    }
    report.set("entries", std::move(told));
    context.console.out() << (context.arguments.has("json")
                                  ? jsonText(report)
                                  : table.text(context.console.width(), {}));
    return ExitCode::success;
}

ExitCode tellLatest(CommandContext& context, const BookFile& book) {
    const int most = wholeGiven(context, "last", "--last", 1, mostLast).value_or(usualLast);
    Tree report = newReport("history");
    Tree told = Tree::array();
    const std::string timeZone = timeZoneOf(book);
    Table table(
        {{"no.", Align::right}, {"recorded (" + timeZone + ")"}, {"by"}, {"what"}, {"reason"}});
    for (const std::vector<JournalEntry>& entries :
         latestIntakes(book, static_cast<std::size_t>(most))) {
        const JournalEntry& first = entries.front();
        table.addRow({std::to_string(first.intake), recordedWords(first.recordedAt, timeZone),
                      first.recordedBy, intakeInShort(entries),
                      first.reason.value_or(std::string())});
        for (const JournalEntry& entry : entries)
            told.add(treeOf(entry));
    }
    report.set("entries", std::move(told));
    context.console.out() << (context.arguments.has("json")
                                  ? jsonText(report)
                                  : table.text(context.console.width(),
                                               "Nothing has been recorded yet."));
    return ExitCode::success;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    if (!context.arguments.has("kind"))
        return tellLatest(context, book);
    return tellRecord(context, book);
}

}  // namespace

Command historyCommand() {
    CommandSpec spec;
    spec.name = "history";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate(
        "summary", "Say what was recorded, changed and corrected, when, by whom and why");
    spec.details =
        "Of one record: each state it had, with what changed and the reason. Without KIND: what "
        "was recorded last, the latest first, under the numbers that rackbook undo takes. What was "
        "struck out has its history too. Times are those of the book's time zone, which stands "
        "above "
        "them; --json tells them in UTC. Contacts of people are never told.";
    spec.positionals = {
        {"kind",
         "The kind of record, such as look; or an edition's code, or CODE:7 for one of its sheets, "
         "alone.",
         false},
        {"id", "Its id; of an edition also its code, of an impression also CODE:7.", false}};
    spec.options = {valueOption("last", "N", "How many of the latest are told, without KIND.",
                                std::to_string(usualLast))};
    spec.reportsJson = true;
    spec.examples = {{"rackbook history", "What was recorded last."},
                     {"rackbook history EEL:3", "The states of one sheet."}};
    return {spec, run};
}

}  // namespace rackbook
