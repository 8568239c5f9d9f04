#include "commands/TakeIn.h"

#include <set>

#include "base/Files.h"
#include "base/Text.h"
#include "commands/AttachmentFiles.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/IntakeReport.h"
#include "commands/Recording.h"

namespace rackbook {

namespace {

constexpr std::size_t largestRecordFile = std::size_t{1} << 30;

void readInto(RecordFileReader& reader, const std::string& path,
              std::vector<std::string>& passedOver) {
    if (path == "-") {
        reader.read("standard input", readStandardInput(largestRecordFile));
        return;
    }
    if (!isFolder(path)) {
        reader.read(path, readFile(path, largestRecordFile));
        return;
    }
    FilesBelow below = filesBelow(path, ".json");
    passedOver.insert(passedOver.end(), below.passedOver.begin(), below.passedOver.end());
    if (below.paths.empty())
        throw InputError(path, "no record file lies in this folder",
                         "Name a folder with .json files in it.");
    for (const std::string& file : below.paths)
        reader.read(file, readFile(file, largestRecordFile));
}

// What of the attachments came without its file, and which files no attachment names.
void tellAttachments(Console& console, const AttachmentFiles& files,
                     const std::vector<const Attachment*>& attachments) {
    const std::set<std::string> missing(files.missing().begin(), files.missing().end());
    std::vector<std::string> known;
    for (const Attachment* attachment : attachments)
        if (missing.count(attachment->sha256) != 0)
            known.push_back(attachment->id);
    if (!known.empty())
        console.err() << "rackbook: known by the hash alone, since no file in attachments/ has it: "
                      << joined(known) << ".\n";
    for (const std::string& path : files.namedByNone(attachments))
        console.err() << "rackbook: " << printable(path)
                      << ": no attachment that was taken in names this file.\n";
}

std::vector<const Attachment*> attachmentsIn(RecordFileReader& reader) {
    std::vector<const Attachment*> attachments;
    for (const IncomingRecord& incoming : reader.records())
        if (const Attachment* attachment = std::get_if<Attachment>(&incoming.record))
            attachments.push_back(attachment);
    return attachments;
}

ExitCode run(CommandContext& context) {
    RecordFileReader reader(context.folders.schema);
    std::vector<std::string> passedOver;
    AttachmentFiles attachments;
    for (const std::string& path : context.arguments.values("file")) {
        readInto(reader, path, passedOver);
        attachments.addFolder(path);
    }
    const std::optional<std::string> changedOn = context.arguments.value("changed-on");
    if (changedOn && context.arguments.has("reason"))
        throw UsageError("--reason and --changed-on exclude each other",
                         "Give --reason where the book was wrong, --changed-on where the thing "
                         "itself has changed.");
    if (changedOn)
        dateFrom(*changedOn, "changed-on");
    BookFile book = bookToWrite(context);
    IntakeTerms terms = termsOf(context);
    terms.reason = context.arguments.value("reason");
    Progress progress(context.console, "Taking in records", reader.records().size());
    std::size_t shown = 0;
    terms.onProgress = [&](std::size_t done) {
        progress.advance(done - shown);
        shown = done;
    };
    terms.bytesOf = [&](const std::string& hash) { return attachments.bytesOf(hash); };
    const IntakeTally tally = takeIncoming(book, reader, terms, changedOn);
    progress.finish();
    printTally(context.console, tally, terms.dryRun, book.path());
    for (const std::string& path : passedOver)
        context.console.out()
            << "Not looked into, because it is a link, hidden or no file that can "
               "be read: "
            << printable(path) << "\n";
    tellAttachments(context.console, attachments, attachmentsIn(reader));
    return ExitCode::success;
}

}  // namespace

Command takeInCommand() {
    CommandSpec spec;
    spec.name = "take-in";
    spec.group = toTranslate("group", "Record files");
    spec.summary = toTranslate("summary", "Take record files into the book");
    spec.details =
        "Reads JSON record files, whole folders of them, or standard input (-), checks every "
        "record, and records all of them or none. Records may name each other in any order. What "
        "the book says already is left alone; a record that differs is a correction and wants "
        "--reason, or, where the thing itself has changed since, --changed-on. The form of the "
        "files is described in schema/README.md.\n\n"
        "The files of attachments come in from a folder attachments in the folder that is named, "
        "each called by its hash; a record without its file comes in too.";
    spec.positionals = {
        {"file", "Record file, folder of record files, or - for standard input.", true, true}};
    spec.options = {{"reason",
                     "TEXT",
                     "Why the book was wrong, for records that differ.",
                     false,
                     false,
                     {},
                     {}},
                    {"changed-on",
                     "DATE",
                     "When the things themselves changed, for records that differ.",
                     false,
                     false,
                     {},
                     {}}};
    spec.writesBook = true;
    spec.examples = {
        {"rackbook take-in demo-edition", "Take in every record file of a folder."},
        {"rackbook take-in --reason \"weighed again\" mix.json", "Correct what the book says."}};
    return {spec, run};
}

}  // namespace rackbook
