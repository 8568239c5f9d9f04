#include "calc/BalanceReading.h"

#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

// Steps are mostly 1/10, 1/100 …, which no double holds: dividing by 10 gives the number that is
// nearest to what the display shows, multiplying by 0.1 does not always.
double massOfSteps_g(double steps, double readability_g) {
    const double stepsPerGram = 1 / readability_g;
    const double whole = std::round(stepsPerGram);
    if (whole >= 1 && std::fabs(stepsPerGram - whole) < 1e-9 * whole)
        return steps / whole;
    return steps * readability_g;
}

}  // namespace

void requireUsable(const BalanceFigures& balance) {
    if (!std::isfinite(balance.readability_g) || balance.readability_g <= 0)
        throw InputError("balance",
                         "the readability is " + formatShortest(balance.readability_g) + " g",
                         "Give the smallest step of its display, above 0 g.");
    if (!std::isfinite(balance.repeatability_g) || balance.repeatability_g < 0)
        throw InputError("balance",
                         "the repeatability is " + formatShortest(balance.repeatability_g) + " g",
                         "Give a standard deviation of 0 g or more.");
}

double massUncertainty_g(const BalanceFigures& balance) {
    requireUsable(balance);
    const double perReading_g = balance.readability_g / std::sqrt(12.0);
    return std::sqrt(2 * perReading_g * perReading_g +
                     balance.repeatability_g * balance.repeatability_g);
}

double roundedToReadability_g(double mass_g, const BalanceFigures& balance) {
    return massOfSteps_g(std::round(mass_g / balance.readability_g), balance.readability_g);
}

double raisedToReadability_g(double mass_g, const BalanceFigures& balance) {
    return massOfSteps_g(std::ceil(mass_g / balance.readability_g - 1e-9), balance.readability_g);
}

}  // namespace rackbook
