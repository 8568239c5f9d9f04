#include "commands/List.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/BookAccess.h"
#include "commands/Contacts.h"
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

// What belongs to one edition, by id.
struct EditionIds {
    std::string edition;
    std::set<std::string> impressions;
    std::set<std::string> layers;
    std::set<std::string> mixes;
};

EditionIds idsOf(const BookFile& book, const std::string& editionId) {
    EditionIds ids{editionId, {}, {}, {}};
    for (const Impression& impression : allOf<Impression>(book))
        if (impression.edition.id == editionId)
            ids.impressions.insert(impression.id);
    for (const Layer& layer : allOf<Layer>(book))
        if (layer.edition.id == editionId)
            ids.layers.insert(layer.id);
    for (const Mix& mix : allOf<Mix>(book))
        if (mix.edition && mix.edition->id == editionId)
            ids.mixes.insert(mix.id);
    return ids;
}

// Whether a record is of that edition. Pre: canBeFiltered(R::kind).
template <class R>
bool isOf(const R& record, const EditionIds& ids) {
    if constexpr (std::is_same_v<R, Block> || std::is_same_v<R, Layer> ||
                  std::is_same_v<R, Impression>)
        return record.edition.id == ids.edition;
    else if constexpr (std::is_same_v<R, Mix>)
        return record.edition && record.edition->id == ids.edition;
    else if constexpr (std::is_same_v<R, Weighing>)
        return ids.mixes.count(record.mix.id) != 0;
    else if constexpr (std::is_same_v<R, Pull>)
        return ids.layers.count(record.layer.id) != 0;
    else if constexpr (std::is_same_v<R, Move> || std::is_same_v<R, Look> ||
                       std::is_same_v<R, Transfer>)
        return std::any_of(
            record.impressions.begin(), record.impressions.end(),
            [&](const Ref<Impression>& ref) { return ids.impressions.count(ref.id) != 0; });
    else
        return true;
}

const std::vector<RecordKind>& kindsOfEditions() {
    static const std::vector<RecordKind> kinds = {
        RecordKind::block, RecordKind::mix,        RecordKind::weighing,
        RecordKind::layer, RecordKind::impression, RecordKind::pull,
        RecordKind::move,  RecordKind::look,       RecordKind::transfer};
    return kinds;
}

bool canBeFiltered(RecordKind kind) {
    const std::vector<RecordKind>& kinds = kindsOfEditions();
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

std::vector<Record> wantedRecords(const CommandContext& context, const BookFile& book,
                                  RecordKind kind) {
    std::optional<EditionIds> ids;
    if (const std::optional<std::string> edition = context.arguments.value("edition")) {
        if (!canBeFiltered(kind))
            throw UsageError(
                "records of kind " + std::string(textOf(kind)) + " cannot be listed by edition",
                "Leave --edition out.");
        ids = idsOf(book, editionNamed(book, *edition).id);
    }
    std::vector<Record> records;
    withRecordType(kind, [&](auto tag) {
        for (auto& record : allOf<typename decltype(tag)::Type>(book))
            if (!ids || isOf(record, *ids))
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
        places = whereabouts(book, nowAt(bookRecordOf(book)).latest());
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
    spec.group = "Questions";
    spec.summary = "List the records of one kind";
    spec.details = "KIND is one of " + joined(enumNames<RecordKind>(), " and ") +
                   ". Contacts of people are never listed.";
    spec.positionals = {{"kind", "The kind of record."}};
    spec.options = {
        {"edition",
         "CODE",
         "Only what belongs to this edition: blocks, layers, mixes, weighings, impressions, pulls, "
         "moves, looks and transfers.",
         false,
         false,
         {},
         {}}};
    spec.reportsJson = true;
    spec.examples = {{"rackbook list edition", "All editions."},
                     {"rackbook list lot", "All tins, tubes and jars."}};
    return {spec, run};
}

}  // namespace rackbook
