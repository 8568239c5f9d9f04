// The dose of near ultraviolet at which the colour of extender-rich prints has returned, from looks
// at prints and from what was thought likely before them.
#pragma once

#include <cstddef>
#include <vector>

#include "calc/ChanceGrid.h"
#include "calc/Estimate.h"
#include "calc/ThresholdLooks.h"

namespace rackbook {

// What is likely before any look: log-normal for the median dose, and, apart from it, for the
// width, the standard deviation of log(dose) from print to print. The defaults are our guess, no
// source: a median of 1 … 8 sunny days in two cases of three, and half of all prints within a
// factor of 1.4 of the median, give or take. Every number above 0; the spreads at most 10.
struct ThresholdPrior {
    double median_sunnyDays = 3;
    double medianSpread_log = 1;
    double width_log = 0.5;
    double widthSpread_log = 0.5;
};

// What is likely after the looks: the two parameters together, on a grid, each point by its chance
// (Bayes); ends of intervals are good to about a hundredth of the interval's length. The same for
// the same observations in any order. Widths below 0.001 are not told apart: no two prints are as
// alike as that. Doses in sunny days, probabilities 0 … 1.
class LightThreshold {
public:
    // Throws InputError where the prior is not usable, and what ThresholdLooks throws. Without
    // observations it is the prior.
    LightThreshold(const std::vector<ThresholdObservation>& observations, ThresholdModel model,
                   const ThresholdPrior& prior = {});

    // The curve where the chance of the median's logarithm and the width's, given the looks, is
    // greatest.
    const ThresholdCurve& curve() const { return m_curve; }
    std::size_t observations() const { return m_observations; }
    double logLikelihood() const { return m_logLikelihood; }  // of curve(), without the prior

    // The dose by which the share of all prints has returned, and the share that has returned by a
    // dose, each with its central interval that holds it with the chance `within`, above 0 and
    // below 1; the best is the middle one, 0.5 of the chance on either side. Throw as the functions
    // of ThresholdCurve do, and InputError where `within` is out of range.
    Estimate quantile_sunnyDays(double share, double within = 0.9) const;
    Estimate probabilityBy(double dose_sunnyDays, double within = 0.9) const;

    // The chance that the next print has returned by the dose, all that is not known counted in.
    double predictedBy(double dose_sunnyDays) const;

private:
    template <class Value>
    Estimate spreadOf(double within, const Value& value) const;

    ChanceGrid m_grid;
    std::vector<ThresholdCurve> m_curves;  // at the points of the grid
    ThresholdCurve m_curve;
    std::size_t m_observations = 0;
    double m_logLikelihood = 0;
};

}  // namespace rackbook
