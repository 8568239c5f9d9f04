#include "calc/OneLotUse.h"

#include <algorithm>
#include <cmath>

#include "calc/EstimateMath.h"

namespace rackbook {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double monthsOfLastYear = 12;
// Use within a day says nothing about use in a month.
constexpr double fewestDays = 1;

double daysBetween(CivilMinute from, CivilMinute to) {
    return static_cast<double>(to - from) / static_cast<double>(minutesPerDay);
}

// Far future days stay within the clock's range.
CivilMinute dayAfter(CivilMinute start, double days) {
    const double end = static_cast<double>(start) + days * static_cast<double>(minutesPerDay);
    return end < static_cast<double>(endOfTime) ? static_cast<CivilMinute>(end) : endOfTime;
}

bool isCertainlyAfter(const TimeSpan& at, const HistoryStockTake* take) {
    return take == nullptr || at.earliest > take->at.latest;
}

bool isPossiblyAfter(const TimeSpan& at, const HistoryStockTake* take) {
    return take == nullptr || at.latest > take->at.earliest;
}

}  // namespace

LotUse OneLotUse::result() {
    std::stable_sort(
        m_stockTakes.begin(), m_stockTakes.end(),
        [](const Placed& a, const Placed& b) { return a.take.at.latest < b.take.at.latest; });
    sumUp();
    reckonLeft();
    m_use.lastYear = rateOver(monthsOfLastYear * daysPerMonth);
    m_use.sinceOpened = rateOver(infinite);
    reckonRunningOut();
    reckonCost();
    return std::move(m_use);
}

void OneLotUse::sumUp() {
    m_use.used_g = takenBetween(nullptr, nullptr);
}

void OneLotUse::reckonLeft() {
    Estimate left =
        std::isnan(m_facts.netMass_g) ? Estimate::anyMass() : Estimate::exactly(m_facts.netMass_g);
    const HistoryStockTake* last = nullptr;
    for (const Placed& placed : m_stockTakes) {
        const Estimate taken = takenBetween(last, &placed.take);
        const Estimate found = Estimate::exactly(placed.take.mass_g);
        const Estimate expected = {left.low - taken.high, left.best - taken.best,
                                   std::isinf(left.high) ? infinite : left.high - taken.low};
        m_use.differences.push_back({placed.position, expected, differenceOf(found, expected)});
        left = found;
        last = &placed.take;
    }
    const Estimate taken = takenBetween(last, nullptr);
    m_use.left_g = atLeastNothing({left.low - taken.high, left.best - taken.best,
                                   std::isinf(left.high) ? infinite : left.high - taken.low});
    if (m_facts.finished && m_facts.finished->latest <= m_asOf)
        m_use.left_g = Estimate::exactly(0);
}

Estimate OneLotUse::takenBetween(const HistoryStockTake* after,
                                 const HistoryStockTake* before) const {
    Estimate taken = Estimate::exactly(0);
    for (const LotTaking& taking : m_use.takings) {
        const bool fallsAfter = isCertainlyAfter(taking.at, after);
        const bool fallsBefore = before == nullptr || !isCertainlyAfter(taking.at, before);
        const bool surelyBefore = before == nullptr || !isPossiblyAfter(taking.at, before);
        if (fallsAfter && surelyBefore)
            taken.low += taking.mass_g.low;
        if (fallsAfter && fallsBefore)
            taken.best += taking.mass_g.best;
        if (isPossiblyAfter(taking.at, after) && fallsBefore)
            taken.high += taking.mass_g.high;
    }
    return taken;
}

std::optional<TimeSpan> OneLotUse::openedSpan() const {
    if (m_facts.opened)
        return m_facts.opened;
    std::optional<TimeSpan> first;
    for (const LotTaking& taking : m_use.takings)
        if (!first || taking.at.earliest < first->earliest)
            first = taking.at;
    return first;
}

CivilMinute OneLotUse::until() const {
    return m_facts.finished ? std::min(m_asOf, m_facts.finished->latest) : m_asOf;
}

