#include "commands/WriteTable.h"

#include <algorithm>

#include "base/Files.h"
#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/Contacts.h"
#include "commands/OptionRows.h"
#include "commands/PeopleLeftOut.h"
#include "commands/RecordsWanted.h"
#include "commands/TableViews.h"
#include "exchange/CsvWriter.h"
#include "exchange/RecordCells.h"
#include "exchange/RecordCodec.h"
#include "exchange/Selection.h"
#include "store/BookOfRecords.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

using Rows = std::vector<std::vector<std::string>>;

CsvWriting writingGiven(const CommandContext& context) {
    CsvWriting writing;
    writing.withMark = context.arguments.has("bom");
    const std::string word = context.arguments.value("separator").value_or("comma");
    writing.separator = word == "semicolon" ? ';' : word == "tab" ? '\t' : ',';
    return writing;
}

char decimalGiven(const CommandContext& context) {
    return context.arguments.value("decimal").value_or("point") == "comma" ? ',' : '.';
}

void tellWithheld(Console& console, std::size_t withheld) {
    if (withheld > 0)
        console.err() << "rackbook: " << withheld
                      << (withheld == 1 ? " contact was" : " contacts were")
                      << " left out; --with-contacts writes them.\n";
}

const TableView* viewNamed(const std::string& name) {
    for (const TableView& view : tableViews())
        if (name == view.name)
            return &view;
    return nullptr;
}

Rows rowsOfKind(CommandContext& context, const BookFile& book, const std::string& word) {
    std::vector<std::string> known = enumNames<RecordKind>();
    for (const TableView& view : tableViews())
        known.emplace_back(view.name);
    const std::optional<RecordKind> kind = enumFrom<RecordKind>(word);
    if (!kind) {
        const std::optional<std::string> nearest = nearestName(word, known);
        throw UsageError("there is no kind of record and no list \"" + excerpt(word) + "\"",
                         nearest ? "Did you mean " + *nearest + "?"
                                 : "Use one of " + joined(known, " or ") + ".");
    }
    std::vector<Record> records = wantedRecords(context, book, *kind);
    if (std::optional<WithoutPeople> people = withoutPeopleGiven(context, everythingIn(book))) {
        records = people->of(records);
        tellLeftOut(context.console, *people);
    } else if (!context.arguments.has("with-contacts")) {
        tellWithheld(context.console, withholdContacts(records));
    }
    return cellsOf(*kind, records, decimalGiven(context));
}

// Lists are made of a book; this one holds the same records without people.
Rows rowsOfView(CommandContext& context, const BookFile& book, const TableView& view) {
    const std::optional<std::string> edition = context.arguments.value("edition");
    const std::string id = edition ? editionNamed(book, *edition).id : std::string();
    const RecordSet all = everythingIn(book);
    std::optional<WithoutPeople> people = withoutPeopleGiven(context, all);
    if (!people)
        return view.rows(book, id, decimalGiven(context));
    std::vector<Entry> entries;
    for (Record& record : people->of(allRecords(all))) {
        const std::string payload = encodeRecord(record);
        entries.push_back({std::move(record), payload, std::nullopt, false});
    }
    tellLeftOut(context.console, *people);
    return view.rows(bookOfRecords(bookOptionsOf(context), entries), id, decimalGiven(context));
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    const std::string word = context.arguments.text("what");
    const CsvWriting writing = writingGiven(context);
    Rows rows;
    if (const TableView* view = viewNamed(word)) {
        for (const char* filter : {"place", "holder", "verdict", "during"})
            if (context.arguments.has(filter))
                throw UsageError(word + " cannot be chosen by --" + filter,
                                 "Leave it out, or write the records of a kind.");
        rows = rowsOfView(context, book, *view);
    } else {
        rows = rowsOfKind(context, book, word);
    }
    const std::string text = csvText(rows, writing);
    const std::optional<std::string> out = context.arguments.value("out");
    if (!out || *out == "-") {
        context.console.out() << text;
        return ExitCode::success;
    }
    writeFileSafely(*out, text);
    context.console.out() << printable(*out) << ": " << rows.size() - 1
                          << (rows.size() == 2 ? " row\n" : " rows\n");
    return ExitCode::success;
}

std::string listOfViews() {
    std::string words;
    for (const TableView& view : tableViews())
        words += std::string(words.empty() ? "" : "; ") + view.name + " (" + view.summary + ")";
    return words;
}

}  // namespace

Command writeTableCommand() {
    CommandSpec spec;
    spec.name = "write-table";
    spec.group = toTranslate("group", "Record files");
    spec.summary =
        toTranslate("summary", "Write the records of one kind, or a list, as a table in CSV");
    spec.details =
        "WHAT is a kind of record, of which every field is written, or a list to be read: " +
        listOfViews() +
        ". The table is CSV after RFC 4180 in UTF-8. Taken in again with the mapping that "
        "take-table proposes for it, a table of a kind of record changes nothing; attachments "
        "come without their pictures, which write-out writes.\n\n"
        "Text that a spreadsheet would run as a formula (it begins with = + - @, a tab or a line "
        "break, and is no number) gets an apostrophe before it, which take-table takes off. "
        "Contacts of people are left out unless asked for; --without-people leaves out or renames "
        "everything about them, and tells what.";
    spec.positionals = {{"what", "A kind of record, or a list."}};
    spec.options = {
        valueOption("out", "FILE", "The file to write.", "standard output"),
        choiceOption("separator", "WORD", "What parts the cells; comma where it is left out.",
                     {"comma", "semicolon", "tab"}),
        choiceOption("decimal", "WORD", "The decimal mark; point where it is left out.",
                     {"point", "comma"}),
        flagOption("bom", "Begin with a byte order mark, by which some spreadsheets know UTF-8."),
        flagOption("with-contacts", "Write the private contacts of people too."),
        withoutPeopleOption()};
    for (OptionSpec& filter : recordFilters())
        spec.options.push_back(std::move(filter));
    spec.examples = {
        {"rackbook write-table lot --out tins.csv", "All tins, every field."},
        {"rackbook write-table impression-list --edition EEL --separator semicolon --decimal comma "
         "--bom --out eel.csv",
         "Where the sheets of an edition are, for a spreadsheet of the continent."}};
    return {spec, run};
}

}  // namespace rackbook
