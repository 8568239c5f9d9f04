#include "calc/ReturnChance.h"

#include <algorithm>
#include <cmath>

namespace rackbook {

namespace {

constexpr int steps = 100;
constexpr double least_log = -9.2103403719761836;  // of 1e-4
constexpr double greatest_log = -least_log;
constexpr double leastChance = 1e-12;

double logOfStep(double step) {
    return least_log + (greatest_log - least_log) * step / steps;
}

// Between the steps the logarithm of the odds is taken as straight: it is nearly so, which chances
// are not.
double oddsOf(double chance) {
    const double inside = std::clamp(chance, leastChance, 1 - leastChance);
    return std::log(inside / (1 - inside));
}

double chanceOf(double odds_log) {
    return 1 / (1 + std::exp(-odds_log));
}

}  // namespace

ReturnChance::ReturnChance(const LightThreshold& threshold) {
    for (int step = 0; step <= steps; ++step)
        m_odds_log.push_back(oddsOf(threshold.predictedBy(std::exp(logOfStep(step)))));
}

double ReturnChance::by(double dose_sunnyDays) const {
    if (!(dose_sunnyDays > 0))
        return 0;
    const double step = (std::log(dose_sunnyDays) - least_log) / (greatest_log - least_log) * steps;
    if (step <= 0)
        return chanceOf(m_odds_log.front()) * dose_sunnyDays / std::exp(least_log);
    if (step >= steps)
        return chanceOf(m_odds_log.back());
    const auto whole = static_cast<std::size_t>(step);
    const double part = step - static_cast<double>(whole);
    return chanceOf(m_odds_log[whole] + part * (m_odds_log[whole + 1] - m_odds_log[whole]));
}

// The bounds of a dose hold nine cases of ten: they lie 1.645 standard deviations of the logarithm
// away. The mean over the middles of five equal parts of its spread.
double ReturnChance::by(const Estimate& dose_sunnyDays) const {
    if (!dose_sunnyDays.isKnown())
        return by(dose_sunnyDays.high) < 0.01 ? by(dose_sunnyDays.high) : notKnown;
    if (!(dose_sunnyDays.best > 0))
        return 0;
    constexpr double bounds_z = 1.6449;
    constexpr double middles_z[] = {-1.2816, -0.5244, 0, 0.5244, 1.2816};
    const double least = std::max(dose_sunnyDays.low, dose_sunnyDays.best * 1e-3);
    const double most = std::min(dose_sunnyDays.high, dose_sunnyDays.best * 1e3);
    const double down = std::log(dose_sunnyDays.best / least) / bounds_z;
    const double up = std::log(most / dose_sunnyDays.best) / bounds_z;
    double sum = 0;
    for (const double z : middles_z)
        sum += by(dose_sunnyDays.best * std::exp(z * (z < 0 ? down : up)));
    return sum / 5;
}

double ReturnChance::doseFor_sunnyDays(double chance) const {
    const double odds_log = oddsOf(chance);
    const auto after = std::lower_bound(m_odds_log.begin(), m_odds_log.end(), odds_log);
    if (after == m_odds_log.begin())
        return std::exp(least_log);
    if (after == m_odds_log.end())
        return std::exp(greatest_log);
    const double before = *(after - 1);
    const double step = static_cast<double>(after - m_odds_log.begin()) - 1 +
                        (odds_log - before) / (*after - before);
    return std::exp(logOfStep(step));
}

}  // namespace rackbook
