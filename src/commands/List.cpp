#include "commands/List.h"

#include <map>
#include <set>

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/Contacts.h"
#include "commands/FieldText.h"
#include "commands/JsonReport.h"
#include "commands/RecordsWanted.h"
#include "commands/Whereabouts.h"
#include "exchange/TreeJson.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

struct ListColumn {
    const char* field;
    const char* heading;
    Align align = Align::left;
};

// What a list shows of each kind; the rest stands in rackbook show.
const std::vector<ListColumn>& columnsOf(RecordKind kind) {
    static const std::map<RecordKind, std::vector<ListColumn>> columns = {
        {RecordKind::book, {{"studio", "studio"}, {"timeZone", "time zone"}}},
        {RecordKind::party, {{"name", "name"}, {"roles", "roles"}}},
        {RecordKind::place,
         {{"name", "name"},
          {"placeKind", "kind"},
          {"within", "within"},
          {"capacity", "capacity", Align::right}}},
        {RecordKind::edition,
         {{"code", "code"},
          {"title", "title"},
          {"year", "year"},
          {"process", "process"},
          {"declaredNumbered", "numbered", Align::right},
          {"status", "status"}}},
        {RecordKind::block,
         {{"edition", "edition"}, {"name", "name"}, {"role", "role"}, {"fate", "fate"}}},
        {RecordKind::lot,
         {{"lotKind", "kind"},
          {"colourWords", "colour"},
          {"pigments", "pigments"},
          {"container", "container"},
          {"netMass_g", "net g", Align::decimal},
          {"openedOn", "opened"},
          {"finishedOn", "finished"}}},
        {RecordKind::balance,
         {{"name", "name"},
          {"readability_g", "readability g", Align::decimal},
          {"repeatability_g", "repeatability g", Align::decimal},
          {"capacity_g", "capacity g", Align::decimal},
          {"retiredOn", "retired"}}},
        {RecordKind::mix,
         {{"name", "name"},
          {"purpose", "purpose"},
          {"drierFree", "drier-free"},
          {"madeOn", "made"},
          {"edition", "edition"}}},
        {RecordKind::weighing,
         {{"mix", "mix"},
          {"at", "at"},
          {"act", "act"},
          {"lot", "lot"},
          {"fromMix", "from mix"},
          {"mass_g", "g", Align::decimal}}},
        {RecordKind::layer,
         {{"edition", "edition"},
          {"ordinal", "layer", Align::right},
          {"colourWords", "colour"},
          {"mix", "mix"},
          {"coverage", "coverage", Align::decimal}}},
        {RecordKind::impression,
         {{"edition", "edition"},
          {"workingNumber", "working no.", Align::right},
          {"designation", "designation"},
          {"fate", "fate"},
          {"holder", "holder"}}},
        {RecordKind::pull,
         {{"layer", "layer"},
          {"start", "start"},
          {"portion", "portion"},
          {"impressions", "impressions"},
          {"spoiled", "spoiled"}}},
        {RecordKind::drawdown,
         {{"mix", "mix"}, {"lot", "lot"}, {"substrate", "substrate"}, {"madeOn", "made"}}},
        {RecordKind::reading,
         {{"drawdown", "drawdown"},
          {"impression", "impression"},
          {"takenOn", "taken"},
          {"labL", "L*", Align::decimal},
          {"labA", "a*", Align::decimal},
          {"labB", "b*", Align::decimal}}},
        {RecordKind::issue,
         {{"sheetKind", "sheet"},
          {"issuedOn", "issued"},
          {"recipient", "for"},
          {"fileName", "file"}}},
        {RecordKind::move,
         {{"at", "at"},
          {"why", "why"},
          {"impressions", "impressions"},
          {"from", "from"},
          {"to", "to"}}},
        {RecordKind::look,
         {{"at", "at"}, {"impressions", "impressions"}, {"touch", "touch"}, {"colour", "colour"}}},
        {RecordKind::transfer,
         {{"transferKind", "kind"},
          {"agreedOn", "agreed"},
          {"impressions", "impressions"},
          {"giver", "giver"},
          {"receiver", "receiver"}}},
        {RecordKind::attachment,
         {{"mediaType", "type"},
          {"caption", "caption"},
          {"takenOn", "taken"},
          {"edition", "edition"},
          {"impression", "impression"},
          {"drawdown", "drawdown"}}},
        {RecordKind::stockTake,
         {{"lot", "lot"}, {"at", "at"}, {"mass_g", "g", Align::decimal}, {"balance", "balance"}}},
        {RecordKind::weather,
         {{"on", "on"}, {"sky", "sky"}, {"oktas", "oktas", Align::decimal}, {"note", "note"}}},
        {RecordKind::metering,
         {{"place", "place"},
          {"from", "from"},
          {"to", "to"},
          {"exposure_lxh", "lx·h", Align::decimal},
          {"nearUltraviolet_Whm2", "near UV Wh/m²", Align::decimal}}},
    };
    return columns.at(kind);
}

