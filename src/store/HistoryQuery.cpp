#include "store/HistoryQuery.h"

#include <algorithm>
#include <string_view>

#include "base/Error.h"
#include "store/BookInner.h"

namespace rackbook {

namespace {

constexpr const char* editionsSql = "SELECT key, id, code FROM edition ORDER BY key";
constexpr const char* layersSql =
    "SELECT key, edition, ordinal, extenderShare, colourWords FROM layer ORDER BY key";
constexpr const char* lotsSql = "SELECT key, lotKind FROM lot ORDER BY key";
constexpr const char* mixesSql = "SELECT key FROM mix ORDER BY key";
constexpr const char* weighingsSql =
    "SELECT mix, act, lot, fromMix, atEarliest, atLatest, sequence, mass_g, massLow_g, massHigh_g "
    "FROM weighing ORDER BY key";
constexpr const char* pullsSql =
    "SELECT key, layer, portion, startEarliest, startLatest, inkBefore_g, inkAfter_g FROM pull "
    "ORDER BY key";
constexpr const char* placesSql =
    "SELECT key, id, name, placeKind, within, holder FROM place ORDER BY key";
constexpr const char* lightSql =
    "SELECT place, fromEarliest, fromLatest, lightKind FROM place_light ORDER BY place, position";
constexpr const char* movesSql =
    "SELECT key, \"to\", \"from\", atEarliest, atLatest, untilEarliest, untilLatest, why, "
    "interleaved FROM move ORDER BY key";
constexpr const char* looksSql =
    "SELECT key, atEarliest, atLatest, touch, colour, reading FROM look ORDER BY key";
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

// Positions by key: keys are small and dense.
class Positions {
public:
    void note(std::int64_t key, int position) {
        constexpr std::int64_t highestKey = 1'000'000'000;
        if (key < 0 || key > highestKey)
            throw damaged("a row has the number " + std::to_string(key));
        if (key >= static_cast<std::int64_t>(m_positions.size()))
            m_positions.resize(static_cast<std::size_t>(key) + 1, -1);
        m_positions[static_cast<std::size_t>(key)] = position;
    }
    int of(std::int64_t key) const {
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
    std::vector<int> m_positions;
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
    HistoryLoad(Database& database, const HistoryFilter& filter)
        : m_database(database), m_filter(filter) {}

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
        return std::move(m_history);
    }

private:
    void readInk() {
        readEditions();
        readLayers();
        readLots();
        readMixes();
        readWeighings();
        readPulls();
    }

    void readEditions() {
        Statement row = m_database.prepare(editionsSql);
        while (row.step()) {
            m_editions.note(row.whole(0), static_cast<int>(m_history.editions.size()));
            m_history.editions.push_back({row.text(1), row.text(2)});
        }
    }

    void readLayers() {
        Statement row = m_database.prepare(layersSql);
        while (row.step()) {
            m_layers.note(row.whole(0), static_cast<int>(m_history.layers.size()));
            m_history.layers.push_back({m_editions.of(row, 1), static_cast<int>(row.whole(2)),
                                        realOrNotKnown(row, 3), row.text(4)});
        }
    }

    void readLots() {
        Statement row = m_database.prepare(lotsSql);
        while (row.step()) {
            m_lots.note(row.whole(0), static_cast<int>(m_history.lots.size()));
            m_history.lots.push_back(wordAt<LotKind>(row, 1));
        }
    }

    void readMixes() {
        Statement row = m_database.prepare(mixesSql);
        while (row.step())
            m_mixes.note(row.whole(0), static_cast<int>(m_history.mixCount++));
    }

    void readWeighings() {
        Statement row = m_database.prepare(weighingsSql);
        while (row.step()) {
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
        }
    }

    void readPulls() {
        Statement row = m_database.prepare(pullsSql);
        while (row.step()) {
            m_pulls.note(row.whole(0), static_cast<int>(m_history.pulls.size()));
            HistoryPull pull;
            pull.layer = m_layers.of(row, 1);
            pull.portion = m_mixes.of(row, 2);
            pull.start = spanAt(row, 3);
            if (!row.isNull(5) && !row.isNull(6))
                pull.inkUsed_g = row.real(5) - row.real(6);
            m_history.pulls.push_back(pull);
        }
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
        Statement row = m_database.prepare(movesSql);
        while (row.step()) {
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
        }
    }

    void readLooks() {
        Statement row = m_database.prepare(looksSql);
        while (row.step()) {
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
        }
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

    struct Pair {
        std::uint32_t impression;
        std::uint32_t item;
    };

    // Pairs of impression and item from list tables: the whole table in its own order, or what an
    // index gives for each wanted impression.
    std::vector<Pair> pairs(const std::vector<const char*>& sqls, const Positions& items) {
        std::vector<Pair> found;
        for (const char* sql : sqls) {
            if (wantsAll()) {
                Statement row = m_database.prepare(sql);
                while (row.step())
                    found.push_back(
                        {m_impressions.mustHave(row.whole(0)), items.mustHave(row.whole(1))});
                continue;
            }
            Statement row = m_database.prepare(std::string(sql) + " WHERE impression = ?");
            for (std::size_t i = 0; i < m_history.impressions.size(); ++i) {
                row.bind(1, m_history.impressions[i].key);
                while (row.step())
                    found.push_back({static_cast<std::uint32_t>(i), items.mustHave(row.whole(1))});
                row.reset();
            }
        }
        return found;
    }

    // Counting sort by impression; stable, so that the order of recording is kept within a table.
    RowLists lists(const std::vector<const char*>& sqls, const Positions& items) {
        const std::vector<Pair> found = pairs(sqls, items);
        RowLists lists;
        lists.offsets.assign(m_history.impressions.size() + 1, 0);
        for (const Pair& pair : found)
            ++lists.offsets[pair.impression + 1];
        for (std::size_t i = 1; i < lists.offsets.size(); ++i)
            lists.offsets[i] += lists.offsets[i - 1];
        lists.items.resize(found.size());
        std::vector<std::uint32_t> next(lists.offsets.begin(), lists.offsets.end() - 1);
        for (const Pair& pair : found)
            lists.items[next[pair.impression]++] = pair.item;
        if (sqls.size() > 1)
            for (std::size_t i = 0; i + 1 < lists.offsets.size(); ++i)
                std::sort(lists.items.begin() + lists.offsets[i],
                          lists.items.begin() + lists.offsets[i + 1]);
        return lists;
    }

    Database& m_database;
    const HistoryFilter& m_filter;
    History m_history;
    Positions m_editions;
    Positions m_layers;
    Positions m_lots;
    Positions m_mixes;
    Positions m_pulls;
    Positions m_places;
    Positions m_moves;
    Positions m_looks;
    Positions m_impressions;
};

}  // namespace

History historyIn(const BookFile& book, const HistoryFilter& filter) {
    return HistoryLoad(*book.inner().database, filter).run();
}

History inkHistoryIn(const BookFile& book) {
    return HistoryLoad(*book.inner().database, {}).runInk();
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
         {std::string(placesSql), std::string(lightSql), std::string(movesSql),
          std::string(looksSql), std::string(impressionsSql) + impressionsOrder,
          std::string(pullListSql), std::string(moveListSql), std::string(lookListSql),
          std::string(standsForSql)})
        queries.push_back(query);
    return queries;
}

std::vector<std::string> inkHistoryQueries() {
    return {editionsSql, layersSql, lotsSql, mixesSql, weighingsSql, pullsSql};
}

}  // namespace rackbook
