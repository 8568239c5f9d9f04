// Properties that hold for any history, tried on histories made at random from fixed seeds.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <random>

#include "calc/MixLedger.h"

namespace rackbook {
namespace {

constexpr std::size_t kinds = 4;

TimeSpan at(CivilMinute minute) {
    return {minute, minute};
}

// Chains of mixes over lots of four kinds; every withdrawal is covered.
class RandomBook {
public:
    RandomBook(unsigned seed, std::size_t mixes, std::size_t events) : m_random(seed) {
        for (std::size_t i = 0; i < 12; ++i)
            history.lots.push_back(static_cast<LotKind>(i % kinds));
        history.mixCount = mixes;
        history.layers.resize(1);
        m_held_g.assign(mixes, 0);
        for (std::size_t i = 0; i < events; ++i)
            addEvent(static_cast<CivilMinute>(i));
    }

    History history;

private:
    double upTo(double most) {
        return std::uniform_real_distribution<double>(0.01, most)(m_random);
    }
    int below(std::size_t n) {
        return static_cast<int>(std::uniform_int_distribution<std::size_t>(0, n - 1)(m_random));
    }

    void addEvent(CivilMinute minute) {
        const int mix = below(history.mixCount);
        double& held_g = m_held_g[static_cast<std::size_t>(mix)];
        const int act = below(10);
        if (held_g < 1 || act < 4)
            addition(mix, minute);
        else if (act < 6)
            weigh(mix, act == 4 ? WeighingAct::discard : WeighingAct::withdraw, minute,
                  upTo(held_g * 0.5));
        else if (act < 8)
            pull(mix, minute, upTo(held_g * 0.3));
        else if (mix + 1 < static_cast<int>(history.mixCount))
            onward(mix, minute, upTo(held_g * 0.5));
    }

    void addition(int mix, CivilMinute minute) {
        weigh(mix, WeighingAct::add, minute, upTo(50));
        history.weighings.back().lot = below(history.lots.size());
    }

    void weigh(int mix, WeighingAct act, CivilMinute minute, double mass_g) {
        HistoryWeighing row;
        row.mix = mix;
        row.act = act;
        row.at = at(minute);
        row.mass_g = mass_g;
        history.weighings.push_back(row);
        m_held_g[static_cast<std::size_t>(mix)] += act == WeighingAct::add ? mass_g : -mass_g;
    }

    void onward(int mix, CivilMinute minute, double mass_g) {
        const std::size_t rest = history.mixCount - static_cast<std::size_t>(mix) - 1;
        weigh(mix + 1 + below(rest), WeighingAct::add, minute, mass_g);
        history.weighings.back().fromMix = mix;
        m_held_g[static_cast<std::size_t>(mix)] -= mass_g;
    }

    void pull(int mix, CivilMinute minute, double mass_g) {
        history.pulls.push_back({0, mix, at(minute), mass_g});
        m_held_g[static_cast<std::size_t>(mix)] -= mass_g;
    }

    std::mt19937 m_random;
    std::vector<double> m_held_g;
};

// The same balance kept another way: the mass of each kind in each mix, in long double, one event
// at a time in the order of their times. Every minute has one event.
struct Balance {
    std::vector<std::array<long double, kinds>> in;
    std::array<long double, kinds> added = {};
    std::array<long double, kinds> gone = {};

    explicit Balance(const History& history) : in(history.mixCount) {
        struct Event {
            CivilMinute minute;
            const HistoryWeighing* weighing;
            const HistoryPull* pull;
        };
        std::vector<Event> events;
        for (const HistoryWeighing& row : history.weighings)
            events.push_back({row.at.earliest, &row, nullptr});
        for (const HistoryPull& row : history.pulls)
            events.push_back({row.start.earliest, nullptr, &row});
        std::sort(events.begin(), events.end(),
                  [](const Event& a, const Event& b) { return a.minute < b.minute; });
        for (const Event& event : events)
            if (event.pull)
                take(event.pull->portion, event.pull->inkUsed_g, gone);
            else
                work(history, *event.weighing);
    }

    void work(const History& history, const HistoryWeighing& row) {
        if (row.act != WeighingAct::add) {
            take(row.mix, row.mass_g, gone);
        } else if (row.lot >= 0) {
            const auto kind =
                static_cast<std::size_t>(history.lots[static_cast<std::size_t>(row.lot)]);
            in[static_cast<std::size_t>(row.mix)][kind] += row.mass_g;
            added[kind] += row.mass_g;
        } else {
            take(row.fromMix, row.mass_g, in[static_cast<std::size_t>(row.mix)]);
        }
    }

    void take(int mix, double mass_g, std::array<long double, kinds>& into) {
        std::array<long double, kinds>& from = in[static_cast<std::size_t>(mix)];
        const long double total = total_g(static_cast<std::size_t>(mix));
        for (std::size_t kind = 0; kind < kinds; ++kind) {
            const long double part = from[kind] / total * mass_g;
            from[kind] -= part;
            into[kind] += part;
        }
    }

