#include "commands/Verify.h"

#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/JsonReport.h"
#include "exchange/RecordCodec.h"
#include "exchange/TreeJson.h"
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

ExitCode run(CommandContext& context) {
    const bool rebuilds = context.arguments.has("rebuild");
    BookFile book = rebuilds ? bookToWrite(context) : bookToRead(context);
    if (rebuilds && !context.arguments.has("dry-run"))
        rebuild(book, decodeRecord);
    Progress progress(context.console, "Looking at journal entries",
                      2 * static_cast<std::size_t>(journalLength(book)));
    const Verification verification =
        verify(book, decodeRecord, [&](std::size_t entries) { progress.advance(entries); });
    progress.finish();
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
        "Checks the file itself, the chain of hashes over the journal, and every table against "
        "the journal, and the bytes of every attachment against its hash. --rebuild first makes "
        "the "
        "tables again from the journal; the bytes of attachments stay. Exit code 1 where something "
        "is found.";
    spec.options = {
        {"rebuild", "", "Make every table again from the journal.", false, false, {}, {}}};
    spec.reportsJson = true;
    spec.writesBook = true;
    spec.examples = {{"rackbook verify", "Look, and change nothing."}};
    return {spec, run};
}

}  // namespace rackbook
