#include "calc/LightThreshold.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/Minimum.h"

namespace rackbook {

namespace {

constexpr double leastWidth_log = 0.001;

void requireNumber(double value, double most, const std::string& what) {
    if (!(value > 0 && value <= most))
        throw InputError("what is likely beforehand", what + " is " + formatShortest(value),
                         "Give a number above 0, at most " + formatShortest(most) + ".");
}

void requireUsable(const ThresholdPrior& prior) {
    constexpr double mostDose_sunnyDays = 1e6;
    constexpr double mostLog = 10;
    requireNumber(prior.median_sunnyDays, mostDose_sunnyDays, "the median dose");
    requireNumber(prior.medianSpread_log, mostLog, "the spread of the median dose");
    requireNumber(prior.width_log, mostLog, "the width");
    requireNumber(prior.widthSpread_log, mostLog, "the spread of the width");
}

// Of the logarithms of the median and of the width.
class Posterior {
public:
    Posterior(const ThresholdLooks& looks, ThresholdModel model, const ThresholdPrior& prior)
        : m_looks(looks), m_model(model), m_prior(prior) {}

    ThresholdCurve curveAt(const Pair& at) const {
        return ThresholdCurve::around(m_model, at[0], std::hypot(std::exp(at[1]), leastWidth_log));
    }

    double logDensity(const Pair& at) const {
        const double ofMedian =
            (at[0] - std::log(m_prior.median_sunnyDays)) / m_prior.medianSpread_log;
        const double ofWidth = (at[1] - std::log(m_prior.width_log)) / m_prior.widthSpread_log;
        return m_looks.logLikelihood(curveAt(at)) - 0.5 * (ofMedian * ofMedian + ofWidth * ofWidth);
    }

    Pair peak() const {
        MinimumQuestion question;
        question.value = [this](const std::vector<double>& at) {
            return -logDensity({at[0], at[1]});
        };
        layBounds(question);
        question.start = roughStart(question);
        question.firstStep = {0.1 * m_prior.medianSpread_log, 0.1 * m_prior.widthSpread_log};
        question.closeEnough = 1e-6;
        // The first search may come to rest on a ridge.
        question.start = minimumNear(question).at;
        for (double& step : question.firstStep)
            step *= 0.1;
        const Minimum found = minimumNear(question);
        return {found.at[0], found.at[1]};
    }

private:
    // The peak lies between the prior's and the looks', give or take.
    void layBounds(MinimumQuestion& question) const {
        constexpr double many = 6;
        double least = std::log(m_prior.median_sunnyDays);
        double greatest = least;
        for (const ThresholdLooks::Group& group : m_looks.groups())
            for (const double dose_log : {group.low_log, group.high_log})
                if (std::isfinite(dose_log)) {
                    least = std::min(least, dose_log);
                    greatest = std::max(greatest, dose_log);
                }
        const double beyond = many * m_prior.medianSpread_log;
        const double width = std::log(m_prior.width_log);
        const double farWidth = std::log(1 + greatest - least);
        const double leastWidth =
            std::min(width - many * m_prior.widthSpread_log, 2 * std::log(leastWidth_log));
        question.least = {least - beyond, leastWidth};
        question.greatest = {greatest + beyond,
                             std::max(width, farWidth) + many * m_prior.widthSpread_log};
    }

    std::vector<double> roughStart(const MinimumQuestion& question) const {
        constexpr int tries = 10;
        std::vector<double> best = {std::log(m_prior.median_sunnyDays),
                                    std::log(m_prior.width_log)};
        double least = question.value(best);
        const auto across = [&](std::size_t which, int i) {
            const double from = question.least[which];
            const double to = question.greatest[which];
            return std::min(to, from + (to - from) * i / tries);
        };
        for (int i = 0; i <= tries; ++i)
            for (int j = 0; j <= tries; ++j) {
                const std::vector<double> at = {across(0, i), across(1, j)};
                const double value = question.value(at);
                if (value < least) {
                    least = value;
                    best = at;
                }
            }
        return best;
    }

    const ThresholdLooks& m_looks;
    ThresholdModel m_model;
    const ThresholdPrior& m_prior;
};

}  // namespace

LightThreshold::LightThreshold(const std::vector<ThresholdObservation>& observations,
                               ThresholdModel model, const ThresholdPrior& prior) {
    requireUsable(prior);
    const ThresholdLooks looks(observations);
    const Posterior posterior(looks, model, prior);
    GridQuestion question;
    question.logDensity = [&](const Pair& at) { return posterior.logDensity(at); };
    question.peak = posterior.peak();
    question.usualStep = {prior.medianSpread_log, prior.widthSpread_log};
    m_grid = ChanceGrid(question);
    for (const ChanceGrid::Point& point : m_grid.points())
        m_curves.push_back(posterior.curveAt(point.at));
    m_curve = posterior.curveAt(question.peak);
    m_observations = looks.count();
    m_logLikelihood = looks.logLikelihood(m_curve);
}

template <class Value>
Estimate LightThreshold::spreadOf(double within, const Value& value) const {
    if (!(within > 0 && within < 1))
        throw InputError("interval", "its chance is " + formatShortest(within),
                         "Give one above 0 and below 1.");
    std::vector<double> values;
    values.reserve(m_curves.size());
    for (const ThresholdCurve& curve : m_curves)
        values.push_back(value(curve));
    const double outside = 0.5 * (1 - within);
    const std::vector<double> found = m_grid.quantilesOf(values, {outside, 0.5, 1 - outside});
    return {found[0], found[1], found[2]};
}

Estimate LightThreshold::quantile_sunnyDays(double share, double within) const {
    const double standard = ThresholdCurve{m_curve.model, 0, 1}.quantile_log(share);
    const Estimate log = spreadOf(within, [&](const ThresholdCurve& curve) {
        return curve.location_log + curve.scale_log * standard;
    });
    return {std::exp(log.low), std::exp(log.best), std::exp(log.high)};
}

Estimate LightThreshold::probabilityBy(double dose_sunnyDays, double within) const {
    const double extreme = m_curve.standardised(dose_sunnyDays);
    if (std::isinf(extreme))
        return Estimate::exactly(extreme < 0 ? 0 : 1);
    const Estimate z = spreadOf(
        within, [&](const ThresholdCurve& curve) { return curve.standardised(dose_sunnyDays); });
    const ThresholdModel model = m_curve.model;
    return {standardShare(model, z.low), standardShare(model, z.best),
            standardShare(model, z.high)};
}

double LightThreshold::predictedBy(double dose_sunnyDays) const {
    double sum = 0;
    for (std::size_t i = 0; i < m_curves.size(); ++i)
        sum += m_grid.points()[i].chance * m_curves[i].probabilityBy(dose_sunnyDays);
    return std::min(1.0, sum);
}

}  // namespace rackbook
