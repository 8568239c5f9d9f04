#include "commands/Show.h"

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/Contacts.h"
#include "commands/FieldText.h"
#include "commands/JsonReport.h"
#include "commands/KindAndId.h"
#include "commands/RecordNamed.h"
#include "commands/SheetSelection.h"
#include "commands/ShowEdition.h"
#include "commands/ShowImpression.h"
#include "commands/ShowMix.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

// An edition goes by its code too, an impression as CODE:7.
template <class R>
R recordToShow(const BookFile& book, const std::string& words) {
    if constexpr (std::is_same_v<R, Edition>) {
        return editionNamed(book, words);
    } else if constexpr (std::is_same_v<R, Impression>) {
        const SheetSelection selection = sheetsNamed(book, words);
        if (selection.sheets.size() != 1)
            throw UsageError(words + " names more than one impression", "Name one.");
        return selection.sheets.front();
    } else
        return recordNamed<R>(book, words);
}

Record wantedRecord(const CommandContext& context, const BookFile& book) {
    const KindAndId wanted = kindAndIdGiven(context);
    Record record;
    withRecordType(wanted.kind, [&](auto tag) {
        record = recordToShow<typename decltype(tag)::Type>(book, wanted.id);
    });
    return record;
}

void print(CommandContext& context, const BookFile& book, const Record& record) {
    Console& console = context.console;
    console.out() << console.emphasis(printable(nameOf(kindOf(record), idOf(record)))) << "\n";
    Table table({{"field"}, {"value"}});
    for (const auto& [name, text] : fieldTexts(record))
        table.addRow({name, text});
    console.out() << table.text(console.width(), "It says nothing but its id.");
    if (const Mix* mix = std::get_if<Mix>(&record)) {
        printWeighings(console, book, *mix);
        MixShowing::ofMix(book, *mix, nowAt(bookRecordOf(book)).latest()).print(console);
    }
    if (const Pull* pull = std::get_if<Pull>(&record))
        MixShowing::ofPull(book, *pull).print(console);
    if (const Impression* impression = std::get_if<Impression>(&record))
        printEvents(console, eventsOf(book, *impression));
    if (const Edition* edition = std::get_if<Edition>(&record))
        printEdition(console, book, *edition);
}

Tree reportOf(const BookFile& book, const Record& record) {
    Tree report = newReport("show");
    report.set("record", treeOf(record));
    if (const Mix* mix = std::get_if<Mix>(&record))
        report.set("contents",
                   MixShowing::ofMix(book, *mix, nowAt(bookRecordOf(book)).latest()).tree());
    if (const Pull* pull = std::get_if<Pull>(&record))
        report.set("laidDown", MixShowing::ofPull(book, *pull).tree());
    if (const Impression* impression = std::get_if<Impression>(&record))
        report.set("events", treeOf(eventsOf(book, *impression)));
    if (const Edition* edition = std::get_if<Edition>(&record))
        addEdition(report, book, *edition);
    return report;
}

ExitCode run(CommandContext& context) {
    const BookFile book = bookToRead(context);
    Record record = wantedRecord(context, book);
    if (!context.arguments.has("with-contacts"))
        withholdContact(record);
    if (context.arguments.has("json"))
        context.console.out() << jsonText(reportOf(book, record));
    else
        print(context, book, record);
    return ExitCode::success;
}

}  // namespace

Command showCommand() {
    CommandSpec spec;
    spec.name = "show";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate("summary", "Show one record with what belongs to it");
    spec.details =
        "Of a mix: what went in and out, and what it holds now, by lot, through every parent mix. "
        "Of "
        "a pull: what it laid down. Of an impression: everything that happened to it. Of an "
        "edition: its layers and its "
        "count. Of anything else: what was recorded.";
    spec.positionals = {
        {"kind",
         "The kind of record, see rackbook list --help; or an edition's code, or CODE:7 for one of "
         "its sheets, alone."},
        {"id", "Its id; of an edition also its code, of an impression also CODE:7.", false, false}};
    spec.options = {
        {"with-contacts", "", "Show the private contact of a party too.", false, false, {}, {}}};
    spec.reportsJson = true;
    spec.examples = {{"rackbook show EEL:3", "What happened to one sheet, and where it is."},
                     {"rackbook show mix eel-l4-letdown", "How a mix was made, and what is left."}};
    return {spec, run};
}

}  // namespace rackbook
