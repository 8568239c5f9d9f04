#include "commands/GiveOut.h"

#include <algorithm>

#include "base/Files.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/Recording.h"
#include "commands/SheetFile.h"

namespace rackbook {

namespace {

template <class R>
std::optional<Ref<R>> refTo(const std::optional<std::string>& id) {
    return id ? std::optional(Ref<R>{*id}) : std::nullopt;
}

Issue issueOf(const CarriedSheet& sheet, const SheetFile& file) {
    const SheetHeading& heading = sheet.facts.heading;
    Issue issue;
    issue.sheetKind = heading.sheet;
    issue.language = heading.language;
    issue.asOf = EdtfDate::parse(heading.asOf, file.path);
    issue.edition = refTo<Edition>(heading.about.edition);
    for (const std::string& id : heading.about.impressions)
        issue.impressions.push_back({id});
    issue.layer = refTo<Layer>(heading.about.layer);
    issue.mix = refTo<Mix>(heading.about.mix);
    issue.transfer = refTo<Transfer>(heading.about.transfer);
    issue.place = refTo<Place>(heading.about.place);
    issue.namesHolders = sheet.facts.namesHolders;
    issue.fileName = fileNameOf(file.path);
    issue.contentSha256 = sheet.sha256;
    issue.fileSha256 = file.sha256;
    return issue;
}

// A sheet that says what the book does not is not given out in its name.
void requireTrue(const SheetFile& file, const RecordSet& records) {
    BookSheets book(records);
    for (const CarriedSheet& sheet : file.sheets) {
        const SheetComparison comparison = book.compare(sheet);
        if (!comparison.differences.empty())
            throw InputError(file.path, "the book no longer says what this sheet says",
                             "rackbook check-sheet tells the differences. Make the sheet again, or "
                             "put the book right first.");
        if (comparison.isRewritten)
            throw InputError(file.path,
                             "the record inside it was written anew by another program: it says "
                             "what the book says, but in other bytes",
                             "Make the sheet again.");
    }
}

// Only hashes tell a file that was altered from one that was made anew, and the altered one now
// gets into the register too.
void warnOfOtherFiles(Console& console, const std::vector<Issue>& known, const SheetFile& file) {
    for (const Issue& issue : known)
        for (const CarriedSheet& sheet : file.sheets)
            if (issue.contentSha256 == sheet.sha256 && issue.fileSha256 != file.sha256)
                console.err() << "rackbook: a file of other bytes with the same records was given "
                                 "out on "
                              << issue.issuedOn.text() << " (" << issue.id
                              << "): this one was made anew, or altered. Give out the first one "
                                 "again unless it was made anew on purpose.\n";
}

bool isThere(const std::vector<Issue>& known, const Issue& issue) {
    return std::any_of(known.begin(), known.end(), [&](const Issue& other) {
        return other.fileSha256 == issue.fileSha256 && other.contentSha256 == issue.contentSha256 &&
               other.recipient == issue.recipient;
    });
}

ExitCode run(CommandContext& context) {
    const SheetFile file = readSheetFile(context.arguments.text("file"));
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const RecordSet records = everythingIn(book);
    requireTrue(file, records);
    const EdtfDate on = dateGiven(context, "on").value_or(dayIn(nowAt(studio)));
    const std::optional<Ref<Party>> recipient = refGiven<Party>(context, book, "to");
    std::vector<MadeRecord> made;
    for (const CarriedSheet& sheet : file.sheets) {
        Issue issue = issueOf(sheet, file);
        issue.id = freshId(RecordKind::issue, on);
        issue.issuedOn = on;
        issue.recipient = recipient;
        issue.note = context.arguments.value("note");
        if (isThere(records.of<Issue>(), issue))
            throw UsageError(file.path + (recipient ? " has been given out to them before"
                                                    : " has been given out before, to nobody "
                                                      "who is named"),
                             "Nothing was recorded; rackbook given-out lists what was.");
        made.push_back({issue, std::nullopt});
    }
    warnOfOtherFiles(context.console, records.of<Issue>(), file);
    return recordMade(context, book, made);
}

}  // namespace

Command giveOutCommand() {
    CommandSpec spec;
    spec.name = "give-out";
    spec.group = toTranslate("group", "Sheets");
    spec.summary = toTranslate("summary", "Record that a sheet was handed out");
    spec.details =
        "Reads the records that the PDF carries, holds them against the book, and notes in the "
        "register who has the sheet, with the SHA-256 of the file and of the records in it. A file "
        "with several certificates is noted as one for each impression.";
    spec.positionals = {{"file", "The PDF, as rackbook sheet made it."}};
    spec.options = {valueOption("to", "PARTY", "Who has it now."),
                    valueOption("on", "DATE", "When it was handed out.", "today at the studio"),
                    valueOption("note", "TEXT", "Anything else worth keeping.")};
    spec.writesBook = true;
    spec.examples = {
        {"rackbook give-out EEL-edition.pdf", "The documentation of an edition left the studio."}};
    return {spec, run};
}

}  // namespace rackbook
