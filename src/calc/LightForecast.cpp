#include "calc/LightForecast.h"

#include <algorithm>
#include <cmath>

#include "calc/EstimateMath.h"
#include "calc/Readiness.h"
#include "calc/ToldChance.h"

namespace rackbook {

namespace {

constexpr std::int64_t longest_days = 2 * 365;

std::int64_t daysMissing(double had, double needed) {
    return std::max<std::int64_t>(0, static_cast<std::int64_t>(std::ceil(needed - had - 1e-9)));
}

class Forecasting {
public:
    Forecasting(const LightModel& model, const ReadinessRow& row, int place, CivilMinute from)
        : m_model(model), m_row(row), m_place(place), m_from(from) {}

    // The first day on which the chance is reached and so many days have passed. More time is never
    // less light, so halving finds it.
    std::optional<std::int64_t> dayOfChance(double chance, std::int64_t leastDays) const {
        if (leastDays > longest_days || chanceAfter(longest_days) < chance)
            return std::nullopt;
        std::int64_t before = -1;
        std::int64_t by = longest_days;
        while (by - before > 1) {
            const std::int64_t middle = before + (by - before) / 2;
            (chanceAfter(middle) >= chance ? by : before) = middle;
        }
        return dayOf(m_from) + std::max(by, leastDays);
    }

private:
    double chanceAfter(std::int64_t days) const {
        const Estimate more =
            m_model.ledger.at(m_place, m_from, m_from + days * minutesPerDay).sunnyDays;
        const double chance = LightWanted::chanceBy(
            *m_row.wanted, sumOf(m_row.dose.sunnyDays, more), m_row.notYet_sunnyDays);
        return std::isnan(chance) ? 0 : chance;
    }

    const LightModel& m_model;
    const ReadinessRow& m_row;
    int m_place;
    CivilMinute m_from;
};

}  // namespace

ForecastChances forecastChancesOf(const ReadinessRow& row, const HouseRules& rules) {
    return {rules.value("lookChance"), rules.value("returnedChance"), nextLookFrom(row, rules)};
}

LightForecast forecastAt(const LightModel& model, const ReadinessRow& row, int place,
                         CivilMinute from, const ForecastChances& chances) {
    if (!row.asksDose || !row.dose.sunnyDays.isKnown())
        return {};
    const Forecasting forecasting(model, row, place, from);
    LightForecast forecast;
    const bool isFoundTrue = toldChanceOf(row) == ToldChance::foundTrue;
    const bool wantsDose =
        row.gates[static_cast<std::size_t>(GateKind::dose)].need == GateNeed::light;
    const double early = isFoundTrue && !wantsDose ? 0 : lookChanceFor(row.looks, chances.early);
    forecast.early = forecasting.dayOfChance(early, daysMissing(row.daysHigh, row.daysNeeded));
    if (isFoundTrue) {
        if (forecast.early)
            forecast.early = std::max(*forecast.early, dayOf(chances.nextLook));
        return forecast;
    }
    const std::int64_t missing = daysMissing(row.daysLow, row.daysNeeded);
    forecast.likely = forecasting.dayOfChance(std::max(0.5, early), missing);
    forecast.late = forecasting.dayOfChance(std::max({0.5, early, chances.late}), missing);
    return forecast;
}

LightForecast forecastOf(const ReadinessRow& row, const HouseRules& rules) {
    if (!row.hasForecast)
        return {};
    return forecastAt(*row.forecastModel, row, row.place, row.asOf, forecastChancesOf(row, rules));
}

}  // namespace rackbook