// Of one edition the moves of its own prints tell.
std::map<std::string, std::string> placesOf(const CommandContext& context, const BookFile& book,
                                            const std::vector<Record>& prints) {
    const CivilMinute now = nowAt(bookRecordOf(book)).latest();
    if (!context.arguments.has("edition"))
        return whereabouts(book, now);
    std::set<std::string> ids;
    for (const Record& print : prints)
        ids.insert(idOf(print));
    return whereabouts(book, now, ids);
}

void printTable(CommandContext& context, const BookFile& book, RecordKind kind,
                const std::vector<Record>& records) {
    std::vector<Column> headings = {{"id"}};
    for (const ListColumn& column : columnsOf(kind))
        headings.push_back({column.heading, column.align});
    const bool withPlace = kind == RecordKind::impression;
    std::map<std::string, std::string> places;
    if (withPlace) {
        headings.push_back({"now at"});
        places = placesOf(context, book, records);
    }
    Table table(headings);
    for (const Record& record : records) {
        std::map<std::string, std::string> texts;
        for (auto& [name, text] : fieldTexts(record))
            texts[name] = std::move(text);
        std::vector<std::string> cells = {idOf(record)};
        for (const ListColumn& column : columnsOf(kind))
            cells.push_back(texts[column.field]);
        if (withPlace)
            cells.push_back(places[idOf(record)]);
        table.addRow(cells);
    }
    context.console.out() << table.text(
        context.console.width(),
        "The book holds no records of kind " + std::string(textOf(kind)) + " here.");
}

ExitCode run(CommandContext& context) {
    const RecordKind kind = recordKindNamed(context.arguments.text("kind"));
    const BookFile book = bookToRead(context);
    std::vector<Record> records = wantedRecords(context, book, kind);
    withholdContacts(records);
    if (!context.arguments.has("json")) {
        printTable(context, book, kind, records);
        return ExitCode::success;
    }
    Tree report = newReport("list");
    Tree list = Tree::array();
    for (const Record& record : records)
        list.add(treeOf(record));
    report.set("records", std::move(list));
    context.console.out() << jsonText(report);
    return ExitCode::success;
}

}  // namespace

Command listCommand() {
    CommandSpec spec;
    spec.name = "list";
    spec.group = toTranslate("group", "Questions");
    spec.summary = toTranslate("summary", "List the records of one kind");
    spec.details = "KIND is one of " + joined(enumNames<RecordKind>(), " and ") +
                   ". Contacts of people are never listed.";
    spec.positionals = {{"kind", "The kind of record."}};
    spec.options = recordFilters();
    spec.reportsJson = true;
    spec.examples = {{"rackbook list edition", "All editions."},
                     {"rackbook list lot", "All tins, tubes and jars."},
                     {"rackbook list look --during 2026-03", "The looks of a month."},
                     {"rackbook list impression --place plan-chest --edition EEL",
                      "What of an edition lies in the plan chest."}};
    return {spec, run};
}

}  // namespace rackbook
