#include "store/HistoryQuery.h"

#include <algorithm>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include "base/Error.h"
#include "store/BookInner.h"
#include "store/Columns.h"
#include "store/HistoryScope.h"

namespace rackbook {

namespace {

constexpr const char* editionsSql = "SELECT key, id, code FROM edition";
constexpr const char* layersSql =
    "SELECT key, edition, ordinal, extenderShare, colourWords FROM layer";
constexpr const char* lotsSql = "SELECT key, lotKind FROM lot";
constexpr const char* mixesSql = "SELECT key FROM mix";
constexpr const char* weighingsSql =
    "SELECT mix, act, lot, fromMix, atEarliest, atLatest, sequence, mass_g, massLow_g, massHigh_g "
    "FROM weighing";
constexpr const char* pullsSql =
    "SELECT key, layer, portion, startEarliest, startLatest, inkBefore_g, inkAfter_g FROM pull";
constexpr const char* placesSql =
    "SELECT key, id, name, placeKind, within, holder FROM place ORDER BY key";
constexpr const char* lightSql =
    "SELECT place, fromEarliest, fromLatest, lightKind FROM place_light ORDER BY place, position";
constexpr const char* movesSql =
    "SELECT key, \"to\", \"from\", atEarliest, atLatest, untilEarliest, untilLatest, why, "
    "interleaved FROM move";
constexpr const char* looksSql =
    "SELECT key, atEarliest, atLatest, touch, colour, reading FROM look";
constexpr const char* inOrder = " ORDER BY key";
constexpr const char* impressionsSql =
    "SELECT key, edition, workingNumber, fate, holder, fateOnEarliest FROM impression";
constexpr const char* impressionsOrder = " ORDER BY edition, workingNumber";
constexpr const char* pullListSql = "SELECT impression, pull FROM pull_impressions";
constexpr const char* moveListSql = "SELECT impression, move FROM move_impressions";
constexpr const char* lookListSql = "SELECT impression, look FROM look_impressions";
constexpr const char* standsForSql = "SELECT impression, look FROM look_standsFor";

StoreError damaged(const std::string& what) {
    return StoreError("the book", what, "Restore the last backup, or run rackbook verify.");
}

// Positions by key. Those of a whole book are small and dense; of a part they are few.
class Positions {
public:
    explicit Positions(bool areFew) : m_areFew(areFew) {}

    void note(std::int64_t key, int position) {
        constexpr std::int64_t highestKey = 1'000'000'000;
        if (key < 0 || key > highestKey)
            throw damaged("a row has the number " + std::to_string(key));
        if (m_areFew) {
            m_few[key] = position;
            return;
        }
        if (key >= static_cast<std::int64_t>(m_positions.size()))
            m_positions.resize(static_cast<std::size_t>(key) + 1, -1);
        m_positions[static_cast<std::size_t>(key)] = position;
    }
    int of(std::int64_t key) const {
        if (m_areFew) {
            const auto found = m_few.find(key);
            return found == m_few.end() ? -1 : found->second;
        }
        return key >= 0 && key < static_cast<std::int64_t>(m_positions.size())
                   ? m_positions[static_cast<std::size_t>(key)]
                   : -1;
    }
    // Pre for a sound book: the row is there.
    std::uint32_t mustHave(std::int64_t key) const {
        const int position = of(key);
        if (position < 0)
            throw damaged("a row names another that is not there");
        return static_cast<std::uint32_t>(position);
    }
    int of(const Statement& row, int column) const {
        return row.isNull(column) ? -1 : of(row.whole(column));
    }

private:
    bool m_areFew;
    std::vector<int> m_positions;
    std::unordered_map<std::int64_t, int> m_few;
};

double realOrNotKnown(const Statement& row, int column) {
    return row.isNull(column) ? notKnown : row.real(column);
}

TimeSpan spanAt(const Statement& row, int column) {
    return {row.whole(column), row.whole(column + 1)};
}

template <class E>
E wordAt(const Statement& row, int column) {
    const std::optional<E> word = enumFrom<E>(row.view(column));
    if (!word)
        throw damaged("it holds the unknown word \"" + row.text(column) + "\"");
    return *word;
}

class HistoryLoad {
public:
    HistoryLoad(Database& database, const HistoryFilter& filter, const HistoryScope* scope)
        : m_database(database), m_filter(filter), m_scope(scope) {}

    History runInk() {
        Transaction transaction(m_database, false);
        readInk();
        return std::move(m_history);
    }

