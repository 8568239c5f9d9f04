#include "calc/LightThreshold.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/Error.h"
#include "base/Numbers.h"

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

    GridQuestion question() const {
        // The median lies somewhere between the prior's and the looks'.
        const double prior_log = std::log(m_prior.median_sunnyDays);
        double least = prior_log;
        double greatest = prior_log;
        for (const ThresholdLooks::Group& group : m_looks.groups())
            for (const double dose_log : {group.low_log, group.high_log})
                if (std::isfinite(dose_log)) {
                    least = std::min(least, dose_log);
                    greatest = std::max(greatest, dose_log);
                }
        constexpr double many = 7;
        const double width = std::log(m_prior.width_log);
        const double reach = many * m_prior.widthSpread_log;
        GridQuestion question;
        question.logDensity = [this](const Pair& at) { return logDensity(at); };
        // From there no look is so unlikely that it has no logarithm.
        question.first = greatest;
        question.firstLength = m_prior.medianSpread_log;
        question.leastSecond = std::min(width, std::log(leastWidth_log)) - reach;
        question.greatestSecond = std::max(width, std::log(1 + greatest - least)) + reach;
        return question;
    }

private:
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
    m_grid = ChanceGrid(posterior.question());
    for (const ChanceGrid::Point& point : m_grid.points())
        m_curves.push_back(posterior.curveAt(point.at));
    m_curve = posterior.curveAt(m_grid.peak());
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