    long double total_g(std::size_t mix) const {
        long double total = 0;
        for (const long double mass : in[mix])
            total += mass;
        return total;
    }
};

class MixLedgerProperty : public testing::TestWithParam<unsigned> {};

TEST_P(MixLedgerProperty, MassesBalanceToOnePartInABillion) {
    const RandomBook book(GetParam(), 60, 20000);
    const MixLedger ledger(ledgerByKind(book.history));
    const Balance balance(book.history);
    EXPECT_TRUE(ledger.overdraws().empty());
    std::array<long double, kinds> left = {};
    for (std::size_t mix = 0; mix < book.history.mixCount; ++mix) {
        const MixContents contents = ledger.atEnd(mix);
        const long double expected_g = balance.total_g(mix);
        EXPECT_NEAR(contents.total_g.best, static_cast<double>(expected_g),
                    1e-9 * std::max(1.0, static_cast<double>(expected_g)));
        for (const MixPart& part : contents.parts) {
            const auto kind = static_cast<std::size_t>(part.constituent);
            left[kind] += static_cast<long double>(part.share.best) * contents.total_g.best;
            EXPECT_NEAR(part.share.best, static_cast<double>(balance.in[mix][kind] / expected_g),
                        1e-9);
        }
    }
    for (std::size_t kind = 0; kind < kinds; ++kind)
        EXPECT_NEAR(static_cast<double>((left[kind] + balance.gone[kind]) / balance.added[kind]), 1,
                    1e-9);
}

TEST_P(MixLedgerProperty, ExactMassesGiveBoundsThatMeet) {
    const RandomBook book(GetParam(), 20, 2000);
    const MixLedger ledger(ledgerByKind(book.history));
    for (std::size_t pull = 0; pull < book.history.pulls.size(); ++pull)
        for (const MixPart& part : ledger.atPull(pull).parts) {
            EXPECT_NEAR(part.share.low, part.share.best, 1e-12);
            EXPECT_NEAR(part.share.high, part.share.best, 1e-12);
        }
}

TEST_P(MixLedgerProperty, BoundsHoldWhateverTheTrueMassesWere) {
    RandomBook book(GetParam(), 12, 300);
    const MixLedger truth(ledgerByKind(book.history));
    std::mt19937 random(GetParam());
    std::uniform_real_distribution<double> slack(0, 0.4);
    for (HistoryWeighing& row : book.history.weighings) {
        const unsigned way = random() % 4;
        if (way == 0)
            row.mass_g = notKnown;
        if (way != 1)
            continue;
        row.massLow_g = row.mass_g * (1 - slack(random));
        row.massHigh_g = row.mass_g * (1 + slack(random));
        row.mass_g = notKnown;
    }
    const MixLedger bounds(ledgerByKind(book.history));
    for (std::size_t pull = 0; pull < book.history.pulls.size(); ++pull)
        for (int kind = 0; kind < static_cast<int>(kinds); ++kind) {
            const double share = truth.shareAtPull(pull, kind).best;
            const Estimate bound = bounds.shareAtPull(pull, kind);
            EXPECT_LE(bound.low, share + 1e-12);
            EXPECT_GE(bound.high, share - 1e-12);
        }
}

TEST_P(MixLedgerProperty, TheOrderOfRecordingIsIrrelevant) {
    RandomBook book(GetParam(), 20, 2000);
    const MixLedger before(ledgerByKind(book.history));
    History shuffled = book.history;
    std::mt19937 random(GetParam());
    std::shuffle(shuffled.weighings.begin(), shuffled.weighings.end(), random);
    const MixLedger after(ledgerByKind(shuffled));
    for (std::size_t pull = 0; pull < book.history.pulls.size(); ++pull)
        for (int kind = 0; kind < static_cast<int>(kinds); ++kind)
            ASSERT_DOUBLE_EQ(before.shareAtPull(pull, kind).best,
                             after.shareAtPull(pull, kind).best);
}

TEST_P(MixLedgerProperty, LaterEventsTouchNoEarlierPull) {
    const RandomBook book(GetParam(), 20, 2000);
    const MixLedger whole(ledgerByKind(book.history));
    const MixLedger half(ledgerByKind(book.history, 1000));
    for (std::size_t pull = 0; pull < book.history.pulls.size(); ++pull) {
        if (book.history.pulls[pull].start.latest > 1000)
            continue;
        for (int kind = 0; kind < static_cast<int>(kinds); ++kind)
            ASSERT_EQ(whole.shareAtPull(pull, kind).best, half.shareAtPull(pull, kind).best);
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, MixLedgerProperty, testing::Values(1U, 7U, 42U, 2026U));

TEST(MixLedgerSpeed, WorksThroughAHundredThousandEventsInNoTime) {
    const RandomBook book(5, 2000, 100000);
    const auto begin = std::chrono::steady_clock::now();
    const MixLedger ledger(ledgerByKind(book.history));
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    RecordProperty("took_ms", std::to_string(took.count()));
    // A few tens of milliseconds with optimisation; generous for sanitizers and busy machines.
    EXPECT_LT(took.count(), 2000);
    EXPECT_GT(ledger.order().events.size(), 90000U);
}

}  // namespace
}  // namespace rackbook
