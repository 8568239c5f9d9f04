#include "commands/WriteBag.h"

#include <algorithm>

#include "base/Clock.h"
#include "base/Files.h"
#include "base/Text.h"
#include "commands/BagParts.h"
#include "commands/BookAccess.h"
#include "commands/CommandTable.h"
#include "commands/Contacts.h"
#include "commands/OptionRows.h"
#include "commands/PeopleLeftOut.h"
#include "commands/RecordFolder.h"
#include "exchange/Bag.h"
#include "exchange/Selection.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::string guideText(const Book& studio, const std::string& what, bool hasJournal,
                      bool hasPeople) {
    return "Records of " + studio.studio + ": " + what +
           ".\n\n"
           "This folder is a bag (BagIt 1.0, RFC 8493): manifest-sha256.txt and\n"
           "manifest-sha512.txt name every file below data/ with its checksum, so that anyone\n"
           "can tell whether it is what was packed (sha256sum -c manifest-sha256.txt).\n\n"
           "  data/records/       the records, JSON, a file for each kind\n" +
           std::string(hasPeople ? "  data/records/attachments/\n"
                                   "                      photographs and scans, each named by its "
                                   "SHA-256\n"
                                 : "") +
           std::string(hasJournal ? "  data/journal.jsonl  every record as it was written down and "
                                    "corrected, in order,\n"
                                    "                      chained by hashes\n"
                                  : "") +
           "  data/tables/        the same records as tables, CSV in UTF-8\n" +
           (hasPeople ? "  data/sheets/        documents of the editions, PDF/A-3\n" : "") +
           "  data/descriptions/  editions in the elements of Dublin Core, XML\n"
           "  data/schema/        what every field means (README.md), and the rules of each kind\n"
           "                      of record as JSON Schema\n\n"
           "No program is needed to read them: data/schema/README.md explains the records, and\n"
           "units stand in the names of fields (mass_g, imageHeight_mm). Dates are EDTF\n"
           "(ISO 8601-2).\n" +
           (hasJournal  ? ""
            : hasPeople ? "Contacts of people, and the journal, were left out.\n"
                        : "\nEverything that names or describes people was left out: people and\n"
                          "their places, transfers and the like go by their kind and number, and\n"
                          "contacts, prices, free texts, photographs, sheets and the journal are\n"
                          "not here. A text that had to stand says \"withheld\".\n");
}

struct Packed {
    std::size_t withheld = 0;      // contacts
    std::size_t withoutBytes = 0;  // attachments known by the hash alone
    HandedOutSheets handedOut;
};

struct Contents {
    RecordSet all;
    std::vector<Record> records;
    Book studio;
    std::string what;
    bool hasJournal = false;
    bool hasPeople = true;
};

std::vector<std::pair<std::string, std::string>> bagInfo(const Contents& contents) {
    std::vector<std::pair<std::string, std::string>> info = {
        {"Source-Organization", contents.studio.studio},
        {"External-Description", contents.what},
        {"Bagging-Date", utcText(nowEpoch_s()).substr(0, 10)},
        {"Bag-Software-Agent", std::string("rackbook ") + programVersion}};
    if (!contents.hasPeople)
        info.emplace_back(bagPeopleLabel, bagPeopleLeftOut);
    return info;
}

Packed pack(CommandContext& context, const BookFile& book, Contents& contents,
            const std::string& bag) {
    Packed packed;
    if (contents.hasPeople && !context.arguments.has("with-contacts"))
        packed.withheld = withholdContacts(contents.records);
    makeFolder(pathOf(bag, "data"));
    packed.withoutBytes = writeBagRecords(book, contents.records, bag, contents.hasPeople);
    if (contents.hasJournal)
        writeBagJournal(book, bag);
    writeBagTables(contents.records, bag);
    writeBagSchemas(context.folders, bag);
    writeBagDescriptions(contents.all, contents.records, contents.studio, bag);
    if (contents.hasPeople) {
        writeBagSheets(context, contents.records, bag);
        packed.handedOut = copyHandedOut(contents.records,
                                         context.arguments.value("handed-out").value_or(""), bag);
    }
    writeFileSafely(
        pathOf(bag, "data/READ-ME.txt"),
        guideText(contents.studio, contents.what, contents.hasJournal, contents.hasPeople));
    finishBag(bag, bagInfo(contents));
    return packed;
}