    History run() {
        Transaction transaction(m_database, false);
        readInk();
        readPlaces();
        readLight();
        readMoves();
        readLooks();
        readImpressions();
        m_history.pullsOf = lists({pullListSql}, m_pulls);
        m_history.movesOf = lists({moveListSql}, m_moves);
        m_history.looksOf = lists({lookListSql, standsForSql}, m_looks);
        m_history.ownLooksOf = lists({lookListSql}, m_looks);
        return std::move(m_history);
    }

private:
    // All rows in the order of recording, or those of the keys, which rise.
    template <class Note>
    void eachRow(const std::string& sql, const std::vector<std::int64_t>* keys, Note&& note) {
        Statement row = m_database.prepare(sql + (keys == nullptr ? inOrder : " WHERE key = ?"));
        if (keys == nullptr) {
            while (row.step())
                note(row);
            return;
        }
        for (const std::int64_t key : *keys) {
            row.bind(1, key);
            if (row.step())
                note(row);
            row.reset();
        }
    }

    void readInk() {
        readEditions();
        readLayers();
        readLots();
        readMixes();
        readWeighings();
        readPulls();
    }

    void readEditions() {
        eachRow(editionsSql, m_scope ? &m_scope->editions : nullptr, [this](const Statement& row) {
            m_editions.note(row.whole(0), static_cast<int>(m_history.editions.size()));
            m_history.editions.push_back({row.text(1), row.text(2)});
        });
    }

    void readLayers() {
        eachRow(layersSql, m_scope ? &m_scope->layers : nullptr, [this](const Statement& row) {
            m_layers.note(row.whole(0), static_cast<int>(m_history.layers.size()));
            m_history.layers.push_back({m_editions.of(row, 1), static_cast<int>(row.whole(2)),
                                        realOrNotKnown(row, 3), row.text(4)});
        });
    }

    void readLots() {
        eachRow(lotsSql, m_scope ? &m_scope->lots : nullptr, [this](const Statement& row) {
            m_lots.note(row.whole(0), static_cast<int>(m_history.lots.size()));
            m_history.lots.push_back(wordAt<LotKind>(row, 1));
        });
    }

    void readMixes() {
        eachRow(mixesSql, m_scope ? &m_scope->mixes : nullptr, [this](const Statement& row) {
            m_mixes.note(row.whole(0), static_cast<int>(m_history.mixCount++));
        });
    }

    void readWeighings() {
        eachRow(weighingsSql, m_scope ? &m_scope->weighings : nullptr,
                [this](const Statement& row) {
                    HistoryWeighing weighing;
                    weighing.mix = m_mixes.of(row, 0);
                    weighing.act = wordAt<WeighingAct>(row, 1);
                    weighing.lot = m_lots.of(row, 2);
                    weighing.fromMix = m_mixes.of(row, 3);
                    weighing.at = spanAt(row, 4);
                    weighing.sequence = static_cast<int>(row.whole(6));
                    weighing.mass_g = realOrNotKnown(row, 7);
                    weighing.massLow_g = realOrNotKnown(row, 8);
                    weighing.massHigh_g = realOrNotKnown(row, 9);
                    m_history.weighings.push_back(weighing);
                });
    }

    void readPulls() {
        eachRow(pullsSql, m_scope ? &m_scope->pulls : nullptr, [this](const Statement& row) {
            m_pulls.note(row.whole(0), static_cast<int>(m_history.pulls.size()));
            HistoryPull pull;
            pull.layer = m_layers.of(row, 1);
            pull.portion = m_mixes.of(row, 2);
            pull.start = spanAt(row, 3);
            if (!row.isNull(5) && !row.isNull(6))
                pull.inkUsed_g = row.real(5) - row.real(6);
            m_history.pulls.push_back(pull);
        });
    }

    void readPlaces() {
        Statement row = m_database.prepare(placesSql);
        std::vector<std::int64_t> within;
        while (row.step()) {
            m_places.note(row.whole(0), static_cast<int>(m_history.places.size()));
            HistoryPlace place;
            place.id = row.text(1);
            place.name = row.text(2);
            place.placeKind = wordAt<PlaceKind>(row, 3);
            place.atHolder = !row.isNull(5) || place.placeKind == PlaceKind::holderAddress;
            within.push_back(row.isNull(4) ? 0 : row.whole(4));
            m_history.places.push_back(std::move(place));
        }
        for (std::size_t i = 0; i < within.size(); ++i)
            m_history.places[i].within = within[i] == 0 ? -1 : m_places.of(within[i]);
    }