UseRate OneLotUse::rateOver(double mostDays) const {
    UseRate rate;
    const std::optional<TimeSpan> opened = openedSpan();
    if (!opened || opened->earliest > until())
        return rate;
    const double longest = std::min(mostDays, daysBetween(opened->earliest, until()));
    const double shortest =
        std::min(mostDays, daysBetween(std::min(opened->latest, until()), until()));
    const auto start =
        std::max(opened->earliest,
                 until() - static_cast<CivilMinute>(std::llround(
                               std::min(longest, mostDays) * static_cast<double>(minutesPerDay))));
    Estimate taken = Estimate::exactly(0);
    for (const LotTaking& taking : m_use.takings) {
        if (taking.at.latest < start || taking.at.earliest > until())
            continue;
        ++rate.weighings;
        taken.low += taking.at.earliest >= start ? taking.mass_g.low : 0;
        taken.best += taking.mass_g.best;
        taken.high += taking.mass_g.high;
    }
    rate.days = (longest + shortest) / 2;
    if (longest < fewestDays)
        return rate;
    const double perMonth = daysPerMonth;
    rate.perMonth_g.low = taken.low * perMonth / longest;
    rate.perMonth_g.best = taken.best * perMonth / rate.days;
    rate.perMonth_g.high = taken.high * perMonth / std::max(fewestDays, shortest);
    return rate;
}

// The recent rate, with the bounds of both.
Estimate OneLotUse::presentRate() const {
    const Estimate& recent = m_use.lastYear.perMonth_g;
    const Estimate& whole = m_use.sinceOpened.perMonth_g;
    return {std::min(recent.low, whole.low), recent.best, std::max(recent.high, whole.high)};
}

void OneLotUse::reckonRunningOut() {
    if (m_facts.opened && !std::isnan(m_facts.openedLife_days))
        m_use.lifeEnds = TimeSpan{dayAfter(m_facts.opened->earliest, m_facts.openedLife_days),
                                  dayAfter(m_facts.opened->latest, m_facts.openedLife_days)};
    const Estimate rate = presentRate();
    const bool finished = m_facts.finished && m_facts.finished->latest <= m_asOf;
    if (finished || rate.high <= 0 || std::isinf(rate.high) || std::isinf(m_use.left_g.high))
        return;
    const double latest = rate.low > 0 ? m_use.left_g.high / rate.low * daysPerMonth : infinite;
    m_use.runsOut = TimeSpan{dayAfter(m_asOf, m_use.left_g.low / rate.high * daysPerMonth),
                             dayAfter(m_asOf, latest)};
    if (!m_use.lifeEnds)
        return;
    if (m_use.runsOut->latest <= m_use.lifeEnds->earliest)
        m_use.runsOutBeforeLifeEnds = BeforeLifeEnds::yes;
    else if (m_use.runsOut->earliest > m_use.lifeEnds->latest)
        m_use.runsOutBeforeLifeEnds = BeforeLifeEnds::no;
}

void OneLotUse::reckonCost() {
    const bool finished = m_facts.finished && m_facts.finished->latest <= m_asOf;
    m_use.costIsProjected = !finished;
    if (std::isnan(m_facts.price))
        return;
    Estimate used = m_use.used_g;
    if (!finished) {
        const Estimate rate = presentRate();
        if (rate.high <= 0)
            return;
        Estimate months = {infinite, infinite, infinite};
        if (m_use.lifeEnds) {
            const auto left = [&](CivilMinute end) {
                return std::max(0.0, daysBetween(m_asOf, end)) / daysPerMonth;
            };
            months = {left(m_use.lifeEnds->earliest), 0, left(m_use.lifeEnds->latest)};
            months.best = (months.low + months.high) / 2;
        }
        const auto yet = [](double perMonth, double span, double left) {
            if (perMonth == 0)
                return 0.0;
            return std::isnan(perMonth) ? notKnown : std::min(left, perMonth * span);
        };
        used = sumOf(
            used, {yet(rate.low, months.low, m_use.left_g.low),
                   std::isnan(m_use.left_g.best) ? notKnown
                                                 : yet(rate.best, months.best, m_use.left_g.best),
                   yet(rate.high, months.high, m_use.left_g.high)});
    }
    m_use.costPerGram = quotientOf(Estimate::exactly(m_facts.price), used);
}

}  // namespace rackbook
