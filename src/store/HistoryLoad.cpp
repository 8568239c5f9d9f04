#include "store/HistoryLoad.h"

#include <algorithm>

#include "records/EnumText.h"
#include "store/HistorySql.h"
#include "store/KeyPositions.h"

namespace rackbook {

namespace {

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
        throw damagedBook("it holds the unknown word \"" + row.text(column) + "\"");
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
        Statement row =
            m_database.prepare(sql + (keys == nullptr ? inOrderOfKeys : " WHERE key = ?"));
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
    RowLists lists(const std::vector<const char*>& sqls, const KeyPositions& items) {
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
    KeyPositions m_editions{m_scope != nullptr};
    KeyPositions m_layers{m_scope != nullptr};
    KeyPositions m_lots{m_scope != nullptr};
    KeyPositions m_mixes{m_scope != nullptr};
    KeyPositions m_pulls{m_scope != nullptr};
    KeyPositions m_places{false};
    KeyPositions m_moves{m_scope != nullptr};
    KeyPositions m_looks{m_scope != nullptr};
    KeyPositions m_impressions{m_scope != nullptr};
};

}  // namespace

History loadHistory(Database& database, const HistoryFilter& filter, const HistoryScope* scope) {
    return HistoryLoad(database, filter, scope).run();
}

History loadInkHistory(Database& database, const HistoryScope* scope) {
    const HistoryFilter all;
    return HistoryLoad(database, all, scope).runInk();
}

}  // namespace rackbook
