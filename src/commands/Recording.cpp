#include "commands/Recording.h"

#include <algorithm>
#include <map>

#include "base/Clock.h"
#include "base/Sha256.h"
#include "base/Text.h"
#include "base/Translated.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/ClockShifts.h"
#include "commands/Contacts.h"
#include "commands/DatesAhead.h"
#include "commands/FieldText.h"
#include "commands/OptionOfField.h"
#include "commands/RecordingFrom.h"
#include "exchange/RecordCodec.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

// A copy that leaves a contact out says nothing about the contact that the book holds.
void keepWithheldContacts(const BookFile& book, std::vector<IncomingRecord>& records) {
    for (IncomingRecord& incoming : records) {
        Party* party = std::get_if<Party>(&incoming.record);
        if (party == nullptr || !party->contactWithheld)
            continue;
        const std::optional<Party> standing = findIn<Party>(book, party->id);
        if (!standing || !standing->contact)
            continue;
        party->contact = standing->contact;
        party->contactWithheld = false;
        incoming.payload = encodeRecord(incoming.record);
    }
}

std::vector<Finding> findingsOf(const std::vector<IntakeProblem>& problems,
                                const RecordFileReader& reader) {
    std::vector<RecordSpot> spots;
    for (const IntakeProblem& problem : problems)
        spots.push_back({problem.index, problem.pointer});
    std::vector<Location> places = reader.locate(spots);
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < problems.size(); ++i) {
        Finding finding;
        finding.rule = "intake";
        finding.where = std::move(places[i]);
        finding.what = problems[i].what;
        finding.value = problems[i].value;
        finding.remedy = problems[i].remedy;
        findings.push_back(std::move(finding));
    }
    return findings;
}

IntakeTally tallyOf(const std::vector<IncomingRecord>& records,
                    const std::vector<EntryOutcome>& outcomes) {
    std::map<RecordKind, IntakeTally::Line> lines;
    for (std::size_t i = 0; i < outcomes.size(); ++i) {
        IntakeTally::Line& line = lines[kindOf(records[i].record)];
        line.kind = kindOf(records[i].record);
        switch (outcomes[i]) {
            case EntryOutcome::recorded:
                ++line.recorded;
                break;
            case EntryOutcome::updated:
                ++line.updated;
                break;
            case EntryOutcome::corrected:
                ++line.corrected;
                break;
            case EntryOutcome::struck:
                ++line.struck;
                break;
            case EntryOutcome::unchanged:
                ++line.unchanged;
                break;
        }
    }
    IntakeTally tally;
    for (const auto& [kind, line] : lines)
        tally.lines.push_back(line);
    return tally;
}

// The time zone that clock times are meant in: of the incoming book record, else of the book.
std::optional<std::string> timeZoneFor(const BookFile& book,
                                       const std::vector<IncomingRecord>& records) {
    for (const IncomingRecord& incoming : records)
        if (const Book* studio = std::get_if<Book>(&incoming.record))
            return studio->timeZone;
    if (countOf(book, RecordKind::book) == 0)
        return std::nullopt;
    return bookRecordOf(book).timeZone;
}

std::vector<Finding> clockShiftFindings(const BookFile& book, const RecordFileReader& reader,
                                        const std::vector<IncomingRecord>& records) {
    const std::optional<std::string> timeZone = timeZoneFor(book, records);
    std::vector<IntakeProblem> problems;
    for (std::size_t i = 0; timeZone && i < records.size(); ++i)
        for (const Complaint& complaint : clockShiftComplaints(records[i].record, *timeZone))
            problems.push_back({i, complaint.pointer, complaint.what, {}, complaint.remedy});
    return findingsOf(problems, reader);
}

// What goes into the journal beside the records is read by people too.
void requirePlainText(const std::string& option, const std::string& text) {
    constexpr std::size_t longest = 2000;
    const bool blank = text.find_first_not_of(" \t\n") == std::string::npos;
    if (blank || controlCharacterIn(text) || text.size() > longest)
        throw UsageError(
            option + " wants plain words, at most " + std::to_string(longest) + " bytes of them",
            "Write it anew.");
}

std::vector<EntryOutcome> takeEntries(BookFile& book, RecordFileReader& reader,
                                      std::vector<Entry> entries, const IntakeTerms& terms) {
    requirePlainText("--by", terms.recordedBy);
    if (terms.reason)
        requirePlainText("--reason", *terms.reason);
    std::vector<Finding> findings = reader.findings();
    for (Finding& finding : clockShiftFindings(book, reader, reader.records()))
        findings.push_back(std::move(finding));
    if (reader.hasUnreadable())
        throw RefusedInput(std::move(findings));
    IntakeTerms tried = terms;
    // What could be read is tried all the same, so that everything wrong is told at once.
    tried.dryRun = terms.dryRun || !findings.empty();
    IntakeResult result = take(book, entries, tried);
    std::vector<IntakeProblem>& problems = result.problems;
    problems.erase(std::remove_if(problems.begin(), problems.end(),
                                  [&](const IntakeProblem& problem) {
                                      return problem.wanted &&
                                             reader.hasRefused(*problem.wanted, problem.value);
                                  }),
                   problems.end());
    for (Finding& finding : findingsOf(problems, reader))
        findings.push_back(std::move(finding));
    if (!findings.empty())
        throw RefusedInput(std::move(findings));
    return std::move(result.outcomes);
}

