#include "commands/RecordsWanted.h"

#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/JudgedPrints.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"
#include "commands/Whereabouts.h"
#include "store/RecordReader.h"
#include "store/RecordsAround.h"

namespace rackbook {

namespace {

// What belongs to one edition, by id.
struct EditionIds {
    std::string edition;
    std::set<std::string> impressions;
    std::set<std::string> layers;
    std::set<std::string> mixes;
};

EditionIds idsOf(const RecordSet& around, const std::string& editionId) {
    EditionIds ids{editionId, {}, {}, {}};
    for (const Impression& impression : around.of<Impression>())
        if (impression.edition.id == editionId)
            ids.impressions.insert(impression.id);
    for (const Layer& layer : around.of<Layer>())
        if (layer.edition.id == editionId)
            ids.layers.insert(layer.id);
    for (const Mix& mix : around.of<Mix>())
        if (mix.edition && mix.edition->id == editionId)
            ids.mixes.insert(mix.id);
    return ids;
}

// Whether a record is of that edition.
template <class R>
bool isOf(const R& record, const EditionIds& ids) {
    if constexpr (std::is_same_v<R, Edition>)
        return record.id == ids.edition;
    else if constexpr (std::is_same_v<R, Block> || std::is_same_v<R, Layer> ||
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
        RecordKind::edition, RecordKind::block,      RecordKind::mix,  RecordKind::weighing,
        RecordKind::layer,   RecordKind::impression, RecordKind::pull, RecordKind::move,
        RecordKind::look,    RecordKind::transfer};
    return kinds;
}

[[noreturn]] void refuseFilter(RecordKind kind, const std::string& filter) {
    throw UsageError(
        "records of kind " + std::string(textOf(kind)) + " cannot be chosen by --" + filter,
        "Leave --" + filter + " out.");
}

using Wanted = std::function<bool(const Record&)>;

// What lies around the edition that was asked for, which costs no more than the edition; nothing
// where none was.
std::optional<RecordSet> aroundEdition(const CommandContext& context, const BookFile& book,
                                       RecordKind kind) {
    const std::optional<std::string> words = context.arguments.value("edition");
    if (!words)
        return std::nullopt;
    const std::vector<RecordKind>& kinds = kindsOfEditions();
    if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end())
        refuseFilter(kind, "edition");
    return recordsAround(book, {{editionNamed(book, *words).id}, {}, {}});
}

Wanted byEdition(const EditionIds& ids) {
    return [ids](const Record& record) {
        return std::visit([&](const auto& one) { return isOf(one, ids); }, record);
    };
}

// Impressions by how they are judged now.
Wanted byStanding(const CommandContext& context, const BookFile& book, RecordKind kind) {
    if (kind != RecordKind::impression)
        refuseFilter(kind, "verdict");
    const Book studio = bookRecordOf(book);
    const HouseRules rules(studio.houseRules);
    const JudgedPrints prints(book, studio, rules, std::nullopt, nowAt(studio).latest());
    const std::string verdict = context.arguments.text("verdict");
    std::set<std::string> ids;
    for (const ReadinessRow& row : prints.readiness.rows)
        if (textOf(row.verdict) == verdict)
            ids.insert(prints.labels[static_cast<std::size_t>(row.impression)].id);
    return [ids](const Record& record) { return ids.count(idOf(record)) > 0; };
}

// The place and all places within it.
std::set<std::string> placesWithin(const BookFile& book, const std::string& id) {
    const std::vector<Place> places = allOf<Place>(book);
    std::set<std::string> within = {recordNamed<Place>(book, id).id};
    for (bool grew = true; grew;) {
        grew = false;
        for (const Place& place : places)
            if (place.within && within.count(place.within->id) > 0)
                grew = within.insert(place.id).second || grew;
    }
    return within;
}

Wanted byPlace(const BookFile& book, RecordKind kind, const std::string& words,
               const std::optional<std::set<std::string>>& prints) {
    const std::set<std::string> places = placesWithin(book, words);
    const auto isThere = [places](const std::optional<Ref<Place>>& place) {
        return place && places.count(place->id) > 0;
    };
    switch (kind) {
        case RecordKind::impression: {
            const std::map<std::string, std::string> ids =
                whereaboutsById(book, nowAt(bookRecordOf(book)).latest(), prints);
            return [places, ids](const Record& record) {
                const auto found = ids.find(idOf(record));
                return found != ids.end() && places.count(found->second) > 0;
            };
        }
        case RecordKind::move:
            return [isThere](const Record& record) {
                const Move& move = std::get<Move>(record);
                return isThere(move.from) || isThere(move.to);
            };
        case RecordKind::lot:
            return [isThere](const Record& record) { return isThere(std::get<Lot>(record).place); };
        case RecordKind::mix:
            return [isThere](const Record& record) { return isThere(std::get<Mix>(record).place); };
        default:
            refuseFilter(kind, "place");
    }
}

Wanted byHolder(const BookFile& book, RecordKind kind, const std::string& words) {
    const std::string party = recordNamed<Party>(book, words).id;
    if (kind == RecordKind::impression)
        return [party](const Record& record) {
            const Impression& impression = std::get<Impression>(record);
            return impression.holder && impression.holder->id == party;
        };
    if (kind == RecordKind::transfer)
        return [party](const Record& record) {
            const Transfer& transfer = std::get<Transfer>(record);
            return transfer.receiver.id == party || (transfer.giver.id == party);
        };
    refuseFilter(kind, "holder");
}

// What can have happened within those days.
Wanted during(const std::string& words) {
    const EdtfDate days = dateFrom(words, "during");
    return [days](const Record& record) {
        const std::optional<EdtfDate> at = happenedAt(record);
        return at && at->earliest() <= days.latest() && at->latest() >= days.earliest();
    };
}

const std::map<std::string, std::set<RecordKind>>& kindsChosenBy() {
    using K = RecordKind;
    const std::vector<K>& ofEditions = kindsOfEditions();
    static const std::map<std::string, std::set<K>> kinds = {
        {"edition", {ofEditions.begin(), ofEditions.end()}},
        {"place", {K::impression, K::move, K::lot, K::mix}},
        {"holder", {K::impression, K::transfer}},
        {"verdict", {K::impression}},
        {"during",
         {K::weighing, K::pull, K::drawdown, K::reading, K::issue, K::move, K::look, K::transfer,
          K::stockTake, K::weather, K::metering}}};
    return kinds;
}

std::vector<Wanted> filtersGiven(const CommandContext& context, const BookFile& book,
                                 RecordKind kind, const std::optional<RecordSet>& around) {
    const Arguments& arguments = context.arguments;
    std::vector<Wanted> filters;
    std::optional<std::set<std::string>> prints;
    if (around) {
        const EditionIds ids = idsOf(*around, editionNamed(book, arguments.text("edition")).id);
        prints = ids.impressions;
        filters.push_back(byEdition(ids));
    }
    if (const std::optional<std::string> place = arguments.value("place"))
        filters.push_back(byPlace(book, kind, *place, prints));
    if (const std::optional<std::string> holder = arguments.value("holder"))
        filters.push_back(byHolder(book, kind, *holder));
    if (arguments.has("verdict"))
        filters.push_back(byStanding(context, book, kind));
    if (const std::optional<std::string> days = arguments.value("during"))
        filters.push_back(during(*days));
    return filters;
}

}  // namespace

