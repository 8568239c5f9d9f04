// How the share of prints whose colour has returned rises with dose: a distribution of the dose at
// which it returns. Doses are near ultraviolet in sunny days hung up (any other unit serves, as
// long as it is the same throughout).
//
// log(dose) = location + scale·z, where z is standard normal (log-normal) or the logarithm of a
// standard exponential (Weibull: its shape is 1/scale, its characteristic dose exp(location)). Both
// are in every text on lifetimes, e.g. Meeker, Escobar 1998, Statistical Methods for Reliability
// Data, chapter 4 (from memory). Logarithms are natural.
#pragma once

namespace rackbook {

enum class ThresholdModel { logNormal, weibull };

struct ThresholdCurve {
    ThresholdModel model = ThresholdModel::logNormal;
    double location_log = 0;  // of a dose in sunny days
    double scale_log = 1;     // above 0

    // The curve with this median, in which log(dose) has this standard deviation, above 0: the
    // width by which the two models can be compared.
    static ThresholdCurve around(ThresholdModel model, double median_log, double width_log);
    double median_log() const;
    double width_log() const;

    // The dose by which this share of prints has returned. Throws InputError where the share is not
    // above 0 and below 1.
    double quantile_sunnyDays(double share) const;
    double quantile_log(double share) const;

    // The share of prints that has returned by the dose, 0 … 1. Throws InputError where the dose is
    // not 0 or more; it may be infinite.
    double probabilityBy(double dose_sunnyDays) const;
    // How far the dose lies above the location, in scales; −∞ for no dose. Throws as the above.
    double standardised(double dose_sunnyDays) const;
};

// The share of a standard variable of the model that is z or less.
double standardShare(ThresholdModel model, double z);

// Natural logarithms of chances for a standard variable of the model. They stay finite and keep
// their digits where the chance itself is too small for a number, as far as the logarithm is one.
double logChanceUpTo(ThresholdModel model, double z);
double logChanceAbove(ThresholdModel model, double z);
// In (z, z + step]; step above 0.
double logChanceWithin(ThresholdModel model, double z, double step);
double logDensityAt(ThresholdModel model, double z);

}  // namespace rackbook