    void readLight() {
        Statement row = m_database.prepare(lightSql);
        int current = -1;
        while (row.step()) {
            const std::uint32_t place = m_places.mustHave(row.whole(0));
            HistoryPlace& owner = m_history.places[place];
            if (static_cast<int>(place) != current)
                owner.lightBegin = m_history.light.size();
            current = static_cast<int>(place);
            HistoryLight light;
            light.from =
                row.isNull(1) ? TimeSpan{beginningOfTime, beginningOfTime} : spanAt(row, 1);
            light.lightKind = wordAt<LightKind>(row, 3);
            m_history.light.push_back(light);
            owner.lightEnd = m_history.light.size();
        }
    }

    void readMoves() {
        eachRow(movesSql, m_scope ? &m_scope->moves : nullptr, [this](const Statement& row) {
            m_moves.note(row.whole(0), static_cast<int>(m_history.moves.size()));
            HistoryMove move;
            move.to = m_places.of(row, 1);
            move.from = m_places.of(row, 2);
            move.at = spanAt(row, 3);
            move.hasUntil = !row.isNull(5);
            if (move.hasUntil)
                move.until = spanAt(row, 5);
            move.why = wordAt<MoveWhy>(row, 7);
            move.interleaved = row.whole(8) != 0;
            m_history.moves.push_back(move);
        });
    }

    void readLooks() {
        eachRow(looksSql, m_scope ? &m_scope->looks : nullptr, [this](const Statement& row) {
            m_looks.note(row.whole(0), static_cast<int>(m_history.looks.size()));
            HistoryLook look;
            look.at = spanAt(row, 1);
            look.hasTouch = !row.isNull(3);
            if (look.hasTouch)
                look.touch = wordAt<Touch>(row, 3);
            look.hasColour = !row.isNull(4);
            if (look.hasColour)
                look.colour = wordAt<LookColour>(row, 4);
            look.hasReading = !row.isNull(5);
            m_history.looks.push_back(look);
        });
    }

    void addImpression(const Statement& row) {
        m_impressions.note(row.whole(0), static_cast<int>(m_history.impressions.size()));
        HistoryImpression impression;
        impression.key = row.whole(0);
        impression.edition = m_editions.of(row, 1);
        impression.workingNumber = static_cast<int>(row.whole(2));
        impression.fate = wordAt<ImpressionFate>(row, 3);
        impression.withHolder = !row.isNull(4);
        if (!row.isNull(5))
            impression.fateFrom = row.whole(5);
        m_history.impressions.push_back(impression);
    }

    void sortImpressions() {
        std::vector<HistoryImpression>& all = m_history.impressions;
        std::sort(all.begin(), all.end(),
                  [](const HistoryImpression& a, const HistoryImpression& b) {
                      return a.edition != b.edition ? a.edition < b.edition
                                                    : a.workingNumber < b.workingNumber;
                  });
        for (std::size_t i = 0; i < all.size(); ++i)
            m_impressions.note(all[i].key, static_cast<int>(i));
    }

    void readImpressions() {
        const std::string select = impressionsSql;
        if (!m_filter.impressions) {
            Statement row = m_database.prepare(
                select +
                (m_filter.edition ? " WHERE edition = (SELECT key FROM edition WHERE id = ?)"
                                  : "") +
                impressionsOrder);
            if (m_filter.edition)
                row.bindText(1, *m_filter.edition);
            while (row.step())
                addImpression(row);
            return;
        }
        Statement row = m_database.prepare(
            select + " WHERE id = ?1" +
            (m_filter.edition ? " AND edition = (SELECT key FROM edition WHERE id = ?2)" : ""));
        for (const std::string& id : *m_filter.impressions) {
            row.bindText(1, id);
            if (m_filter.edition)
                row.bindText(2, *m_filter.edition);
            if (row.step())
                addImpression(row);
            row.reset();
        }
        sortImpressions();
    }

    bool wantsAll() const { return !m_filter.impressions && !m_filter.edition; }

    // Calls with position of the impression and key of what the row names: the whole table, or what
    // an index gives for each wanted impression. In the order of recording for each impression.
    template <class Note>
    void eachPair(const char* sql, Note&& note) {
        if (wantsAll()) {
            Statement row = m_database.prepare(sql);
            while (row.step())
                note(m_impressions.mustHave(row.whole(0)), row.whole(1));
            return;
        }
        Statement row = m_database.prepare(std::string(sql) + " WHERE impression = ?");
        for (std::size_t i = 0; i < m_history.impressions.size(); ++i) {
            row.bind(1, m_history.impressions[i].key);
            while (row.step())
                note(static_cast<std::uint32_t>(i), row.whole(1));
            row.reset();
        }
    }

