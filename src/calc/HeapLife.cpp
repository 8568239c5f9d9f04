#include "calc/HeapLife.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "calc/Blend.h"
#include "calc/EventMass.h"
#include "calc/MixOrder.h"

namespace rackbook {

namespace {

constexpr double usual_C = 20;
constexpr double doubling_K = 10;
constexpr double nearShare = 0.75;
constexpr double minutesPerHour = 60;
constexpr double coldest_C = -50;
constexpr double warmest_C = 100;

struct Heap {
    std::optional<TimeSpan> filled;  // first addition since it was last empty
    std::optional<TimeSpan> drier;
    bool hasAdditions = false;
    bool wasThere = false;  // held more than the tolerance since it was filled
};

// Follows when heaps were filled and when drier came into them.
class HeapRun {
public:
    explicit HeapRun(const HeapQuestion& question) : m_question(question) {}

    void run() {
        const History& history = m_question.history;
        const MixOrder order =
            mixOrder(history.weighings, history.pulls, history.mixCount, m_question.asOf);
        m_heaps.resize(history.mixCount);
        for (std::size_t mix = 0; mix < history.mixCount; ++mix) {
            const bool recorded = order.additionsBegin[mix] < order.additionsBegin[mix + 1];
            m_heaps[mix].hasAdditions = recorded;
            m_totals.emplace_back(recorded ? Estimate::exactly(0) : Estimate::anyMass());
        }
        for (const LedgerEvent event : order.events)
            work(event);
    }

    const Heap& heap(std::size_t mix) const { return m_heaps[mix]; }
    Estimate left(std::size_t mix) const { return m_totals[mix].value(); }

private:
    void work(LedgerEvent event) {
        const History& history = m_question.history;
        if (event.isPull) {
            const HistoryPull& pull = history.pulls[event.row];
            m_totals[static_cast<std::size_t>(pull.portion)].take(massOf(pull));
            return;
        }
        const HistoryWeighing& weighing = history.weighings[event.row];
        if (weighing.act == WeighingAct::add)
            add(weighing);
        else
            m_totals[static_cast<std::size_t>(weighing.mix)].take(massOf(weighing));
    }

    void add(const HistoryWeighing& weighing) {
        const auto mix = static_cast<std::size_t>(weighing.mix);
        Heap& heap = m_heaps[mix];
        Estimate mass = massOf(weighing);
        std::optional<TimeSpan> drier;
        if (weighing.fromMix >= 0) {
            const auto from = static_cast<std::size_t>(weighing.fromMix);
            drier = m_heaps[from].drier;
            if (std::isinf(mass.high))
                mass.high = std::max(mass.low, m_totals[from].value().high);
            m_totals[from].take(mass);
        } else if (weighing.lot >= 0 &&
                   m_question.history.lots[static_cast<std::size_t>(weighing.lot)] ==
                       LotKind::drier) {
            drier = weighing.at;
        }
        if (heap.wasThere && m_totals[mix].value().best <= m_question.tolerance_g)
            heap = {{}, {}, heap.hasAdditions, false};
        if (!heap.filled)
            heap.filled = weighing.at;
        if (drier && (!heap.drier || drier->earliest < heap.drier->earliest))
            heap.drier = drier;
        m_totals[mix].add(mass);
        heap.wasThere = heap.wasThere || !(m_totals[mix].value().best <= m_question.tolerance_g);
    }

    const HeapQuestion& m_question;
    std::vector<Heap> m_heaps;
    std::vector<MixTotal> m_totals;
};

double hoursBetween(CivilMinute from, CivilMinute to) {
    return std::max(0.0, static_cast<double>(to - from)) / minutesPerHour;
}

HeapVerdict verdictAt(double age_h, double life_h) {
    if (age_h > life_h)
        return HeapVerdict::past;
    return age_h > nearShare * life_h ? HeapVerdict::nearItsEnd : HeapVerdict::lives;
}

CivilMinute endOf(CivilMinute since, double life_h) {
    const double end = static_cast<double>(since) + life_h * minutesPerHour;
    return end < static_cast<double>(endOfTime) ? static_cast<CivilMinute>(end) : endOfTime;
}

void judge(HeapLife& life, CivilMinute asOf) {
    const TimeSpan since = *life.since;
    life.age_h = {hoursBetween(since.latest, asOf), notKnown, hoursBetween(since.earliest, asOf)};
    if (since.earliest == since.latest)
        life.age_h.best = life.age_h.low;
    life.ends = TimeSpan{endOf(since.earliest, life.life_h), endOf(since.latest, life.life_h)};
    const HeapVerdict least = verdictAt(life.age_h.low, life.life_h);
    const HeapVerdict most = verdictAt(life.age_h.high, life.life_h);
    life.verdict = least == most ? least : HeapVerdict::cannotTell;
}

bool isNotThere(const HeapLife& life, const Heap& heap, const HeapFacts& facts,
                const HeapQuestion& question) {
    const bool finished = facts.finished && facts.finished->latest <= question.asOf;
    const bool notMadeYet = life.since ? life.since->earliest > question.asOf : heap.hasAdditions;
    return finished || notMadeYet || life.left_g.best <= question.tolerance_g ||
           life.left_g.high <= question.tolerance_g;
}

}  // namespace

double lifeAt(double life_h, double temperature_C) {
    return std::isnan(temperature_C) ? life_h
                                     : life_h * std::exp2((usual_C - temperature_C) / doubling_K);
}

std::vector<HeapLife> heapLives(const HeapQuestion& question) {
    if (!(question.lives.withDrier_h > 0) || !(question.lives.withoutDrier_h > 0))
        throw InputError("life of a heap", "it is not above 0", "Give it in hours at 20 °C.");
    if (question.temperature_C < coldest_C || question.temperature_C > warmest_C)
        throw InputError("temperature", "it is outside -50 … 100 °C", "Give it in °C.");
    HeapRun run(question);
    run.run();
    std::vector<HeapLife> lives(question.history.mixCount);
    for (std::size_t mix = 0; mix < lives.size(); ++mix) {
        HeapLife& life = lives[mix];
        const Heap& heap = run.heap(mix);
        const HeapFacts& facts = question.mixes[mix];
        life.left_g = run.left(mix);
        life.holdsDrier = heap.drier.has_value();
        life.life_h =
            lifeAt(life.holdsDrier ? question.lives.withDrier_h : question.lives.withoutDrier_h,
                   question.temperature_C);
        life.since = heap.drier ? heap.drier : heap.filled;
        if (!life.since)
            life.since = facts.made;
        if (isNotThere(life, heap, facts, question))
            life.verdict = HeapVerdict::notThere;
        else if (life.since)
            judge(life, question.asOf);
    }
    return lives;
}

}  // namespace rackbook
