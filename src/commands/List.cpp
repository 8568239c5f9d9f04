#include "commands/List.h"

#include <map>

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/FieldText.h"
#include "commands/JsonReport.h"
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
        {RecordKind::issue, {{"sheetKind", "sheet"}, {"issuedOn", "issued"}, {"recipient", "for"}}},
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
         {{"mediaType", "type"}, {"caption", "caption"}, {"edition", "edition"}}},
    };
    return columns.at(kind);
}

// Whether a record is of that edition, as far as its kind says so itself.
template <class R>
bool isOf(const R& record, const std::string& editionId) {
    if constexpr (std::is_same_v<R, Block> || std::is_same_v<R, Layer> ||
                  std::is_same_v<R, Impression>)
        return record.edition.id == editionId;
    else if constexpr (std::is_same_v<R, Mix>)
        return record.edition && record.edition->id == editionId;
    else
        return true;
}

bool canBeFiltered(RecordKind kind) {
    return kind == RecordKind::block || kind == RecordKind::layer ||
           kind == RecordKind::impression || kind == RecordKind::mix;
}

std::vector<Record> wantedRecords(const CommandContext& context, const BookFile& book,
                                  RecordKind kind) {
    std::optional<std::string> editionId;
    if (const std::optional<std::string> edition = context.arguments.value("edition")) {
        if (!canBeFiltered(kind))
            throw UsageError(
                "records of kind " + std::string(textOf(kind)) + " cannot be listed by edition",
                "Leave --edition out.");
        editionId = editionNamed(book, *edition).id;
    }
    std::vector<Record> records;
    withRecordType(kind, [&](auto tag) {
        for (auto& record : allOf<typename decltype(tag)::Type>(book))
            if (!editionId || isOf(record, *editionId))
                records.emplace_back(std::move(record));
    });
    return records;
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
        places = whereabouts(book);
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
    for (Record& record : records)
        if (Party* party = std::get_if<Party>(&record))
            party->contact.reset();
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
    spec.group = "Questions";
    spec.summary = "List the records of one kind";
    spec.details = "KIND is one of " + joined(enumNames<RecordKind>(), " and ") +
                   ". Contacts of people are never listed.";
    spec.positionals = {{"kind", "The kind of record."}};
    spec.options = {
        {"edition", "CODE", "Only what belongs to this edition.", false, false, {}, {}}};
    spec.reportsJson = true;
    spec.examples = {{"rackbook list edition", "All editions."},
                     {"rackbook list lot", "All tins, tubes and jars."}};
    return {spec, run};
}

}  // namespace rackbook