    // Counted first and read then: of all that is read these are the longest, so nothing of them is
    // kept twice.
    RowLists lists(const std::vector<const char*>& sqls, const Positions& items) {
        RowLists lists;
        lists.offsets.assign(m_history.impressions.size() + 1, 0);
        for (const char* sql : sqls)
            eachPair(sql, [&](std::uint32_t impression, std::int64_t) {
                ++lists.offsets[impression + 1];
            });
        for (std::size_t i = 1; i < lists.offsets.size(); ++i)
            lists.offsets[i] += lists.offsets[i - 1];
        lists.items.resize(lists.offsets.back());
        std::vector<std::uint32_t> next(lists.offsets.begin(), lists.offsets.end() - 1);
        for (const char* sql : sqls)
            eachPair(sql, [&](std::uint32_t impression, std::int64_t item) {
                lists.items[next[impression]++] = items.mustHave(item);
            });
        if (sqls.size() > 1)
            for (std::size_t i = 0; i + 1 < lists.offsets.size(); ++i)
                std::sort(lists.items.begin() + lists.offsets[i],
                          lists.items.begin() + lists.offsets[i + 1]);
        return lists;
    }

    Database& m_database;
    const HistoryFilter& m_filter;
    const HistoryScope* m_scope;  // nullptr: all rows
    History m_history;
    Positions m_editions{m_scope != nullptr};
    Positions m_layers{m_scope != nullptr};
    Positions m_lots{m_scope != nullptr};
    Positions m_mixes{m_scope != nullptr};
    Positions m_pulls{m_scope != nullptr};
    Positions m_places{false};
    Positions m_moves{m_scope != nullptr};
    Positions m_looks{m_scope != nullptr};
    Positions m_impressions{m_scope != nullptr};
};

}  // namespace

History historyIn(const BookFile& book, const HistoryFilter& filter) {
    return HistoryLoad(*book.inner().database, filter, nullptr).run();
}

History inkHistoryIn(const BookFile& book) {
    return HistoryLoad(*book.inner().database, {}, nullptr).runInk();
}

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
    return {HistoryLoad(database, filter, &scope).run(),
            idsOf(database, RecordKind::look, scope.looks)};
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
    const HistoryFilter filter;
    part.history = HistoryLoad(database, filter, &scope).runInk();
    part.lots = idsOf(database, RecordKind::lot, scope.lots);
    part.mixes = idsOf(database, RecordKind::mix, scope.mixes);
    part.weighings = idsOf(database, RecordKind::weighing, scope.weighings);
    part.pulls = idsOf(database, RecordKind::pull, scope.pulls);
    return part;
}

std::size_t positionIn(const std::vector<std::string>& ids, const std::string& id) {
    return static_cast<std::size_t>(std::find(ids.begin(), ids.end(), id) - ids.begin());
}

std::vector<ImpressionLabel> labelsOf(const BookFile& book, const History& history) {
    Statement row = book.inner().database->prepare(
        "SELECT i.id, e.code, i.workingNumber, i.designation FROM impression i JOIN edition e ON "
        "e.key = i.edition WHERE i.key = ?");
    std::vector<ImpressionLabel> labels;
    labels.reserve(history.impressions.size());
    for (const HistoryImpression& impression : history.impressions) {
        row.bind(1, impression.key);
        row.step();
        labels.push_back({row.text(0), row.text(1), static_cast<int>(row.whole(2)), row.text(3)});
        row.reset();
    }
    return labels;
}

std::vector<std::string> historyQueries() {
    std::vector<std::string> queries = inkHistoryQueries();
    for (const std::string& query :
         {std::string(placesSql), std::string(lightSql), movesSql + std::string(inOrder),
          looksSql + std::string(inOrder), std::string(impressionsSql) + impressionsOrder,
          std::string(pullListSql), std::string(moveListSql), std::string(lookListSql),
          std::string(standsForSql)})
        queries.push_back(query);
    return queries;
}

std::vector<std::string> inkHistoryQueries() {
    std::vector<std::string> queries;
    for (const char* query : {editionsSql, layersSql, lotsSql, mixesSql, weighingsSql, pullsSql})
        queries.push_back(query + std::string(inOrder));
    return queries;
}

}  // namespace rackbook