void tell(Console& console, const std::string& folder, const Packed& packed) {
    console.out() << printable(folder) << " is a bag now. rackbook check-bag " << printable(folder)
                  << " proves later that it is what was packed.\n";
    if (packed.handedOut.copied > 0)
        console.out() << packed.handedOut.copied
                      << (packed.handedOut.copied == 1 ? " sheet that was" : " sheets that were")
                      << " handed out came in as "
                      << (packed.handedOut.copied == 1 ? "it was" : "they were") << ".\n";
    if (!packed.handedOut.missing.empty())
        console.err() << "rackbook: the book does not keep the files of sheets that were handed "
                         "out, and these were not found: "
                      << joined(packed.handedOut.missing)
                      << ". --handed-out names the folder they lie in.\n";
    if (packed.withoutBytes > 0)
        console.err() << "rackbook: " << packed.withoutBytes
                      << (packed.withoutBytes == 1 ? " attachment is" : " attachments are")
                      << " known by the hash alone, and came without a file.\n";
    if (packed.withheld > 0)
        console.err() << "rackbook: " << packed.withheld
                      << (packed.withheld == 1 ? " contact was" : " contacts were")
                      << " left out, and with them the journal; --with-contacts packs both.\n";
}

void leaveOutPeople(Contents& contents, WithoutPeople& people) {
    contents.records = people.of(contents.records);
    // What else is written of them is only looked up in these.
    contents.all = WithoutPeople(contents.all).of(contents.all);
    contents.studio = contents.all.of<Book>().front();
    contents.hasJournal = false;
    contents.hasPeople = false;
}

ExitCode run(CommandContext& context) {
    if (context.arguments.has(withoutPeopleName) && context.arguments.has("handed-out"))
        throw UsageError("sheets that were handed out name people",
                         "Leave out --handed-out or --without-people.");
    const BookFile book = bookToRead(context);
    Contents contents;
    contents.all = everythingIn(book);
    contents.studio = bookRecordOf(book);
    if (const std::optional<std::string> code = context.arguments.value("edition")) {
        const Edition edition = editionNamed(book, *code);
        contents.records = editionWithAll(contents.all, edition.id);
        contents.what = "the edition " + edition.code + ", " + edition.title;
    } else {
        contents.records = allRecords(contents.all);
        contents.what = "the whole book";
        contents.hasJournal = context.arguments.has("with-contacts");
    }
    std::optional<WithoutPeople> people = withoutPeopleGiven(context, contents.all);
    if (people)
        leaveOutPeople(contents, *people);
    const std::string folder = context.arguments.text("folder");
    requireNewFolder(folder);
    NewFolder made(folder);
    const Packed packed = pack(context, book, contents, made.path());
    made.finish();
    tell(context.console, folder, packed);
    if (people) {
        context.console.err() << "rackbook: the journal, sheets and the files of attachments were "
                                 "left out, since they name and show people.\n";
        tellLeftOut(context.console, *people);
    }
    return ExitCode::success;
}

}  // namespace

Command writeBagCommand() {
    CommandSpec spec;
    spec.name = "write-bag";
    spec.group = toTranslate("group", "For the archive");
    spec.summary = toTranslate("summary", "Pack the book, or an edition, for an archive");
    spec.details =
        "Makes a folder that can be read without this program and proves what is in it: a bag "
        "(BagIt 1.0, RFC 8493) with the records, their schemas and a guide to every field, "
        "photographs, tables in CSV, the documentation of each edition as PDF, and a description "
        "in Dublin Core.\n\n"
        "Contacts of people are left out unless asked for. With them, a whole book comes with its "
        "journal, every entry and its hash, and take-bag makes the same book of it again. Sheets "
        "that were handed out are not kept in the book; --handed-out looks for their files by the "
        "hash in the register. With --without-people the bag says nothing about people and holds "
        "neither journal nor sheets nor photographs; what was left out is told.";
    spec.positionals = {{"folder", "A new or empty folder."}};
    spec.options = {
        valueOption("edition", "CODE", "Only this edition and what it needs.", ""),
        valueOption("handed-out", "FOLDER", "Where the files of sheets that were handed out lie.",
                    ""),
        flagOption("with-contacts", "Pack the private contacts of people too, and the journal."),
        withoutPeopleOption()};
    spec.examples = {
        {"rackbook write-bag --edition EEL eel-for-the-museum", "One edition, without contacts."},
        {"rackbook write-bag --with-contacts whole-studio",
         "Everything, so that the same book can be made of it again."}};
    return {spec, run};
}

}  // namespace rackbook
