#include "commands/Undo.h"

#include <algorithm>
#include <limits>

#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/JournalWords.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "exchange/RecordCodec.h"
#include "store/JointIntake.h"

namespace rackbook {

namespace {

// What was recorded under the number that was given, else what was recorded last.
std::vector<JournalEntry> entriesMeant(const CommandContext& context, const BookFile& book) {
    if (const std::optional<int> number =
            wholeGiven(context, "number", "NUMBER", 1, std::numeric_limits<int>::max())) {
        std::vector<JournalEntry> entries = journalOfIntake(book, *number);
        if (entries.empty())
            throw UsageError("nothing was recorded under number " + std::to_string(*number),
                             "rackbook history shows the numbers.");
        return entries;
    }
    std::vector<std::vector<JournalEntry>> latest = latestIntakes(book, 1);
    if (latest.empty())
        throw UsageError("nothing has been recorded yet", "There is nothing to take back.");
    return std::move(latest.front());
}

// Another entry has taken the place of this one since.
void requireUnchangedSince(const BookFile& book, const JournalEntry& entry) {
    const std::vector<JournalEntry> all = journalOf(book, entry.kind, entry.id);
    if (all.empty() || all.back().entry == entry.entry)
        return;
    const JournalEntry& later = all.back();
    const std::string name = nameOf(entry.kind, entry.id);
    if (later.action == JournalAction::strike)
        throw UsageError(name + " was struck out since", "There is nothing to take back of it.");
    throw UsageError(name + " was " + wordOf(later.action) + " since, under number " +
                         std::to_string(later.intake),
                     "Take that back first: rackbook undo " + std::to_string(later.intake) + ".");
}

MadeRecord struckOut(const JournalEntry& entry) {
    MadeRecord made;
    made.record = decodeRecord(*entry.payload);
    made.strikes = true;
    return made;
}

MadeRecord asBefore(const BookFile& book, const JournalEntry& entry) {
    const std::optional<JournalEntry> before =
        entry.earlier ? journalEntry(book, *entry.earlier) : std::nullopt;
    if (before && !before->payload)
        throw UsageError(
            "what " + nameOf(entry.kind, entry.id) + " said before had to be forgotten",
            "It cannot be taken back.");
    if (!before)
        throw UsageError("what " + nameOf(entry.kind, entry.id) + " said before is not known",
                         "Correct it with rackbook enter.");
    MadeRecord made;
    made.record = decodeRecord(*before->payload);
    return made;
}

// Everything of the intake, the last first.
std::vector<MadeRecord> takenBack(const BookFile& book, std::vector<JournalEntry> entries) {
    std::reverse(entries.begin(), entries.end());
    std::vector<MadeRecord> made;
    for (const JournalEntry& entry : entries) {
        if (entry.action == JournalAction::strike)
            throw UsageError(nameOf(entry.kind, entry.id) +
                                 " was struck out then, and what was struck out stays so",
                             "Record it again under another id; rackbook history shows what it "
                             "said.");
        if (!entry.payload)
            throw UsageError("what " + nameOf(entry.kind, entry.id) + " said had to be forgotten",
                             "It cannot be taken back.");
        requireUnchangedSince(book, entry);
        made.push_back(entry.action == JournalAction::record ? struckOut(entry)
                                                             : asBefore(book, entry));
    }
    return made;
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const std::vector<JournalEntry> entries = entriesMeant(context, book);
    const JournalEntry& first = entries.front();
    const std::string timeZone = timeZoneOf(book);
    printWrapped(context.console, "Number " + std::to_string(first.intake) + ", recorded " +
                                      recordedWords(first.recordedAt, timeZone) + " (" + timeZone +
                                      ") by " + recordedByWords(first.recordedBy) +
                                      ", is taken back:");
    JointIntake together(book);
    CommandContext part = context;
    part.jointBook = &book;
    const ExitCode code = recordMade(part, book, takenBack(book, entries),
                                     context.arguments.value("reason").value_or("taken back"));
    context.console.out() << "\n";
    if (context.arguments.has("dry-run")) {
        context.console.out() << "Tried only: nothing was recorded.\n";
        return code;
    }
    if (context.conversation.mayTalk() && !context.conversation.confirm("Take it back")) {
        context.console.out() << "Left as it was.\n";
        return ExitCode::success;
    }
    together.keep();
    context.console.out() << "Recorded in " << book.path() << ".\n";
    return code;
}

}  // namespace

Command undoCommand() {
    CommandSpec spec;
    spec.name = "undo";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Take back what was recorded last");
    spec.details =
        "What was recorded together is taken back together: new records are struck out, changed "
        "and corrected ones say again what they said before. The journal keeps all of it, with the "
        "reason. NUMBER takes back something earlier, as long as nothing that came later rests on "
        "it; rackbook history shows the numbers. On a terminal it asks first.";
    spec.positionals = {{"number", "The number under which it was recorded.", false}};
    spec.options = {valueOption("reason", "TEXT", "Why.", "taken back")};
    spec.writesBook = true;
    spec.examples = {{"rackbook undo --dry-run", "See what would be taken back."},
                     {"rackbook undo 1 --reason \"the wrong folder\" --dry-run",
                      "The same for what was recorded under number 1."}};
    return {spec, run};
}

}  // namespace rackbook
