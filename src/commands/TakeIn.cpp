#include "commands/TakeIn.h"

#include "base/Files.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
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

void print(Console& console, const IntakeTally& tally, bool dryRun, const std::string& book) {
    Table table({{"record"},
                 {"new", Align::right},
                 {"changed", Align::right},
                 {"corrected", Align::right},
                 {"unchanged", Align::right}});
    for (const IntakeTally::Line& line : tally.lines)
        table.addRow({textOf(line.kind), std::to_string(line.recorded),
                      std::to_string(line.updated), std::to_string(line.corrected),
                      std::to_string(line.unchanged)});
    console.out() << table.text(console.width(), "No records were given.") << "\n";
    if (tally.lines.empty())
        return;
    if (tally.written() == 0)
        console.out() << "The book says all of this already; nothing was changed.\n";
    else if (dryRun)
        console.out() << "Tried only: nothing was recorded.\n";
    else
        console.out() << tally.written() << (tally.written() == 1 ? " record" : " records")
                      << " taken into " << book << ".\n";
}

ExitCode run(CommandContext& context) {
    RecordFileReader reader(context.folders.schema);
    std::vector<std::string> passedOver;
    for (const std::string& path : context.arguments.values("file"))
        readInto(reader, path, passedOver);
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
    const IntakeTally tally = takeIncoming(book, reader, terms, changedOn);
    progress.finish();
    print(context.console, tally, terms.dryRun, book.path());
    for (const std::string& path : passedOver)
        context.console.out() << "Not looked into, because it is a link or hidden: " << path
                              << "\n";
    return ExitCode::success;
}

}  // namespace

Command takeInCommand() {
    CommandSpec spec;
    spec.name = "take-in";
    spec.group = "Record files";
    spec.summary = "Take record files into the book";
    spec.details =
        "Reads JSON record files, whole folders of them, or standard input (-), checks every "
        "record, and records all of them or none. Records may name each other in any order. What "
        "the book says already is left alone; a record that differs is a correction and wants "
        "--reason, or, where the thing itself has changed since, --changed-on. The form of the "
        "files is described in schema/README.md.";
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