std::optional<std::string> bytesAmong(const std::vector<MadeRecord>& made,
                                      const std::string& hash) {
    for (const MadeRecord& one : made) {
        const Attachment* attachment = std::get_if<Attachment>(&one.record);
        if (attachment != nullptr && attachment->sha256 == hash && !one.bytes.empty())
            return one.bytes;
    }
    return std::nullopt;
}

const char* outcomeWord(EntryOutcome outcome) {
    switch (outcome) {
        case EntryOutcome::recorded:
            return toTranslate("record", "new");
        case EntryOutcome::updated:
            return toTranslate("record", "changed");
        case EntryOutcome::corrected:
            return toTranslate("record", "corrected");
        case EntryOutcome::struck:
            return toTranslate("record", "struck out");
        case EntryOutcome::unchanged:
            break;
    }
    return toTranslate("record", "unchanged");
}

}  // namespace

std::size_t IntakeTally::written() const {
    std::size_t count = 0;
    for (const Line& line : lines)
        count += line.recorded + line.updated + line.corrected + line.struck;
    return count;
}

std::size_t IntakeTally::unchanged() const {
    std::size_t count = 0;
    for (const Line& line : lines)
        count += line.unchanged;
    return count;
}

IntakeTally takeIncoming(BookFile& book, RecordFileReader& reader, const IntakeTerms& terms,
                         const std::optional<std::string>& changedOn) {
    return takeIncoming(book, reader, terms,
                        ChangedOnOf([&](const IncomingRecord&) { return changedOn; }));
}

IntakeTally takeIncoming(BookFile& book, RecordFileReader& reader, const IntakeTerms& terms,
                         const ChangedOnOf& changedOn) {
    keepWithheldContacts(book, reader.records());
    return takeIncoming(
        book, reader, terms, EntryOfIncoming([&](const IncomingRecord& incoming) {
            return Entry{incoming.record, incoming.payload, changedOn(incoming), false};
        }));
}

IntakeTally takeIncoming(BookFile& book, RecordFileReader& reader, const IntakeTerms& terms,
                         const EntryOfIncoming& entryOf) {
    const std::vector<IncomingRecord>& records = reader.records();
    std::vector<Entry> entries;
    entries.reserve(records.size());
    for (const IncomingRecord& incoming : records)
        entries.push_back(entryOf(incoming));
    return tallyOf(records, takeEntries(book, reader, std::move(entries), terms));
}

IntakeTerms termsOf(const CommandContext& context) {
    IntakeTerms terms;
    terms.recordedBy = recorderOf(context);
    terms.recordedAt = utcText(nowEpoch_s());
    terms.dryRun = context.arguments.has("dry-run");
    return terms;
}

ExitCode recordMade(CommandContext& context, BookFile& book, const std::vector<MadeRecord>& made,
                    const std::optional<std::string>& reason) {
    try {
        return recordMadeFrom("the command line", context, book, made, reason);
    } catch (const RefusedInput& refused) {
        throw RefusedInput(
            namedByOptions(refused.findings(), context.arguments, kindOf(made.front().record)));
    }
}

ExitCode recordMadeFrom(const std::string& source, CommandContext& context, BookFile& book,
                        const std::vector<MadeRecord>& made,
                        const std::optional<std::string>& reason) {
    RecordFileReader reader(context.folders.schema);
    for (const MadeRecord& one : made)
        reader.add(one.record, source);
    if (!reader.findings().empty())
        throw RefusedInput(reader.findings());
    std::vector<Entry> entries;
    for (std::size_t i = 0; i < made.size(); ++i)
        entries.push_back({reader.records()[i].record, reader.records()[i].payload,
                           made[i].changedOn, made[i].strikes});
    IntakeTerms terms = termsOf(context);
    terms.reason = reason;
    terms.bytesOf = [&](const std::string& hash) { return bytesAmong(made, hash); };
    const std::vector<EntryOutcome> outcomes = takeEntries(book, reader, std::move(entries), terms);
    Table table({{"", Align::left},
                 {translated("record", "record")},
                 {translated("record", "what it says")}});
    for (std::size_t i = 0; i < made.size(); ++i) {
        Record record = reader.records()[i].record;
        withholdContact(record);
        table.addRow({translated("record", outcomeWord(outcomes[i])),
                      nameOf(kindOf(record), idOf(record)), fieldsInOneLine(record)});
    }
    context.console.out() << table.text(context.console.width(), "Nothing to record.");
    warnOfDatesAhead(context, book, made);
    const bool allStand = std::all_of(outcomes.begin(), outcomes.end(), [](EntryOutcome outcome) {
        return outcome == EntryOutcome::unchanged;
    });
    if (allStand) {
        context.console.out() << "\n"
                              << translated("record",
                                            "The book says this already; nothing was changed.")
                              << "\n";
        return ExitCode::success;
    }
    if (context.jointBook)
        return ExitCode::success;
    context.console.out() << "\n"
                          << (terms.dryRun
                                  ? translated("record", "Tried only: nothing was recorded.")
                                  : filledIn(translated("record", "Recorded in %1."),
                                             {book.path()}))
                          << "\n";
    return ExitCode::success;
}

std::string freshId(RecordKind kind, const EdtfDate& at) {
    // An open beginning is no day to name a record by.
    const CivilMinute day = at.earliest() == beginningOfTime ? at.latest() : at.earliest();
    static constexpr char letters[] = "abcdefghjkmnpqrstuvwxyz23456789";
    std::string id = std::string(textOf(kind)) + "-" + formatDay(day) + "-";
    for (const char byte : randomBytes(6))
        id += letters[static_cast<unsigned char>(byte) % (sizeof letters - 1)];
    return id;
}

}  // namespace rackbook
