#include "calc/ThresholdCurve.h"

#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

constexpr double pi = 3.14159265358979323846;

// log(1 − exp(−y)), y above 0.
double logOfOneLessExp(double y) {
    return y < 1 ? std::log(-std::expm1(-y)) : std::log1p(-std::exp(-y));
}

// The same from log y. Below e⁻³⁷ the two logarithms agree to the last digit.
double logOfOneLessExpOf(double logOfY) {
    constexpr double tiny = -37;
    return logOfY < tiny ? logOfY : logOfOneLessExp(std::exp(logOfY));
}

// From here on the normal distribution's upper tail is taken from its series.
constexpr double far = 30;

// log Q(z) + z²/2 of that tail, for z from `far` on: it varies slowly. Abramowitz, Stegun 1964,
// 26.2.12; the next term is below 1e-13.
double logFarTailFactor(double z) {
    const double q = 1 / (z * z);
    const double series = -q * (1 - 3 * q * (1 - 5 * q * (1 - 7 * q * (1 - 9 * q))));
    return std::log1p(series) - std::log(z) - 0.5 * std::log(2 * pi);
}

double upperTail(double z) {
    return 0.5 * std::erfc(z / std::sqrt(2.0));
}

double logNormalTail(double z) {
    if (z < 0)
        return std::log1p(-upperTail(-z));
    if (z < far)
        return std::log(upperTail(z));
    return std::isinf(z) ? -z : logFarTailFactor(z) - 0.5 * z * z;
}

double logNormalWithin(double z, double step) {
    // So narrow that the density is even over it, and differences would lose its digits.
    constexpr double narrow = 1e-5;
    const double middle = z + 0.5 * step;
    if (step * (1 + std::fabs(middle)) < narrow)
        return logDensityAt(ThresholdModel::logNormal, middle) + std::log(step);
    if (z + step <= 0)
        return logNormalWithin(-(z + step), step);
    const double end = z + step;
    if (z < 0)
        return std::log1p(-(upperTail(-z) + upperTail(end)));
    if (z < far)
        return std::log(upperTail(z) - upperTail(end));
    const double factor = logFarTailFactor(z);
    const double ratio = logFarTailFactor(end) - factor - 0.5 * step * (z + end);
    return factor - 0.5 * z * z + std::log(-std::expm1(ratio));
}

double logWeibullWithin(double z, double step) {
    const double before = std::exp(z);
    const double growth = before * std::expm1(step);
    constexpr double least = 1e-300;
    if (growth > least)
        return -before + logOfOneLessExp(growth);
    const double growthOfOne_log =
        step > 1 ? step + std::log1p(-std::exp(-step)) : std::log(std::expm1(step));
    return -before + logOfOneLessExpOf(z + growthOfOne_log);
}

// The standard normal quantile by halving, to the last digits.
double normalQuantile(double share) {
    double low = -40;
    double high = 40;
    for (int i = 0; i < 70; ++i) {
        const double middle = 0.5 * (low + high);
        (0.5 * std::erfc(-middle / std::sqrt(2.0)) < share ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

double standardQuantile(ThresholdModel model, double share) {
    return model == ThresholdModel::weibull ? std::log(-std::log1p(-share)) : normalQuantile(share);
}

// Of a standard variable of the model.
double standardWidth(ThresholdModel model) {
    return model == ThresholdModel::weibull ? pi / std::sqrt(6.0) : 1;
}

double standardMedian(ThresholdModel model) {
    return model == ThresholdModel::weibull ? std::log(std::log(2.0)) : 0;
}

}  // namespace

ThresholdCurve ThresholdCurve::around(ThresholdModel model, double median_log, double width_log) {
    const double scale_log = width_log / standardWidth(model);
    return {model, median_log - scale_log * standardMedian(model), scale_log};
}

double ThresholdCurve::median_log() const {
    return location_log + scale_log * standardMedian(model);
}

double ThresholdCurve::width_log() const {
    return scale_log * standardWidth(model);
}

double ThresholdCurve::quantile_log(double share) const {
    if (!(share > 0 && share < 1))
        throw InputError("share of prints", "it is " + formatShortest(share),
                         "Give one above 0 and below 1.");
    return location_log + scale_log * standardQuantile(model, share);
}

double ThresholdCurve::quantile_sunnyDays(double share) const {
    return std::exp(quantile_log(share));
}

double ThresholdCurve::standardised(double dose_sunnyDays) const {
    if (!(dose_sunnyDays >= 0))
        throw InputError("dose", "it is " + formatShortest(dose_sunnyDays) + " sunny days",
                         "Give one of 0 or more.");
    return (std::log(dose_sunnyDays) - location_log) / scale_log;
}

double ThresholdCurve::probabilityBy(double dose_sunnyDays) const {
    return standardShare(model, standardised(dose_sunnyDays));
}

double standardShare(ThresholdModel model, double z) {
    return model == ThresholdModel::weibull ? -std::expm1(-std::exp(z))
                                            : 0.5 * std::erfc(-z / std::sqrt(2.0));
}

double logChanceUpTo(ThresholdModel model, double z) {
    return model == ThresholdModel::weibull ? logOfOneLessExpOf(z) : logNormalTail(-z);
}

double logChanceAbove(ThresholdModel model, double z) {
    return model == ThresholdModel::weibull ? -std::exp(z) : logNormalTail(z);
}

double logChanceWithin(ThresholdModel model, double z, double step) {
    return model == ThresholdModel::weibull ? logWeibullWithin(z, step) : logNormalWithin(z, step);
}

double logDensityAt(ThresholdModel model, double z) {
    if (model == ThresholdModel::weibull)
        return z - std::exp(z);
    return -0.5 * z * z - 0.5 * std::log(2 * pi);
}

}  // namespace rackbook
