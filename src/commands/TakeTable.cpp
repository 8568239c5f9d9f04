#include "commands/TakeTable.h"

#include "base/Files.h"
#include "base/Ranges.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/IntakeReport.h"
#include "commands/JsonReport.h"
#include "commands/KindFields.h"
#include "commands/OptionRows.h"
#include "commands/Recording.h"
#include "commands/StandingInBook.h"
#include "commands/TableReport.h"
#include "exchange/TableFindings.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr std::size_t largestTable = std::size_t{256} << 20;
constexpr std::size_t largestMapping = std::size_t{1} << 20;

std::string bytesOf(const std::string& path) {
    return path == "-" ? readStandardInput(largestTable) : readFile(path, largestTable);
}

std::string nameOfTable(const std::string& path) {
    return path == "-" ? "standard input" : path;
}

void refuseIdleOptions(const CommandContext& context) {
    for (const char* option : {"only-rows", "reason", "changed-on"})
        if (context.arguments.has(option))
            throw UsageError(std::string("--") + option + " is given, and nothing is taken in",
                             "Name a mapping with --map.");
}

std::vector<std::string> neededFields(const CommandContext& context, RecordKind kind) {
    std::vector<std::string> needed;
    for (const FieldMeaning& field : fieldsOfKind(context.folders.schema, kind))
        if (field.needed)
            needed.push_back(field.name);
    return needed;
}

void requireNewFile(const std::string& path) {
    if (fileExists(path))
        throw UsageError(path + " is there already", "Name another file, or take it away first.");
}

ExitCode look(CommandContext& context) {
    refuseIdleOptions(context);
    const std::optional<std::string> kind = context.arguments.value("propose");
    const std::optional<std::string> to = context.arguments.value("to");
    if (to && !kind)
        throw UsageError("--to is given, and no mapping is proposed",
                         "Say with --propose which kind of record the rows are.");
    const std::string path = context.arguments.text("file");
    const TableFile table = tableFileFrom(
        bytesOf(path), {std::nullopt, std::nullopt, EncodingGuess::windows1252}, nameOfTable(path));
    if (!kind && context.arguments.has("json")) {
        Tree report = newReport("take-table");
        report.set("table", treeOf(table));
        report.set("errors", treeOf(tableFindings(table, {}, {}, {})));
        context.console.out() << jsonText(report);
        return ExitCode::success;
    }
    if (!kind) {
        printTableFile(context.console, table);
        for (const Finding& finding : tableFindings(table, {}, {}, {}))
            context.console.err() << "rackbook: " << printable(describe(finding)) << "\n";
        return ExitCode::success;
    }
    const RecordKind wanted = recordKindNamed(*kind);
    const TableProposal proposal = proposedMapping(table, wanted, neededFields(context, wanted));
    if (!to) {
        context.console.out() << jsonText(proposal.mapping);
        return ExitCode::success;
    }
    requireNewFile(*to);
    writeFileSafely(*to, jsonText(proposal.mapping));
    printProposal(context.console, proposal, *to);
    return ExitCode::success;
}

std::vector<int> rowsGiven(const CommandContext& context) {
    const std::optional<std::string> rows = context.arguments.value("only-rows");
    return rows ? parseRanges(*rows) : std::vector<int>{};
}

// Everything that is wrong, whoever found it, by rows and columns.
[[noreturn]] void refuse(const TableFile& table, const TableMapping& mapping,
                         const MadeFromTable& made, const std::vector<Finding>& others) {
    std::vector<Finding> findings = tableFindings(table, mapping, made, others);
    // What others found may follow wholly from cells that are told already.
    if (findings.empty())
        findings = others;
    throw RefusedInput(std::move(findings));
}

Tree takenTree(const MadeFromTable& made, const std::vector<IncomingRecord>& records,
               bool isTried) {
    Tree report = newReport("take-table");
    report.set("recorded", !isTried);
    report.set("taken", treeOf(made, records));
    report.set("errors", Tree::array());
    return report;
}

