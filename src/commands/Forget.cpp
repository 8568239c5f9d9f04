#include "commands/Forget.h"

#include "base/Files.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/DayDraft.h"
#include "commands/ForgetPlan.h"
#include "commands/NamesLeft.h"
#include "commands/OptionRows.h"
#include "commands/Paragraph.h"
#include "records/Forgetting.h"
#include "store/JointIntake.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

constexpr const char* usualReason = "had to be forgotten";

void requireNoDraft(const BookFile& book) {
    const std::string draft = DayDraft::pathFor(book.path());
    if (fileExists(draft))
        throw UsageError(
            "entries that are not recorded yet lie in " + draft + ", and may say the name",
            "Record them or throw them away with rackbook day, then forget.");
}

ForgetPlan planGiven(const CommandContext& context, const BookFile& book,
                     const RecordSet& records) {
    ForgetPlan plan = planToForget(book, records, context.arguments.text("party"),
                                   context.arguments.values("also"));
    for (const std::string& other : context.arguments.values("look-for"))
        plan.names.addName(other);
    const std::string reason = context.arguments.value("reason").value_or(usualReason);
    if (plan.names.foundIn(reason))
        throw UsageError("the reason says the name, and the journal would keep it",
                         "Give --reason in other words, or leave it out.");
    return plan;
}

bool isForgotten(const ForgetPlan& plan) {
    return !plan.hasSaid && plan.left.empty();
}

void printPlan(Console& console, const RecordSet& records, const ForgetPlan& plan) {
    std::vector<std::string> places;
    std::vector<std::string> others;
    for (const RecordName& record : plan.records)
        if (record.kind == RecordKind::place)
            places.push_back(record.id);
        else if (record.kind != RecordKind::party)
            others.push_back(nameOf(record.kind, record.id));
    printWrapped(console, "What the book says of party " + printable(plan.party) +
                              (places.empty() ? std::string()
                                              : " and of the places that are theirs (" +
                                                    printable(joined(places)) + ")") +
                              " goes for good: names, contacts and notes, out of the records and "
                              "out of every earlier state in the journal. The ids stay.");
    if (!others.empty())
        printWrapped(console, "So does what the journal said before of " +
                                  printable(joined(others)) + "; what they say now stays.");
    for (const std::string& sentence : whatNames(records, plan.party))
        printWrapped(console, printable(sentence));
}

bool mayForget(CommandContext& context, const ForgetPlan& plan) {
    if (context.arguments.has("for-good") || isForgotten(plan))
        return true;
    if (!context.conversation.mayTalk())
        throw UsageError("nothing was forgotten yet, and it cannot be undone",
                         "Give --for-good to do it, or --dry-run to see more.");
    return context.conversation.confirm("Forget it for good", false);
}

// Either all of it is forgotten or nothing is.
std::size_t forgetAll(CommandContext& context, BookFile& book, const ForgetPlan& plan) {
    overwriteWhatGoes(book);
    JointIntake together(book);
    if (!plan.left.empty()) {
        CommandContext part = context;
        part.jointBook = &book;
        recordMade(part, book, plan.left, context.arguments.value("reason").value_or(usualReason));
    }
    const std::size_t entries = forgetSaid(book, plan.records);
    together.keep();
    return entries;
}

// What was forgotten stays so where this fails; only its bytes may still lie in the file.
ExitCode dropBytes(Console& console, BookFile& book) {
    const std::string again =
        " Its bytes may still lie in the file or in the log beside it. Give the same command "
        "again.";
    try {
        if (dropOldBytes(book))
            return ExitCode::success;
        console.err() << "rackbook: " << printable(book.path())
                      << ": it is forgotten, but another program has the book open." << again
                      << "\n";
    } catch (const StoreError& error) {
        // What its remedy says is of the file, not of what was recorded.
        const std::string whole = error.what();
        console.err() << "rackbook: " << printable(whole.substr(0, whole.find(". ")))
                      << "\nrackbook: it is forgotten." << again << "\n";
    }
    return ExitCode::findings;
}

