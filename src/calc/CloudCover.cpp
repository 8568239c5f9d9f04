#include "calc/CloudCover.h"

#include <cmath>
#include <string>

#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

constexpr double meanLoss = 0.75;          // under 8 oktas
constexpr double leastLoss = 1 - 0.61;     // cirrus
constexpr double greatestLoss = 1 - 0.16;  // nimbostratus

[[noreturn]] void refuse(const std::string& what) {
    throw InputError("cloud cover", what, "Give eighths of the sky, 0 to 8.");
}

}  // namespace

Oktas oktasOf(Sky word) {
    switch (word) {
        case Sky::sunny:
            return {0, 1, 2};
        case Sky::broken:
            return {3, 5, 7};
        case Sky::overcast:
            return {7, 8, 8};
    }
    refuse("the sky has no such word");
}

void requireOktas(const Oktas& oktas) {
    for (const double value : {oktas.low, oktas.high})
        if (!(value >= 0 && value <= 8))
            refuse("it is " + formatShortest(value) + " oktas");
    if (oktas.low > oktas.high)
        refuse("it lies from " + formatShortest(oktas.low) + " down to " +
               formatShortest(oktas.high) + " oktas");
    if (oktas.isKnown() && !(oktas.best >= oktas.low && oktas.best <= oktas.high))
        refuse("the best value, " + formatShortest(oktas.best) + " oktas, is not between " +
               formatShortest(oktas.low) + " and " + formatShortest(oktas.high));
}

double kastenCzeplakFactor(double oktas) {
    requireOktas(Oktas::exactly(oktas));
    return 1 - meanLoss * std::pow(oktas / 8, 3.4);
}

Estimate cloudFactor(const Oktas& oktas) {
    requireOktas(oktas);
    const double lossAtLow = 1 - kastenCzeplakFactor(oktas.low);
    const double lossAtHigh = 1 - kastenCzeplakFactor(oktas.high);
    return {1 - lossAtHigh * greatestLoss / meanLoss,
            oktas.isKnown() ? kastenCzeplakFactor(oktas.best) : notKnown,
            1 - lossAtLow * leastLoss / meanLoss};
}

}  // namespace rackbook
