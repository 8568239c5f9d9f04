#include "store/HistoryScope.h"

#include <set>

namespace rackbook {

namespace {

using Keys = std::set<std::int64_t>;

std::vector<std::int64_t> listed(const Keys& keys) {
    return {keys.begin(), keys.end()};
}

class ScopeSearch {
public:
    explicit ScopeSearch(const Database& database)
        : m_edition(database.prepare("SELECT edition FROM impression WHERE key = ?")),
          m_pullsOf(database.prepare("SELECT pull FROM pull_impressions WHERE impression = ?")),
          m_movesOf(database.prepare("SELECT move FROM move_impressions WHERE impression = ?")),
          m_looksAt(database.prepare("SELECT look FROM look_impressions WHERE impression = ?")),
          m_looksFor(database.prepare("SELECT look FROM look_standsFor WHERE impression = ?")),
          m_pull(database.prepare("SELECT layer, portion FROM pull WHERE key = ?")),
          m_layer(database.prepare("SELECT edition FROM layer WHERE key = ?")),
          m_into(database.prepare("SELECT key, lot, fromMix FROM weighing WHERE mix = ?")),
          m_outOf(database.prepare("SELECT key, mix FROM weighing WHERE fromMix = ?")),
          m_printedWith(database.prepare("SELECT key FROM pull WHERE portion = ?")),
          m_outOfLot(database.prepare("SELECT key, mix FROM weighing WHERE lot = ?")) {}

    HistoryScope run(const HistorySeeds& seeds) {
        for (const std::int64_t impression : seeds.impressions)
            addImpression(impression);
        m_pulls.insert(seeds.pulls.begin(), seeds.pulls.end());
        for (const std::int64_t pull : listed(m_pulls))
            openPortion(pull);
        for (const std::int64_t mix : seeds.mixes)
            open(mix);
        followMixes();
        for (const std::int64_t lot : seeds.lots)
            addLot(lot);
        followBeginnings();
        for (const std::int64_t pull : m_pulls)
            addLayerOf(pull);
        return {listed(m_editions),  listed(m_layers), listed(m_lots),  listed(m_mixes),
                listed(m_weighings), listed(m_pulls),  listed(m_moves), listed(m_looks)};
    }

private:
    // All first columns of what a statement says of a key.
    static void insert(Statement& rows, std::int64_t key, Keys& into) {
        rows.bind(1, key);
        while (rows.step())
            into.insert(rows.whole(0));
        rows.reset();
    }

    void addImpression(std::int64_t impression) {
        insert(m_edition, impression, m_editions);
        insert(m_pullsOf, impression, m_pulls);
        insert(m_movesOf, impression, m_moves);
        insert(m_looksAt, impression, m_looks);
        insert(m_looksFor, impression, m_looks);
    }

    void openPortion(std::int64_t pull) {
        m_pull.bind(1, pull);
        if (m_pull.step() && !m_pull.isNull(1))
            open(m_pull.whole(1));
        m_pull.reset();
    }

    void addLayerOf(std::int64_t pull) {
        m_pull.bind(1, pull);
        if (m_pull.step() && m_layers.insert(m_pull.whole(0)).second)
            insert(m_layer, m_pull.whole(0), m_editions);
        m_pull.reset();
    }

    // To be told in whole.
    void open(std::int64_t mix) {
        if (m_whole.insert(mix).second)
            m_open.push_back(mix);
        m_mixes.insert(mix);
    }

    void followMixes() {
        while (!m_open.empty()) {
            const std::int64_t mix = m_open.back();
            m_open.pop_back();
            addAllInto(mix, [&](std::int64_t from) { open(from); });
            m_outOf.bind(1, mix);
            while (m_outOf.step()) {
                m_weighings.insert(m_outOf.whole(0));
                begin(m_outOf.whole(1));
            }
            m_outOf.reset();
            insert(m_printedWith, mix, m_pulls);
        }
    }

    void addLot(std::int64_t lot) {
        m_lots.insert(lot);
        m_outOfLot.bind(1, lot);
        while (m_outOfLot.step()) {
            m_weighings.insert(m_outOfLot.whole(0));
            begin(m_outOfLot.whole(1));
        }
        m_outOfLot.reset();
    }

    // Only what went into it is to be told.
    void begin(std::int64_t mix) {
        if (m_mixes.insert(mix).second)
            m_begun.push_back(mix);
    }

    void followBeginnings() {
        while (!m_begun.empty()) {
            const std::int64_t mix = m_begun.back();
            m_begun.pop_back();
            if (m_whole.count(mix) == 0)
                addAllInto(mix, [&](std::int64_t from) { begin(from); });
        }
    }

    template <class Follow>
    void addAllInto(std::int64_t mix, Follow&& follow) {
        std::vector<std::int64_t> sources;
        m_into.bind(1, mix);
        while (m_into.step()) {
            m_weighings.insert(m_into.whole(0));
            if (!m_into.isNull(1))
                m_lots.insert(m_into.whole(1));
            if (!m_into.isNull(2))
                sources.push_back(m_into.whole(2));
        }
        m_into.reset();
        for (const std::int64_t source : sources)
            follow(source);
    }

    Statement m_edition;
    Statement m_pullsOf;
    Statement m_movesOf;
    Statement m_looksAt;
    Statement m_looksFor;
    Statement m_pull;
    Statement m_layer;
    Statement m_into;
    Statement m_outOf;
    Statement m_printedWith;
    Statement m_outOfLot;
    Keys m_editions;
    Keys m_layers;
    Keys m_lots;
    Keys m_mixes;
    Keys m_weighings;
    Keys m_pulls;
    Keys m_moves;
    Keys m_looks;
    Keys m_whole;  // of m_mixes
    std::vector<std::int64_t> m_open;
    std::vector<std::int64_t> m_begun;
};

}  // namespace

HistoryScope scopeOf(const Database& database, const HistorySeeds& seeds) {
    return ScopeSearch(database).run(seeds);
}

}  // namespace rackbook
