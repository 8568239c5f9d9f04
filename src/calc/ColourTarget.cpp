#include "calc/ColourTarget.h"

#include <algorithm>
#include <cmath>

namespace rackbook {

namespace {

constexpr double weightOfOtherLight = 0.05;

double squareOf(double value) {
    return value * value;
}

double differenceUnder(ViewingLight light, const Bands& a, const Bands& b) {
    return deltaE00(labOf(a, light), labOf(b, light));
}

}  // namespace

bool isNumber(const ColourTarget& target) {
    const auto isFinite = [](double value) { return std::isfinite(value); };
    const Lab& lab = target.lab_D50;
    return isFinite(lab.l) && isFinite(lab.a) && isFinite(lab.b) &&
           (!target.reflectance ||
            std::all_of(target.reflectance->begin(), target.reflectance->end(), isFinite));
}

ColourTarget targetOf(const Bands& measured) {
    return {labOf(measured, ViewingLight::D50), measured};
}

ColourMiss missOf(const Bands& measured, const ColourTarget& target) {
    ColourMiss miss;
    miss.underD50_dE00 = deltaE00(target.lab_D50, labOf(measured, ViewingLight::D50));
    if (!target.reflectance)
        return miss;
    miss.underA_dE00 = differenceUnder(ViewingLight::A, *target.reflectance, measured);
    miss.underFL11_dE00 = differenceUnder(ViewingLight::FL11, *target.reflectance, measured);
    return miss;
}

double costOf(const ColourMiss& miss) {
    const double others =
        (squareOf(miss.underA_dE00.value_or(0)) + squareOf(miss.underFL11_dE00.value_or(0))) / 2;
    return squareOf(miss.underD50_dE00) + weightOfOtherLight * others;
}

}  // namespace rackbook