void printLeft(Console& console, const BookFile& book, const ForgetPlan& plan,
               const RecordSet& records) {
    Table table({{"where"}, {"says"}});
    const std::vector<NameLeft> left = namesLeft(book, plan);
    for (const NameLeft& one : left)
        table.addRow({printable(one.where), printable(one.found)});
    console.out() << "\n";
    printHeading(console, "What this cannot forget");
    if (!left.empty()) {
        printWrapped(console,
                     "The book still says the name, or a word of it, here. Correct such records "
                     "with rackbook enter, and then give this again with --also \"KIND ID\" for "
                     "what the journal said of them before. Ids, reasons and who recorded stay. "
                     "Words that are part of other names stand here too.");
        console.out() << "\n" << table.text(console.width(), {}) << "\n";
    } else if (plan.names.isEmpty()) {
        printWrapped(console,
                     "The name is not known any more, so it was looked for nowhere else; "
                     "--look-for NAME does.");
    } else {
        printWrapped(console, "The name stands nowhere else in the book.");
    }
    if (const std::size_t files = records.of<Attachment>().size(); files > 0)
        printWrapped(console, std::to_string(files) +
                                  (files == 1 ? " attachment is" : " attachments are") +
                                  " in the book, and no program sees who is in a picture: rackbook "
                                  "list attachment.");
    for (const std::string& path : copiesBeside(book.path(), plan.names))
        printWrapped(console, "Beside the book lies " + printable(path) + ": remove it.");
    printWrapped(
        console,
        "Outside the book: backups, books on other machines, bags, tables, record files "
        "and sheets that were made before still say it, and so may the free space of the "
        "disk. Make a new backup and remove those of before; run this on the other books.");
    printParagraph(console,
                   "People may have rights to what is kept about them, and you may have to keep "
                   "some of it, for accounts for instance: local law decides. This is no legal "
                   "advice.");
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    requireNoDraft(book);
    const RecordSet records = everythingIn(book);
    const ForgetPlan plan = planGiven(context, book, records);
    Console& console = context.console;
    if (isForgotten(plan))
        printWrapped(console, "Party " + printable(plan.party) +
                                  " was forgotten before; its bytes are looked after once more.");
    else
        printPlan(console, records, plan);
    if (context.arguments.has("dry-run")) {
        printLeft(console, book, plan, records);
        console.out() << "\nTried only: nothing was forgotten.\n";
        return ExitCode::success;
    }
    if (!mayForget(context, plan)) {
        console.out() << "Left as it was.\n";
        return ExitCode::success;
    }
    if (!plan.left.empty())
        console.out() << "\n";
    const std::size_t entries = forgetAll(context, book, plan);
    const ExitCode code = dropBytes(console, book);
    printParagraph(console, "Forgotten in " + printable(book.path()) + ": " +
                                (entries == 1 ? std::string("1 journal entry")
                                              : std::to_string(entries) + " journal entries") +
                                (entries == 1 ? " lost what it said" : " lost what they said") +
                                ", and the chain of the journal stands.");
    printLeft(console, book, plan, records);
    return code;
}

}  // namespace

Command forgetCommand() {
    CommandSpec spec;
    spec.name = "forget";
    spec.group = toTranslate("group", "The book");
    spec.summary = toTranslate("summary", "Forget who a party is, for good");
    spec.details =
        "For a holder or a buyer who wants to be forgotten. The name, the contact and the notes of "
        "a party, and the names and notes of the places that are theirs, are taken out of the "
        "records and out of every earlier state in the journal, and the file is written anew so "
        "that their bytes are gone from it. The record stays under its id, called \"" +
        std::string(forgottenName) +
        "\", so that transfers, moves and prints still name it; entries of the journal keep their "
        "hashes, and rackbook verify proves the chain as before. It cannot be undone, and what was "
        "forgotten does not come back by rackbook take-in or take-book.\n\n"
        "Free texts of other records may say the name too; they are listed. Correct them with "
        "rackbook enter, then --also takes what they said before out of the journal. What it "
        "cannot "
        "reach is told afterwards: the name in reasons, pictures and ids, in backups, and in "
        "sheets and bags outside the book. --dry-run tells it "
        "before. On a terminal it asks first. It is no legal advice.";
    spec.positionals = {{"party", "Id of the party."}};
    spec.options = {
        flagOption("for-good", "Do it without asking; it cannot be undone."),
        repeatable(valueOption("look-for", "NAME",
                               "Another way the name is written, to be looked for in the rest.")),
        repeatable(valueOption("also", "RECORD",
                               "Another record, such as \"transfer sold-1\": what the journal said "
                               "of it before it was corrected or struck out goes too.")),
        valueOption("reason", "TEXT", "Why, without the name: the journal keeps it.", usualReason)};
    spec.caution =
        "What is forgotten is gone from the book; only a backup made before still has it, and that "
        "should go too.";
    spec.writesBook = true;
    spec.examples = {{"rackbook forget saltmill --dry-run",
                      "What would go, and where the name would still stand."}};
    return {spec, run};
}

}  // namespace rackbook
