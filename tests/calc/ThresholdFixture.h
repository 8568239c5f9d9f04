// Looks for the tests of the dose at which colour returns: as the tables of facts write them, and
// simulated.
#pragma once

#include <limits>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "FactRows.h"
#include "calc/ThresholdLooks.h"

namespace rackbook::test {

using Looks = std::vector<ThresholdObservation>;

inline constexpr double never = std::numeric_limits<double>::infinity();

inline double doseIn(const std::string& text) {
    return text == "inf" ? never : FactRow::numberIn(text);
}

// "0-3*2;4-inf*1": low-high*times.
inline Looks looksIn(const std::string& text) {
    Looks looks;
    std::istringstream parts(text);
    for (std::string part; std::getline(parts, part, ';');) {
        const std::size_t dash = part.find('-');
        const std::size_t star = part.find('*');
        const ThresholdObservation look{doseIn(part.substr(0, dash)),
                                        doseIn(part.substr(dash + 1, star - dash - 1))};
        looks.insert(looks.end(), static_cast<std::size_t>(doseIn(part.substr(star + 1))), look);
    }
    return looks;
}

inline ThresholdModel modelIn(const std::string& text) {
    return text == "weibull" ? ThresholdModel::weibull : ThresholdModel::logNormal;
}

// A print whose colour returns at the dose, looked at a few times at doses of about that size.
inline ThresholdObservation lookedAt(double returns, double median, std::mt19937& random) {
    std::uniform_real_distribution<double> step(0.1 * median, 1.2 * median);
    ThresholdObservation look{0, 0};
    for (int looks = 0; looks < 4; ++looks) {
        look.high_sunnyDays = look.low_sunnyDays + step(random);
        if (returns <= look.high_sunnyDays)
            return look;
        look.low_sunnyDays = look.high_sunnyDays;
    }
    look.high_sunnyDays = never;
    return look;
}

// A dose at which a print of the curve returns.
inline double drawnFrom(const ThresholdCurve& curve, std::mt19937& random) {
    return curve.quantile_sunnyDays(std::uniform_real_distribution<double>(1e-9, 1 - 1e-9)(random));
}

inline Looks simulated(const ThresholdCurve& curve, int prints, std::mt19937& random) {
    const double median = curve.quantile_sunnyDays(0.5);
    Looks looks;
    for (int i = 0; i < prints; ++i)
        looks.push_back(lookedAt(drawnFrom(curve, random), median, random));
    return looks;
}

}  // namespace rackbook::test
