#include "commands/TakeBag.h"

#include <algorithm>

#include "base/Files.h"
#include "base/Text.h"
#include "commands/AttachmentFiles.h"
#include "commands/BagParts.h"
#include "commands/BookAccess.h"
#include "commands/IntakeReport.h"
#include "commands/Recording.h"
#include "exchange/Bag.h"
#include "exchange/JournalLines.h"
#include "exchange/RecordCodec.h"
#include "store/JournalCopy.h"
#include "store/NewBook.h"

namespace rackbook {

namespace {

constexpr std::size_t largestFile = std::size_t{2} << 30;

BagReport soundBag(CommandContext& context, const std::string& folder) {
    Progress progress(context.console, "Looking at files", 0);
    const BagReport bag = checkBag(folder, [&] { progress.advance(); });
    progress.finish();
    if (!bag.isValid())
        throw RefusedInput(bag.findings);
    return bag;
}

bool isWithoutPeople(const BagReport& bag) {
    return std::any_of(bag.info.begin(), bag.info.end(), [](const auto& line) {
        return line.first == bagPeopleLabel && line.second == bagPeopleLeftOut;
    });
}

// The lines of a journal one after the other.
class JournalText {
public:
    explicit JournalText(const std::string& file)
        : m_file(file), m_text(readFile(file, largestFile)) {}

    bool next(JournalRow& row) {
        if (m_at >= m_text.size())
            return false;
        const std::size_t end = std::min(m_text.find('\n', m_at), m_text.size());
        row = journalRowFrom(std::string_view(m_text).substr(m_at, end - m_at), m_file, ++m_line);
        m_at = end + 1;
        return true;
    }

private:
    std::string m_file;
    std::string m_text;
    std::size_t m_at = 0;
    int m_line = 0;
};

void takeJournal(CommandContext& context, const std::string& folder) {
    JournalText journal(pathOf(folder, bagJournal));
    AttachmentFiles files;
    files.addFolder(pathOf(folder, bagRecords));
    Progress progress(context.console, "Taking in entries", 0);
    const BookOptions options = bookOptionsOf(context);
    const std::int64_t entries = bookOfJournal(
        options, [&](JournalRow& row) { return journal.next(row); },
        [&](const std::string& hash) { return files.bytesOf(hash); }, decodeRecord,
        [&](std::size_t read) { progress.advance(read); });
    progress.finish();
    context.console.out() << "A book was made of the journal: " << printable(options.path) << "\n"
                          << entries << " entries, every one with its hash as it was recorded.\n";
}

void takeRecords(CommandContext& context, const std::string& folder, bool withoutPeople) {
    RecordFileReader reader(context.folders.schema);
    const std::string records = pathOf(folder, bagRecords);
    for (const std::string& file : filesBelow(records, ".json").paths)
        reader.read(file, readFile(file, largestFile));
    AttachmentFiles files;
    files.addFolder(records);
    IntakeTerms terms = termsOf(context);
    terms.bytesOf = [&](const std::string& hash) { return files.bytesOf(hash); };
    NewBook made(bookOptionsOf(context));
    const IntakeTally tally =
        takeIncoming(made.book(), reader, terms, std::optional<std::string>());
    made.finish();
    printTally(context.console, tally, terms.dryRun, bookOptionsOf(context).path);
    context.console.out() << "The bag holds no journal: who recorded what, and when, begins "
                             "anew with this book.\n";
    if (withoutPeople)
        context.console.out() << "What is personal was left out when it was packed: people and "
                                 "their places go by number, and free texts are missing.\n";
}

ExitCode run(CommandContext& context) {
    const std::string folder = context.arguments.text("folder");
    const BagReport bag = soundBag(context, folder);
    if (!isFolder(pathOf(folder, bagRecords)))
        throw InputError(
            folder, "it is a sound bag, but none of a book: it has no " + std::string(bagRecords),
            "Name a bag that rackbook write-bag made.");
    const BookOptions options = bookOptionsOf(context);
    if (fileExists(options.path))
        throw UsageError(options.path + " is there already",
                         "Name a new book with --book; records come into an old one with rackbook "
                         "take-in " +
                             pathOf(folder, bagRecords) + ".");
    if (context.arguments.has("dry-run"))
        context.console.out() << "Tried only: the bag is sound, and " << options.path
                              << " was not made.\n";
    else if (fileExists(pathOf(folder, bagJournal)))
        takeJournal(context, folder);
    else
        takeRecords(context, folder, isWithoutPeople(bag));
    return ExitCode::success;
}

}  // namespace

Command takeBagCommand() {
    CommandSpec spec;
    spec.name = "take-bag";
    spec.group = toTranslate("group", "For the archive");
    spec.summary = toTranslate("summary", "Make a book of a bag");
    spec.details =
        "Checks a bag that write-bag made, and makes a new book of it. Where the bag holds the "
        "journal, the book is equal to the one it came from: every entry, every hash. Where it "
        "holds records alone, they are taken in as new. Nothing is made where anything in the bag "
        "is not as it was packed.";
    spec.positionals = {{"folder", "The bag."}};
    spec.writesBook = true;
    spec.examples = {
        {"rackbook take-bag whole-studio --book again.rackbook", "The same book in a new file."}};
    return {spec, run};
}

}  // namespace rackbook
