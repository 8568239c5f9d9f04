#include "commands/WriteLinkedArt.h"

#include <algorithm>

#include "base/Clock.h"
#include "base/Files.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/CommandTable.h"
#include "commands/OptionRows.h"
#include "commands/RecordFolder.h"
#include "commands/RecordNamed.h"
#include "commands/SheetSelection.h"
#include "exchange/LinkedArt.h"
#include "exchange/TreeJson.h"
#include "store/JournalQuery.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::string baseGiven(const CommandContext& context) {
    std::string base = context.arguments.value("base").value_or("");
    if (base.empty())
        return base;
    if (!isLinkedBase(base))
        throw UsageError("--base: \"" + printable(base) + "\" cannot begin the URI of a file",
                         "Write the address at which the folder will be found, such as "
                         "https://prints.example/eel/.");
    if (base.back() != '/')
        base += '/';
    return base;
}

std::set<std::string> partiesGiven(const CommandContext& context, const BookFile& book,
                                   const std::string& option) {
    std::set<std::string> ids;
    for (const std::string& id : context.arguments.values(option))
        ids.insert(recordNamed<Party>(book, id).id);
    return ids;
}

// The first entry never changes; no other book has one of that moment and id.
std::string markOf(const BookFile& book) {
    const std::optional<JournalEntry> first = journalEntry(book, 1);
    return first ? first->recordedAt + " " + first->id : std::string();
}

LinkedArtChoice choiceOf(const CommandContext& context, const BookFile& book) {
    LinkedArtChoice choice;
    choice.base = baseGiven(context);
    choice.bookMark = markOf(book);
    choice.program = std::string("rackbook ") + programVersion;
    choice.day = formatDay(nowAt(bookRecordOf(book)).earliest());
    choice.saidOn = context.arguments.value("said-on").value_or("");
    choice.persons = partiesGiven(context, book, "person");
    choice.groups = partiesGiven(context, book, "group");
    choice.namesHolders = context.arguments.has("with-holders");
    for (const std::string& id : choice.persons)
        if (choice.groups.count(id) != 0)
            throw UsageError(nameOf(RecordKind::party, id) + " cannot be a person and a group",
                             "Name it with one of --person and --group.");
    return choice;
}

// Files by folder, in the order of writing.
std::vector<std::pair<std::string, std::size_t>> counted(const std::vector<LinkedArtFile>& files) {
    std::vector<std::pair<std::string, std::size_t>> counts;
    for (const LinkedArtFile& file : files) {
        const std::string folder = folderOf(file.path);
        if (counts.empty() || counts.back().first != folder)
            counts.emplace_back(folder, 0);
        ++counts.back().second;
    }
    return counts;
}

void writeFiles(const std::vector<LinkedArtFile>& files, const std::string& folder) {
    NewFolder made(folder);
    for (const auto& [name, count] : counted(files))
        makeFolder(pathOf(made.path(), name));
    for (const LinkedArtFile& file : files)
        writeFileSafely(pathOf(made.path(), file.path), jsonText(file.content));
    made.finish();
}

void tell(Console& console, const LinkedArt& art, const std::string& folder,
          const LinkedArtChoice& choice) {
    Table table({{"folder"}, {"files", Align::right}});
    for (const auto& [name, count] : counted(art.files))
        table.addRow({pathOf(folder, name), std::to_string(count)});
    console.out() << table.text(console.width(), "There is nothing to write.");
    if (!art.onlyInWords.empty())
        console.err() << "rackbook: " << joined({art.onlyInWords.begin(), art.onlyInWords.end()})
                      << (art.onlyInWords.size() == 1 ? " is" : " are")
                      << " named in words alone, since the book does not say who is a person and "
                         "who a group; --person and --group do.\n";
    if (choice.base.empty())
        console.err() << "rackbook: resources are named by urn:uuid; --base gives them the "
                         "addresses at which they will be found.\n";
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const LinkedArtChoice choice = choiceOf(context, book);
    const SheetSelection selection = sheetsNamed(book, context.arguments.text("sheets"));
    const std::string folder = context.arguments.text("folder");
    requireNewFolder(folder);
    std::vector<std::string> impressions;
    for (const Impression& impression : selection.sheets)
        impressions.push_back(impression.id);
    const LinkedArt art = linkedArtOf(everythingIn(book), impressions, choice);
    writeFiles(art.files, folder);
    tell(context.console, art, folder, choice);
    return ExitCode::success;
}

}  // namespace

Command writeLinkedArtCommand() {
    CommandSpec spec;
    spec.name = "write-linked-art";
    spec.group = toTranslate("group", "For the archive");
    spec.summary =
        toTranslate("summary", "Write an edition, or some sheets, as museums describe things");
    spec.details =
        "Writes a folder of descriptions that a museum can take into its catalogue: Linked Art "
        "1.0, an open standard (JSON-LD, a profile of CIDOC CRM, ISO 21127). Each impression, "
        "block, inscription, photograph and named party has a file; the edition is the set that "
        "its impressions belong to. Layers stand with their dates, blocks, states and the Colour "
        "Index names of their pigments; which field goes where is said in schema/README.md. What "
        "the book does not say is left out.\n\n"
        "The standard wants to know of everybody whether it is a person or a group, which the "
        "book does not say: --person and --group do. Who has an impression and where it is, is "
        "left out unless asked for; contacts, notes, prices and documents are never in it. "
        "Photographs are named by their hash; write-out writes their files.";
    spec.positionals = {{"sheets", "An edition for all its kept impressions, or such as EEL:1-12."},
                        {"folder", "A new or empty folder."}};
    spec.options = {
        valueOption("base", "URI",
                    "The address at which the folder will be found; the name of each resource is "
                    "that of its file there.",
                    "names of the form urn:uuid"),
        repeatable(valueOption("person", "PARTY", "The id of a party that is a person.")),
        repeatable(valueOption("group", "PARTY",
                               "The id of a party that is a group, such as a "
                               "workshop or a firm.")),
        flagOption("with-holders", "Say who has each impression, and where it is.")};
    spec.examples = {
        {"rackbook write-linked-art EEL eel-for-the-museum --person maren --group toervelo",
         "The whole edition."},
        {"rackbook write-linked-art EEL:7 one-print --base https://prints.example/eel/",
         "One impression and what it needs, for a place on the web."}};
    return {spec, run};
}

}  // namespace rackbook
