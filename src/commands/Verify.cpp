#include "commands/Verify.h"

#include "base/Files.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/GivenOutFiles.h"
#include "commands/JsonReport.h"
#include "commands/OptionRows.h"
#include "exchange/RecordCodec.h"
#include "exchange/TreeJson.h"
#include "store/NewBook.h"
#include "store/RecordReader.h"
#include "store/Verification.h"

namespace rackbook {

namespace {

Tree reportOf(const Verification& verification) {
    Tree report = newReport("verify");
    report.set("entries", verification.entries);
    report.set("forgotten", verification.forgotten);
    report.set("lastHash", verification.lastHash);
    report.set("filesOfAttachments", verification.bytesKept);
    Tree without = Tree::array();
    for (const std::string& id : verification.withoutBytes)
        without.add(id);
    report.set("attachmentsWithoutFile", std::move(without));
    report.set("findings", treeOf(verification.findings));
    return report;
}

// Whose bytes the book never got is nothing wrong, and should be known.
void printAttachments(Console& console, const Verification& verification) {
    if (verification.bytesKept > 0)
        console.out() << verification.bytesKept
                      << (verification.bytesKept == 1 ? " file of an attachment is"
                                                      : " files of attachments are")
                      << " in it, with the bytes that were recorded.\n";
    if (!verification.withoutBytes.empty())
        console.out() << "Known by the hash alone, without a file: "
                      << joined(verification.withoutBytes, " and ") << ".\n";
}

void print(Console& console, const std::string& path, const Verification& verification) {
    for (const Finding& finding : verification.findings)
        console.out() << printable(describe(finding)) << "\n";
    if (!verification.findings.empty()) {
        console.out() << "\n" << verification.findings.size() << " findings in " << path << ".\n";
        return;
    }
    console.out() << path << " is what was recorded: " << verification.entries
                  << " journal entries, every hash right, every table equal to the journal.\n"
                  << (verification.forgotten > 0
                          ? std::to_string(verification.forgotten) + " of them were forgotten.\n"
                          : "");
    printAttachments(console, verification);
    console.out() << "Hash of the last entry: " << verification.lastHash << "\n"
                  << "Whoever notes that hash elsewhere can prove later that nothing before it "
                     "was changed.\n";
}

// Files that have the name or the bytes of a sheet that was given out.
void checkSheets(const CommandContext& context, const BookFile& book, Verification& verification) {
    if (const std::optional<std::string> folder = context.arguments.value("sheets"))
        for (Finding& finding :
             givenOutFileFindings(allOf<Issue>(book), filesBelow(*folder, ".pdf").paths))
            verification.findings.push_back(std::move(finding));
}

// The tables made again in a file of its own; the book is only read.
void rebuildInto(CommandContext& context, const std::string& path) {
    const BookFile book = bookToRead(context);
    BookOptions options = bookOptionsOf(context);
    options.path = path;
    if (fileExists(path))
        throw UsageError(path + " is there already", "Name a new file.");
    NewBook made(options, book);
    rebuild(made.book(), decodeRecord);
    made.settle();
    if (!verify(made.book(), decodeRecord).findings.empty())
        throw StoreError(book.path(), "its tables alone are not what is wrong",
                         "rackbook verify tells what is; rackbook salvage reads what it can.");
    made.finish();
    context.console.out() << "Every table was made again from the journal of " << book.path()
                          << ", in " << path << ".\n";
}

ExitCode run(CommandContext& context) {
    const bool rebuilds = context.arguments.has("rebuild");
    const std::optional<std::string> into = context.arguments.value("into");
    if (into && !rebuilds)
        throw UsageError("--into says where --rebuild writes to", "Give both.");
    if (into && !context.arguments.has("dry-run")) {
        rebuildInto(context, *into);
        return ExitCode::success;
    }
    BookFile book = rebuilds && !into ? bookToWrite(context) : bookToRead(context);
    if (rebuilds && !context.arguments.has("dry-run"))
        rebuild(book, decodeRecord);
    Progress progress(context.console, "Looking at journal entries",
                      2 * static_cast<std::size_t>(journalLength(book)));
    Verification verification =
        verify(book, decodeRecord, [&](std::size_t entries) { progress.advance(entries); });
    progress.finish();
    checkSheets(context, book, verification);
    if (context.arguments.has("json"))
        context.console.out() << jsonText(reportOf(verification));
    else
        print(context.console, book.path(), verification);
    return verification.findings.empty() ? ExitCode::success : ExitCode::findings;
}

}  // namespace

Command verifyCommand() {
    CommandSpec spec;
    spec.name = "verify";
    spec.group = toTranslate("group", "The book");
    spec.summary = toTranslate("summary", "Prove that the book is what was recorded");
    spec.details =
        "Checks the file itself, the chain of hashes over the journal, every table against the "
        "journal, and the bytes of every attachment against its hash; says which entry, record, "
        "table and column is wrong, and whether it can be made again. --sheets also holds PDF "
        "files against the register of what was given out. --rebuild first makes the tables again "
        "from the journal, in the book or in a new file; the bytes of attachments stay. Exit code "
        "1 where something is found.";
    spec.options = {
        flagOption("rebuild", "Make every table again from the journal."),
        valueOption("into", "FILE", "With --rebuild: into this new file; the book stays as it is."),
        valueOption(
            "sheets", "FOLDER",
            "PDF files below it must have the bytes that were given out under their name.")};
    spec.reportsJson = true;
    spec.writesBook = true;
    spec.examples = {{"rackbook verify", "Look, and change nothing."},
                     {"rackbook verify --sheets .", "The PDF files here too."},
                     {"rackbook verify --rebuild --into again.rackbook",
                      "The tables made again, in a new file."}};
    return {spec, run};
}

}  // namespace rackbook