std::vector<OptionSpec> recordFilters() {
    return {
        valueOption("edition", "CODE",
                    "Only this edition and what belongs to it: blocks, layers, mixes, weighings, "
                    "impressions, pulls, moves, looks and transfers."),
        valueOption("place", "PLACE",
                    "Only what is there or at a place within it: impressions, lots and mixes; "
                    "moves from or to it."),
        valueOption("holder", "PARTY", "Only impressions and transfers of that party."),
        choiceOption("verdict", "VERDICT", "Only impressions that are judged so today.",
                     enumNames<Verdict>()),
        valueOption("during", "DATE",
                    "Only what can have happened then: a day, a month, a year, or a first and "
                    "a last day with a slash between.")};
}

std::optional<std::set<std::string>> idsWanted(const CommandContext& context, const BookFile& book,
                                               RecordKind kind) {
    const Arguments& arguments = context.arguments;
    for (const auto& [filter, kinds] : kindsChosenBy())
        if (arguments.has(filter) && kinds.count(kind) == 0)
            return std::nullopt;
    std::set<std::string> ids;
    for (const Record& record : wantedRecords(context, book, kind))
        ids.insert(idOf(record));
    return ids;
}

std::vector<Record> wantedRecords(const CommandContext& context, const BookFile& book,
                                  RecordKind kind) {
    const std::optional<RecordSet> around = aroundEdition(context, book, kind);
    const std::vector<Wanted> filters = filtersGiven(context, book, kind, around);
    std::vector<Record> records;
    withRecordType(kind, [&](auto tag) {
        using R = typename decltype(tag)::Type;
        std::vector<R> candidates = around ? around->of<R>() : allOf<R>(book);
        for (R& one : candidates) {
            Record record = std::move(one);
            if (std::all_of(filters.begin(), filters.end(),
                            [&](const Wanted& wanted) { return wanted(record); }))
                records.push_back(std::move(record));
        }
    });
    return records;
}

}  // namespace rackbook
