// Histories made at random, and their ledger kept in exact fractions with the GNU multiple
// precision library: a reckoning that shares nothing with the program's own but the rule of
// blending.
#pragma once

#include <gmpxx.h>

#include <algorithm>
#include <map>
#include <random>
#include <utility>
#include <vector>

#include "records/History.h"

namespace rackbook::exact {

// Every minute has one event, every withdrawal is covered, and masses are multiples of 1/64 g, so
// that they are the same number in binary and in fractions.
class RandomBook {
public:
    // Lots 0 … lots − 1 of all kinds in turn, or without drier.
    RandomBook(unsigned seed, int lots, int mixes, bool withDrier) : m_random(seed) {
        const LotKind kinds[] = {LotKind::ink, LotKind::base, LotKind::modifier, LotKind::drier};
        for (int i = 0; i < lots; ++i)
            history.lots.push_back(kinds[i % (withDrier ? 4 : 3)]);
        history.mixCount = static_cast<std::size_t>(mixes);
        history.layers.resize(1);
        m_held.assign(history.mixCount, 0);
    }

    // Any mix is taken from for any other: leftovers go back, rings come about.
    RandomBook& tangle(int events) {
        for (int i = 0; i < events; ++i)
            anyEvent(0, static_cast<int>(history.mixCount), 0, lotCount(), true);
        return *this;
    }

    // Families of mixes with lots of their own, each mix made only of those before it.
    RandomBook& families(int events, int mixesOfEach, int lotsOfEach) {
        const int count =
            std::min(static_cast<int>(history.mixCount) / mixesOfEach, lotCount() / lotsOfEach);
        for (int i = 0; i < events; ++i) {
            const int family = below(count);
            anyEvent(family * mixesOfEach, mixesOfEach, family * lotsOfEach, lotsOfEach, false);
        }
        return *this;
    }

    History history;

private:
    int below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(m_random); }
    int lotCount() const { return static_cast<int>(history.lots.size()); }
    int& held(int mix) { return m_held[static_cast<std::size_t>(mix)]; }

    void anyEvent(int firstMix, int mixes, int firstLot, int lots, bool backToo) {
        const int place = below(mixes);
        const int mix = firstMix + place;
        const int act = below(10);
        const int part = 1 + below(std::max(1, held(mix) / 2));
        const int to = firstMix + (backToo ? below(mixes) : place + 1 + below(mixes));
        if (held(mix) < 64 || act < 3)
            weigh(mix, WeighingAct::add, firstLot + below(lots), -1, 1 + below(64 * 40));
        else if (act == 3)
            weigh(mix, below(2) == 0 ? WeighingAct::discard : WeighingAct::withdraw, -1, -1, part);
        else if (act < 6 || to == mix || to >= firstMix + mixes)
            pull(mix, part);
        else
            weigh(to, WeighingAct::add, -1, mix, part);
    }

    void weigh(int mix, WeighingAct act, int lot, int fromMix, int mass_64g) {
        HistoryWeighing row;
        row.mix = mix;
        row.act = act;
        row.lot = lot;
        row.fromMix = fromMix;
        row.at = {m_minute, m_minute};
        row.mass_g = mass_64g / 64.0;
        history.weighings.push_back(row);
        ++m_minute;
        held(mix) += act == WeighingAct::add ? mass_64g : -mass_64g;
        if (fromMix >= 0)
            held(fromMix) -= mass_64g;
    }

    void pull(int mix, int mass_64g) {
        HistoryPull row;
        row.layer = 0;
        row.portion = mix;
        row.start = {m_minute, m_minute};
        row.inkUsed_g = mass_64g / 64.0;
        history.pulls.push_back(row);
        ++m_minute;
        held(mix) -= mass_64g;
    }

    std::mt19937 m_random;
    CivilMinute m_minute = 0;
    std::vector<int> m_held;  // in 1/64 g
};

using Shares = std::map<int, mpq_class>;  // by lot

struct Taken {
    std::size_t weighing = 0;
    Shares shares;
};

// Pre: a history of RandomBook.
class Ledger {
public:
    explicit Ledger(const History& history)
        : shares(history.mixCount), total_g(history.mixCount), m_history(history) {
        std::vector<std::pair<CivilMinute, int>> events;  // pulls are numbered −1, −2 …
        for (std::size_t i = 0; i < history.weighings.size(); ++i)
            events.emplace_back(history.weighings[i].at.earliest, static_cast<int>(i));
        for (std::size_t i = 0; i < history.pulls.size(); ++i)
            events.emplace_back(history.pulls[i].start.earliest, -1 - static_cast<int>(i));
        std::sort(events.begin(), events.end());
        atPull.resize(history.pulls.size());
        for (const auto& [minute, row] : events)
            work(minute, row);
    }

    std::vector<Shares> shares;  // by mix, at the end
    std::vector<mpq_class> total_g;
    std::vector<Shares> atPull;
    std::vector<Taken> taken;  // withdrawn and discarded
    std::map<std::pair<int, CivilMinute>, Shares> afterAddition;

private:
    void work(CivilMinute minute, int row) {
        if (row < 0) {
            const auto i = static_cast<std::size_t>(-1 - row);
            const auto portion = static_cast<std::size_t>(m_history.pulls[i].portion);
            atPull[i] = shares[portion];
            total_g[portion] -= mpq_class(m_history.pulls[i].inkUsed_g);
            return;
        }
        const HistoryWeighing& weighing = m_history.weighings[static_cast<std::size_t>(row)];
        const auto mix = static_cast<std::size_t>(weighing.mix);
        if (weighing.act != WeighingAct::add) {
            taken.push_back({static_cast<std::size_t>(row), shares[mix]});
            total_g[mix] -= mpq_class(weighing.mass_g);
            return;
        }
        Shares added;
        if (weighing.fromMix >= 0) {
            added = shares[static_cast<std::size_t>(weighing.fromMix)];
            total_g[static_cast<std::size_t>(weighing.fromMix)] -= mpq_class(weighing.mass_g);
        } else {
            added[weighing.lot] = 1;
        }
        blend(mix, added, mpq_class(weighing.mass_g));
        afterAddition[{weighing.mix, minute}] = shares[mix];
    }

    void blend(std::size_t mix, const Shares& added, const mpq_class& mass_g) {
        const mpq_class whole = total_g[mix] + mass_g;
        for (auto& [lot, share] : shares[mix])
            share *= total_g[mix] / whole;
        for (const auto& [lot, share] : added)
            shares[mix][lot] += share * mass_g / whole;
        total_g[mix] = whole;
    }

    const History& m_history;
};

}  // namespace rackbook::exact