ExitCode take(CommandContext& context) {
    const Arguments& arguments = context.arguments;
    if (arguments.has("propose") || arguments.has("to"))
        throw UsageError("--map takes a table in, --propose only looks at it",
                         "Give one of the two.");
    const std::optional<std::string> changedOn = arguments.value("changed-on");
    if (changedOn && arguments.has("reason"))
        throw UsageError("--reason and --changed-on exclude each other",
                         "Give --reason where the book was wrong, --changed-on where the thing "
                         "itself has changed.");
    if (changedOn)
        dateFrom(*changedOn, "changed-on");
    const std::string mapFile = arguments.text("map");
    const TableMapping mapping =
        mappingFrom(readFile(mapFile, largestMapping), mapFile, context.folders.schema);
    const std::string path = arguments.text("file");
    const TableFile table = tableFileFrom(bytesOf(path), mapping.form, nameOfTable(path));
    const std::vector<int> onlyRows = rowsGiven(context);
    BookFile book = bookToWrite(context);
    const MadeFromTable made = recordsFrom(table, mapping, standingIn(book), onlyRows);
    RecordFileReader reader(context.folders.schema);
    if (!made.records.empty())
        reader.read(table.name, recordsText(made));
    IntakeTerms terms = termsOf(context);
    const bool isSound = made.findings.empty() && table.faults.empty();
    terms.dryRun = terms.dryRun || !isSound;
    terms.reason = arguments.value("reason");
    Progress progress(context.console, "Taking in records", reader.records().size());
    std::size_t shown = 0;
    terms.onProgress = [&](std::size_t done) {
        progress.advance(done - shown);
        shown = done;
    };
    IntakeTally tally;
    try {
        tally = takeIncoming(book, reader, terms, [&](const IncomingRecord& incoming) {
            const std::optional<std::string>& own = made.records[incoming.position].changedOn;
            return own ? own : changedOn;
        });
    } catch (const RefusedInput& refused) {
        refuse(table, mapping, made, refused.findings());
    }
    progress.finish();
    if (!isSound)
        refuse(table, mapping, made, {});
    if (arguments.has("json")) {
        context.console.out() << jsonText(takenTree(made, reader.records(), terms.dryRun));
        return ExitCode::success;
    }
    if (terms.dryRun)
        printPreview(context.console, made, reader.records());
    printRowTally(context.console, made);
    printTally(context.console, tally, terms.dryRun, book.path());
    return ExitCode::success;
}

// With --json everything that is wrong is part of the report.
ExitCode run(CommandContext& context) {
    try {
        return context.arguments.has("map") ? take(context) : look(context);
    } catch (const RefusedInput& refused) {
        if (!context.arguments.has("json"))
            throw;
        Tree report = newReport("take-table");
        report.set("errors", treeOf(refused.findings()));
        context.console.out() << jsonText(report);
        return refused.exitCode();
    }
}

std::vector<OptionSpec> takeTableOptions() {
    return {valueOption("map", "FILE", "The mapping: what each row becomes."),
            valueOption("propose", "KIND",
                        "Write a mapping to begin from, for rows that are records of this kind."),
            valueOption("to", "FILE", "A new file for that mapping.", "standard output"),
            valueOption("only-rows", "RANGE",
                        "Only these rows, numbered as a spreadsheet does, such as 2-40."),
            valueOption("reason", "TEXT", "Why the book was wrong, for records that differ."),
            valueOption("changed-on", "DATE",
                        "When the things themselves changed, for records that differ.")};
}

}  // namespace

Command takeTableCommand() {
    CommandSpec spec;
    spec.name = "take-table";
    spec.group = toTranslate("group", "Record files");
    spec.summary =
        toTranslate("summary", "Look at a table in CSV, and take its rows into the book");
    spec.details =
        "Reads CSV as spreadsheets write it (RFC 4180, also with semicolons or tabs; UTF-8, "
        "UTF-16, Windows-1252 and others). Without --map it shows what was found and the first "
        "rows. --propose writes a mapping to begin from: a small JSON file that says which column "
        "is which field, how numbers and dates are written, and what else a row makes. Look it "
        "over, fill in what it leaves open as \"?\", and keep it; schema/README.md describes "
        "it.\n\n"
        "With --map every row is checked and all of them are recorded or none; everything that is "
        "wrong is told with its row and column. --dry-run shows what the first rows become. The "
        "same table taken again changes nothing; a row that says otherwise than the book wants "
        "--reason or --changed-on. A file of a light logger is for take-light-log, one of colour "
        "measurements for take-readings.\n\n"
        "A list of tins that says what is left in each makes stock-takes too: --propose lot where "
        "the tins are new to the book, --propose stockTake where it has them. --json reports how "
        "the table was read, what its rows become, and everything that is wrong, with exit code 3 "
        "where nothing was recorded for that.";
    spec.positionals = {{"file", "The table, or - for standard input."}};
    spec.options = takeTableOptions();
    spec.writesBook = true;
    spec.reportsJson = true;
    spec.examples = {
        {"rackbook take-table demo-edition/old-lists/editions.csv", "See what is in an old list."},
        {"rackbook take-table demo-edition/old-lists/tins.csv --propose lot --to tins-map.json",
         "A mapping to begin from."},
        {"rackbook take-table demo-edition/old-lists/editions.csv --map "
         "demo-edition/old-lists/editions-map.json --dry-run",
         "Try what would be recorded."}};
    return {spec, run};
}

}  // namespace rackbook
