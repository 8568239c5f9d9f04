#include "commands/WriteOut.h"

#include <algorithm>

#include "base/Files.h"
#include "cli/Table.h"
#include "commands/AttachmentFiles.h"
#include "commands/BookAccess.h"
#include "commands/Contacts.h"
#include "commands/PeopleLeftOut.h"
#include "commands/RecordFolder.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "exchange/Selection.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::vector<Record> chosenRecords(const CommandContext& context, const BookFile& book,
                                  const RecordSet& records) {
    std::vector<Record> chosen;
    if (const std::optional<std::string> edition = context.arguments.value("edition"))
        chosen = editionWithAll(records, editionNamed(book, *edition).id);
    else
        chosen = allRecords(records);
    const std::vector<std::string> kinds = context.arguments.values("kind");
    if (kinds.empty())
        return chosen;
    chosen.erase(std::remove_if(chosen.begin(), chosen.end(),
                                [&](const Record& record) {
                                    return std::find(kinds.begin(), kinds.end(),
                                                     textOf(kindOf(record))) == kinds.end();
                                }),
                 chosen.end());
    return chosen;
}

void tellMissingBytes(Console& console, std::size_t count) {
    if (count > 0)
        console.err() << "rackbook: the book knows " << count
                      << (count == 1 ? " attachment" : " attachments")
                      << " by the hash alone, so no file of " << (count == 1 ? "it" : "them")
                      << " was written.\n";
}

void writeFiles(CommandContext& context, const BookFile& book, const std::vector<Record>& records,
                const std::string& folder, bool withFiles) {
    requireNewFolder(folder);
    Table table({{"file"}, {"records", Align::right}});
    NewFolder made(folder);
    for (const auto& [file, count] : writeRecordFiles(records, made.path()))
        table.addRow({pathOf(folder, file), std::to_string(count)});
    // Nobody can judge what a picture shows.
    const WrittenFiles attached =
        withFiles ? writeAttachmentFiles(book, records, made.path()) : WrittenFiles{};
    made.finish();
    context.console.out() << table.text(context.console.width(), "There is nothing to write.");
    if (attached.files > 0)
        context.console.out() << "\n"
                              << attached.files
                              << (attached.files == 1 ? " file of an attachment lies"
                                                      : " files of attachments lie")
                              << " in " << pathOf(folder, "attachments") << ".\n";
    tellMissingBytes(context.console, attached.withoutBytes);
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const RecordSet all = everythingIn(book);
    std::optional<WithoutPeople> people = withoutPeopleGiven(context, all);
    std::vector<Record> records = chosenRecords(context, book, all);
    if (people)
        records = people->of(records);
    const std::size_t withheld =
        people || context.arguments.has("with-contacts") ? 0 : withholdContacts(records);
    const std::string folder = context.arguments.text("folder");
    if (folder == "-") {
        std::vector<std::string> payloads;
        for (const Record& record : records)
            payloads.push_back(encodeRecord(record));
        context.console.out() << recordFileText(payloads);
    } else {
        writeFiles(context, book, records, folder, !people);
    }
    if (withheld > 0)
        context.console.err() << "rackbook: " << withheld
                              << (withheld == 1 ? " contact was" : " contacts were")
                              << " left out; --with-contacts writes them.\n";
    if (people)
        tellLeftOut(context.console, *people);
    return ExitCode::success;
}

}  // namespace

Command writeOutCommand() {
    CommandSpec spec;
    spec.name = "write-out";
    spec.group = toTranslate("group", "Record files");
    spec.summary = toTranslate("summary", "Write the book, or a part of it, as record files");
    spec.details =
        "Writes one JSON record file for each kind of record. An edition is written with "
        "everything that belongs to it and everything those records name, so that it can be taken "
        "into an empty book. A whole book written out with its contacts and taken in again is "
        "equal record by record. Contacts of people are left out unless asked for. The files of "
        "attachments are written into a folder attachments; standard output holds none.\n\n"
        "With --without-people the records stay valid and say nothing about people: parties, "
        "places of theirs, transfers and the like go by their kind and number, and contacts, "
        "prices, free texts and the files of attachments are left out. What that was is told.";
    spec.positionals = {{"folder", "A new or empty folder, or - for one file on standard output."}};
    spec.options = {
        {"edition", "CODE", "Only this edition and what it needs.", false, false, {}, {}},
        {"kind", "KIND", "Only records of this kind.", false, true, {}, enumNames<RecordKind>()},
        {"with-contacts", "", "Write the private contacts of people too.", false, false, {}, {}},
        withoutPeopleOption()};
    spec.examples = {{"rackbook write-out --with-contacts copy", "The whole book."},
                     {"rackbook write-out --kind lot -", "All lots, on standard output."}};
    return {spec, run};
}

}  // namespace rackbook
