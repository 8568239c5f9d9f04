// The chance that the colour of a print has returned after a dose of light, quick to ask.
#pragma once

#include <vector>

#include "calc/LightThreshold.h"

namespace rackbook {

class ReturnChance {
public:
    // Tabulates the chance for the next print, all that is not known of the threshold counted in.
    explicit ReturnChance(const LightThreshold& threshold);

    // 0 … 1; doses of 0 or more, infinite ones too.
    double by(double dose_sunnyDays) const;
    // Over the spread of the dose; notKnown where it has no best value, unless even the high bound
    // leaves next to none: then that.
    double by(const Estimate& dose_sunnyDays) const;
    // The dose by which the chance is reached, within 1e-4 … 1e4 sunny days. Chance above 0, below
    // 1.
    double doseFor_sunnyDays(double chance) const;

private:
    std::vector<double> m_odds_log;  // by equal steps of the logarithm of the dose
};

}  // namespace rackbook
