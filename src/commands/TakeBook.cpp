#include "commands/TakeBook.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/Files.h"
#include "base/Text.h"
#include "checks/Audit.h"
#include "commands/BookAccess.h"
#include "commands/BookDifference.h"
#include "commands/FieldChanges.h"
#include "commands/FieldText.h"
#include "commands/IntakeReport.h"
#include "commands/JournalWords.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "commands/Recording.h"
#include "exchange/RecordCodec.h"
#include "records/Forgetting.h"
#include "store/AttachmentBytes.h"
#include "store/JointIntake.h"
#include "store/RecordReader.h"
#include "store/Verification.h"

namespace rackbook {

namespace {

using Names = std::set<std::string>;  // "impression EEL/13"

Names namesGiven(const CommandContext& context, const std::string& option) {
    const std::vector<std::string> names = context.arguments.values(option);
    return {names.begin(), names.end()};
}

std::string nameOf(const Divergence& divergence) {
    return rackbook::nameOf(divergence.here.kind, divergence.here.id);
}

void requireKnown(const Names& names, const std::string& option,
                  const std::vector<Divergence>& divergences) {
    for (const std::string& name : names)
        if (std::none_of(divergences.begin(), divergences.end(),
                         [&](const Divergence& divergence) { return nameOf(divergence) == name; }))
            throw UsageError("--" + option + ": the books do not contradict each other in \"" +
                                 excerpt(name) + "\"",
                             "Name a record as it is listed, such as \"impression EEL/13\".");
}

std::string lastWord(const JournalEntry& entry) {
    return std::string(wordOf(entry.action)) + " " + recordedInUtc(entry.recordedAt) + " by " +
           printable(entry.recordedBy);
}

// One side of a record: only what the other side says differently.
std::string sideText(const JournalEntry& entry, const std::vector<FieldChange>& changes,
                     std::string FieldChange::*said) {
    if (entry.action == JournalAction::strike)
        return lastWord(entry);
    std::vector<std::string> fields;
    for (const FieldChange& change : changes)
        fields.push_back(change.field + " " + (change.*said).substr(0, 200));
    return lastWord(entry) + (fields.empty() ? "" : ": " + joined(fields, ", "));
}

void printDivergences(Console& console, const std::vector<Divergence>& divergences) {
    for (const Divergence& divergence : divergences) {
        std::vector<FieldChange> changes;
        if (divergence.here.payload && divergence.there.payload)
            changes = changesBetween(decodeRecord(*divergence.here.payload),
                                     decodeRecord(*divergence.there.payload));
        printHeading(console, printable(nameOf(divergence)));
        printWrapped(console, "  here: " + printable(sideText(divergence.here, changes,
                                                              &FieldChange::before)));
        printWrapped(console, "  there: " + printable(sideText(divergence.there, changes,
                                                               &FieldChange::after)));
    }
    console.out() << "\n";
    printWrapped(console,
                 std::to_string(divergences.size()) +
                     (divergences.size() == 1 ? " record is" : " records are") +
                     " said differently in the two books, and neither follows the other. Nothing "
                     "was taken. Decide each with --here \"KIND ID\" or --there \"KIND ID\", or "
                     "correct one of the books first.");
}

// Where two things were given one id in two books, neither side may win: that is for people.
std::vector<JournalEntry> decided(const CommandContext& context, BookDifference& difference) {
    const Names here = namesGiven(context, "here");
    const Names there = namesGiven(context, "there");
    requireKnown(here, "here", difference.divergences);
    requireKnown(there, "there", difference.divergences);
    std::vector<Divergence> open;
    std::vector<JournalEntry> taken = difference.toTake;
    for (Divergence& divergence : difference.divergences) {
        const std::string name = nameOf(divergence);
        if (here.count(name) != 0 && there.count(name) != 0)
            throw UsageError("--here and --there both name " + name, "Decide for one of them.");
        if (there.count(name) != 0) {
            if (divergence.here.action == JournalAction::strike)
                throw UsageError(name + " was struck out here, and what was struck out stays so",
                                 "Enter it again under another id, or decide with --here.");
            taken.push_back(std::move(divergence.there));
        } else if (here.count(name) == 0) {
            open.push_back(std::move(divergence));
        }
    }
    difference.divergences = std::move(open);
    return taken;
}

IntakeTally takeAll(CommandContext& context, BookFile& book, const BookFile& other,
                    const std::vector<JournalEntry>& entries) {
    RecordFileReader reader(context.folders.schema);
    std::map<std::string, const JournalEntry*> byName;
    for (const JournalEntry& entry : entries) {
        reader.add(decodeRecord(*entry.payload), other.path());
        byName[rackbook::nameOf(entry.kind, entry.id)] = &entry;
    }
    IntakeTerms terms = termsOf(context);
    terms.dryRun = false;  // whether it is kept is decided when both books stand in one
    terms.recordedBy += ", from " + fileNameOf(other.path());
    terms.reason = "so says " + fileNameOf(other.path());
    terms.bytesOf = [&](const std::string& hash) { return attachmentBytes(other, hash); };
    Progress progress(context.console, "Taking in records", entries.size());
    std::size_t shown = 0;
    terms.onProgress = [&](std::size_t done) {
        progress.advance(done - shown);
        shown = done;
    };
    return takeIncoming(book, reader, terms, [&](const IncomingRecord& incoming) {
        const JournalEntry& entry =
            *byName.at(rackbook::nameOf(kindOf(incoming.record), idOf(incoming.record)));
        Entry made = {incoming.record, incoming.payload, std::nullopt, false};
        made.strikes = entry.action == JournalAction::strike;
        if (entry.action == JournalAction::update)
            made.changedOn = entry.happenedAt;
        return made;
    });
}

std::vector<Finding> auditOf(const RecordSet& records) {
    const std::vector<Book>& studios = records.of<Book>();
    if (studios.empty())
        return {};
    const AuditContext context(records, HouseRules(studios.front().houseRules),
                               nowAt(studios.front()).latest());
    return audit(context);
}

// What the books say together and neither said alone: a number given to two impressions, more taken
// from a tin than was in it.
std::vector<Finding> foundTogether(const RecordSet& here, const RecordSet& there,
                                   const RecordSet& together) {
    std::set<std::string> known;
    for (const RecordSet* alone : {&here, &there})
        for (const Finding& finding : auditOf(*alone))
            known.insert(describe(finding));
    std::vector<Finding> found;
    for (Finding& finding : auditOf(together))
        if (finding.severity != Severity::note && known.count(describe(finding)) == 0)
            found.push_back(std::move(finding));
    return found;
}

void printFound(Console& console, const std::vector<Finding>& findings, bool isKept) {
    printHeading(console, "What the two books say together, and neither says alone");
    for (const Finding& finding : findings)
        printWrapped(console, printable(severityName(finding.severity) +
                                        (", " + finding.rule + ": ") + describe(finding)));
    if (!isKept)
        printParagraph(console,
                       "Nothing was taken. Correct one of the books first, or take it all the "
                       "same with --with-findings, and rackbook audit will go on telling it.");
    console.out() << "\n";
}

void tellRest(Console& console, const BookDifference& difference) {
    const auto tell = [&](std::size_t count, const std::string& one, const std::string& many) {
        if (count > 0)
            console.out() << count << (count == 1 ? one : many) << "\n";
    };
    tell(difference.alike, " record is alike in both books.", " records are alike in both books.");
    tell(difference.aheadHere, " record was changed here since.",
         " records were changed here since.");
    tell(difference.onlyStruckThere, " record was struck out there and never came here.",
         " records were struck out there and never came here.");
    tell(difference.forgotten, " record that had to be forgotten here stays so.",
         " records that had to be forgotten here stay so.");
    if (!difference.forgottenThere.empty())
        printParagraph(console, "The other book had to forget what this one still knows: " +
                                    printable(joined(difference.forgottenThere)) +
                                    ". This one keeps it until rackbook forget is given here too.");
}

// Their places may have come in by a book that did not know yet.
void tellPlacesOfForgotten(Console& console, const RecordSet& together,
                           const std::vector<JournalEntry>& taken) {
    for (const JournalEntry& entry : taken) {
        const Place* place =
            entry.kind == RecordKind::place ? together.find<Place>(entry.id) : nullptr;
        const Party* holder = place ? together.find(place->holder) : nullptr;
        if (holder && holder->name == forgottenName && place->name != forgottenName)
            printParagraph(console, "place " + printable(place->id) +
                                        " is of someone whom this book had to forget, and came in "
                                        "with its name: rackbook forget " +
                                        printable(holder->id) + " takes that out too.");
    }
}

ExitCode takeTogether(CommandContext& context, BookFile& book, const BookFile& other,
                      const std::vector<JournalEntry>& taken, const BookDifference& difference) {
    const RecordSet before = everythingIn(book);
    JointIntake together(book);
    const IntakeTally tally = takeAll(context, book, other, taken);
    const RecordSet after = everythingIn(book);
    const std::vector<Finding> findings = foundTogether(before, everythingIn(other), after);
    const bool mayKeep = findings.empty() || context.arguments.has("with-findings");
    if (!findings.empty())
        printFound(context.console, findings, mayKeep);
    if (!mayKeep)
        return ExitCode::findings;
    const bool isTried = context.arguments.has("dry-run");
    if (!isTried)
        together.keep();
    printTally(context.console, tally, isTried, book.path());
    tellRest(context.console, difference);
    tellPlacesOfForgotten(context.console, after, taken);
    return ExitCode::success;
}

ExitCode run(CommandContext& context) {
    const std::string file = context.arguments.text("file");
    BookOptions otherOptions = bookOptionsOf(context);
    otherOptions.path = file;
    // In memory: a log that SQLite keeps beside a file that is read would outlast a cut of the
    // power.
    const BookFile other = BookFile::openToTry(otherOptions);
    BookFile book = bookToWrite(context);
    Progress progress(context.console, "Comparing entries",
                      static_cast<std::size_t>(journalLength(book) + journalLength(other)));
    BookDifference difference =
        differenceOf(book, other, [&](std::size_t entries) { progress.advance(entries); });
    progress.finish();
    const std::vector<JournalEntry> taken = decided(context, difference);
    if (!difference.divergences.empty()) {
        printDivergences(context.console, difference.divergences);
        return ExitCode::findings;
    }
    if (taken.empty()) {
        context.console.out() << "The other book says nothing that this one does not.\n";
        tellRest(context.console, difference);
        return ExitCode::success;
    }
    return takeTogether(context, book, other, taken, difference);
}

}  // namespace

Command takeBookCommand() {
    CommandSpec spec;
    spec.name = "take-book";
    spec.group = toTranslate("group", "The book");
    spec.summary = toTranslate("summary", "Take what another book says into this one");
    spec.details =
        "For a laptop and a machine in the studio, or a shared workshop: records that only the "
        "other book has come in, and where it went on from what this one says, so does this one. "
        "The other book is not changed; run it there the other way round, and both say the "
        "same.\n\n"
        "Where both changed a record, or gave one id to two things, nothing is taken, and both "
        "sides are shown: --here and --there decide them one by one. Nothing is taken either where "
        "the audit finds something in both together that it finds in neither alone, such as a "
        "number given to two impressions. The journal keeps which book a record came from. Whoever "
        "had "
        "to be forgotten in one of the books does not come back into it; the other is asked to "
        "forget them too.";
    spec.positionals = {{"file", "The other book."}};
    spec.options = {
        {"here",
         "RECORD",
         "Leave this record as this book says it, such as \"impression EEL/13\".",
         false,
         true,
         {},
         {}},
        {"there", "RECORD", "Take this record as the other book says it.", false, true, {}, {}},
        flagOption("with-findings",
                   "Take it although the audit finds more in both books together than in each.")};
    spec.writesBook = true;
    spec.examples = {{"rackbook take-book laptop.rackbook --dry-run", "What would come in."}};
    return {spec, run};
}

}  // namespace rackbook
