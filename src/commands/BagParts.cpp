#include "commands/BagParts.h"

#include <map>
#include <set>
#include <sstream>

#include "base/Files.h"
#include "base/Sha256.h"
#include "commands/AttachmentFiles.h"
#include "commands/RecordFolder.h"
#include "commands/Sheet.h"
#include "commands/SheetKinds.h"
#include "exchange/CsvWriter.h"
#include "exchange/DublinCore.h"
#include "exchange/JournalLines.h"
#include "exchange/RecordCells.h"
#include "store/JournalCopy.h"

namespace rackbook {

namespace {

constexpr std::size_t largestSchema = std::size_t{16} << 20;

std::string folderIn(const std::string& bag, const std::string& name) {
    const std::string folder = pathOf(bag, name);
    makeFolder(folder);
    return folder;
}

void copyFiles(const std::string& from, const std::string& ending, const std::string& to) {
    for (const std::string& path : filesBelow(from, ending).paths) {
        const std::string target = pathOf(to, path.substr(from.size() + 1));
        makeFolder(folderOf(target));
        writeFileSafely(target, readFile(path, largestSchema));
    }
}

std::string partyName(const RecordSet& all, const std::string& id) {
    const Party* party = all.find<Party>(id);
    return party ? party->name : id;
}

std::vector<std::pair<std::string, std::string>> descriptionOf(const Edition& edition,
                                                               const RecordSet& all,
                                                               const Book& studio) {
    std::vector<std::pair<std::string, std::string>> elements = {
        {"title", edition.title}, {"creator", partyName(all, edition.maker.id)}};
    if (edition.printer)
        elements.emplace_back("contributor", partyName(all, edition.printer->id));
    if (edition.publisher)
        elements.emplace_back("publisher", partyName(all, edition.publisher->id));
    if (edition.year)
        elements.emplace_back("date", edition.year->text());
    // DCMI Type Vocabulary: the prints themselves, and the records about them.
    elements.emplace_back("type", "StillImage");
    elements.emplace_back("type", "Dataset");
    if (!edition.process.empty())
        elements.emplace_back("format", edition.process);
    elements.emplace_back("identifier", edition.code);
    elements.emplace_back("source", "records of " + studio.studio);
    return elements;
}

std::string nameFor(const std::string& id, const char* ending, std::set<std::string>& taken) {
    std::string name = fitForFile(id) + ending;
    giveNameOfItsOwn(name, taken);
    return name;
}

}  // namespace

std::size_t writeBagRecords(const BookFile& book, const std::vector<Record>& records,
                            const std::string& bag, bool withFiles) {
    const std::string folder = folderIn(bag, bagRecords);
    writeRecordFiles(records, folder);
    if (!withFiles)
        return 0;
    return writeAttachmentFiles(book, records, folder).withoutBytes;
}

void writeBagJournal(const BookFile& book, const std::string& bag) {
    std::string text;
    eachJournalRow(book, [&](const JournalRow& row) { text += journalLine(row) + "\n"; });
    writeFileSafely(pathOf(bag, bagJournal), text);
}

void writeBagTables(const std::vector<Record>& records, const std::string& bag) {
    const std::string folder = folderIn(bag, "data/tables");
    for (const auto& [kind, ofKind] : recordsByKind(records))
        writeFileSafely(pathOf(folder, std::string(textOf(kind)) + ".csv"),
                        csvText(cellsOf(kind, ofKind, '.'), {}));
}

void writeBagSchemas(const DataFolders& folders, const std::string& bag) {
    const std::string folder = folderIn(bag, "data/schema");
    for (const char* ending : {".json", ".sql", ".md"})
        copyFiles(folders.schema, ending, folder);
}

void writeBagDescriptions(const RecordSet& all, const std::vector<Record>& records,
                          const Book& studio, const std::string& bag) {
    const std::string folder = folderIn(bag, "data/descriptions");
    std::set<std::string> taken;
    for (const Record& record : records)
        if (const Edition* edition = std::get_if<Edition>(&record))
            writeFileSafely(pathOf(folder, nameFor(edition->id, ".xml", taken)),
                            dublinCoreText(descriptionOf(*edition, all, studio)));
}

void writeBagSheets(CommandContext& context, const std::vector<Record>& records,
                    const std::string& bag) {
    const std::string folder = folderIn(bag, "data/sheets");
    const Command sheet = sheetCommand();
    std::set<std::string> taken;
    for (const Record& record : records) {
        const Edition* edition = std::get_if<Edition>(&record);
        if (!edition)
            continue;
        std::vector<std::string> words = {
            "edition", edition->code,
            "--book",  bookPath(context.arguments),
            "--out",   pathOf(folder, nameFor(edition->id, "-edition.pdf", taken))};
        if (const std::optional<std::string> day = context.arguments.value("said-on"))
            words.insert(words.end(), {"--said-on", *day});
        const Arguments arguments = parseArguments(sheet.spec, words);
        std::ostringstream out;
        std::ostringstream err;
        Console quiet(out, err);
        CommandContext inner = {arguments, quiet, context.folders, context.conversation};
        sheet.run(inner);
    }
}

HandedOutSheets copyHandedOut(const std::vector<Record>& records, const std::string& folder,
                              const std::string& bag) {
    HandedOutSheets found;
    std::map<std::string, std::string> paths;
    if (!folder.empty())
        for (const std::string& path : filesBelow(folder, ".pdf").paths)
            paths.emplace(sha256OfFile(path), path);
    const std::string target = pathOf(bag, "data/sheets/handed-out");
    std::set<std::string> taken;
    for (const Record& record : records) {
        const Issue* issue = std::get_if<Issue>(&record);
        if (!issue)
            continue;
        const auto at = issue->fileSha256 ? paths.find(*issue->fileSha256) : paths.end();
        if (at == paths.end()) {
            found.missing.push_back(issue->id);
            continue;
        }
        makeFolder(target);
        writeFileSafely(pathOf(target, nameFor(issue->id, ".pdf", taken)),
                        readFile(at->second, std::size_t{1} << 30));
        ++found.copied;
    }
    return found;
}

}  // namespace rackbook
