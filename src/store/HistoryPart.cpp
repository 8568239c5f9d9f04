#include "store/HistoryPart.h"

#include <algorithm>
#include <unordered_set>

#include "store/BookInner.h"
#include "store/Columns.h"
#include "store/HistoryLoad.h"

namespace rackbook {

namespace {

// Keys of the records of those ids; none of one that is not there.
std::vector<std::int64_t> keysOf(const Database& database, RecordKind kind,
                                 const std::vector<std::string>& ids) {
    Statement row = database.prepare("SELECT key FROM " + quoted(textOf(kind)) + " WHERE id = ?");
    std::vector<std::int64_t> keys;
    for (const std::string& id : ids) {
        row.bindText(1, id);
        if (row.step())
            keys.push_back(row.whole(0));
        row.reset();
    }
    return keys;
}

std::vector<std::string> idsOf(const Database& database, RecordKind kind,
                               const std::vector<std::int64_t>& keys) {
    Statement row = database.prepare("SELECT id FROM " + quoted(textOf(kind)) + " WHERE key = ?");
    std::vector<std::string> ids;
    for (const std::int64_t key : keys) {
        row.bind(1, key);
        ids.push_back(row.step() ? row.text(0) : std::string());
        row.reset();
    }
    return ids;
}

}  // namespace

PrintsPart historyOfPrints(const BookFile& book, const std::vector<std::string>& impressions) {
    Database& database = *book.inner().database;
    const Transaction transaction(database, false);
    HistorySeeds seeds;
    seeds.impressions = keysOf(database, RecordKind::impression, impressions);
    const HistoryScope scope = scopeOf(database, seeds);
    const HistoryFilter filter{std::nullopt, impressions};
    return {loadHistory(database, filter, &scope), idsOf(database, RecordKind::look, scope.looks)};
}

void keepPrints(const BookFile& book, History& whole, const std::vector<std::string>& impressions) {
    const std::vector<std::int64_t> keys =
        keysOf(*book.inner().database, RecordKind::impression, impressions);
    const std::unordered_set<std::int64_t> wanted(keys.begin(), keys.end());
    std::vector<std::size_t> kept;
    for (std::size_t i = 0; i < whole.impressions.size(); ++i)
        if (wanted.count(whole.impressions[i].key) > 0)
            kept.push_back(i);
    for (RowLists* lists : {&whole.pullsOf, &whole.movesOf, &whole.looksOf, &whole.ownLooksOf}) {
        RowLists its;
        its.offsets.push_back(0);
        for (const std::size_t i : kept) {
            its.items.insert(its.items.end(), lists->begin(i), lists->end(i));
            its.offsets.push_back(static_cast<std::uint32_t>(its.items.size()));
        }
        *lists = std::move(its);
    }
    std::vector<HistoryImpression> prints;
    prints.reserve(kept.size());
    for (const std::size_t i : kept)
        prints.push_back(whole.impressions[i]);
    whole.impressions = std::move(prints);
}

PartOfInk inkPartOf(const BookFile& book, const InkPartWanted& wanted) {
    Database& database = *book.inner().database;
    const Transaction transaction(database, false);
    HistorySeeds seeds;
    seeds.pulls = keysOf(database, RecordKind::pull, wanted.pulls);
    seeds.mixes = keysOf(database, RecordKind::mix, wanted.mixes);
    seeds.lots = keysOf(database, RecordKind::lot, wanted.lots);
    const HistoryScope scope = scopeOf(database, seeds);
    PartOfInk part;
    part.history = loadInkHistory(database, &scope);
    part.lots = idsOf(database, RecordKind::lot, scope.lots);
    part.mixes = idsOf(database, RecordKind::mix, scope.mixes);
    part.weighings = idsOf(database, RecordKind::weighing, scope.weighings);
    part.pulls = idsOf(database, RecordKind::pull, scope.pulls);
    return part;
}

std::size_t positionIn(const std::vector<std::string>& ids, const std::string& id) {
    return static_cast<std::size_t>(std::find(ids.begin(), ids.end(), id) - ids.begin());
}

}  // namespace rackbook
