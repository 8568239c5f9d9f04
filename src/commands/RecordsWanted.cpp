#include "commands/RecordsWanted.h"

#include <algorithm>
#include <set>

#include "commands/BookAccess.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

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

}  // namespace

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

}  // namespace rackbook
