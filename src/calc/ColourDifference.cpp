#include "calc/ColourDifference.h"

#include <cmath>

namespace rackbook {

namespace {

constexpr double pi = 3.141592653589793238462643383279502884;
constexpr double tie_deg = 180 + 1e-6;

double sinDeg(double angle_deg) {
    return std::sin(angle_deg * (pi / 180));
}

double cosDeg(double angle_deg) {
    return std::cos(angle_deg * (pi / 180));
}

double pow7(double value) {
    const double cube = value * value * value;
    return cube * cube * value;
}

// √(C⁷ / (C⁷ + 25⁷))
double chromaShare(double chroma) {
    const double power = pow7(chroma);
    return std::sqrt(power / (power + pow7(25)));
}

struct Polar {
    double chroma = 0;
    double hue_deg = 0;  // 0 … 360; for a grey it does not count, since ΔH is 0 beside it
};

Polar polarOf(double a, double b) {
    const double hue_deg = std::atan2(b, a) * (180 / pi);
    return {std::hypot(a, b), hue_deg < 0 ? hue_deg + 360 : hue_deg};
}

struct Hues {
    double step_deg = 0;  // from the first to the second, the shorter way round
    double mean_deg = 0;
};

Hues huesBetween(const Polar& first, const Polar& second) {
    const double sum = first.hue_deg + second.hue_deg;
    const double step = second.hue_deg - first.hue_deg;
    if (std::fabs(step) <= tie_deg)
        return {step, sum / 2};
    return {step > 0 ? step - 360 : step + 360, sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2};
}

double hueWeight(double mean_deg) {
    return 1 - 0.17 * cosDeg(mean_deg - 30) + 0.24 * cosDeg(2 * mean_deg) +
           0.32 * cosDeg(3 * mean_deg + 6) - 0.20 * cosDeg(4 * mean_deg - 63);
}

double rotation(double mean_deg, double meanChroma) {
    const double fromBlue = (mean_deg - 275) / 25;
    return -2 * chromaShare(meanChroma) * sinDeg(60 * std::exp(-fromBlue * fromBlue));
}

}  // namespace

double deltaEab(const Lab& first, const Lab& second) {
    return std::hypot(second.l - first.l, second.a - first.a, second.b - first.b);
}

double deltaE00(const Lab& first, const Lab& second) {
    const double chroma = (std::hypot(first.a, first.b) + std::hypot(second.a, second.b)) / 2;
    const double stretch = 1 + 0.5 * (1 - chromaShare(chroma));
    const Polar from = polarOf(stretch * first.a, first.b);
    const Polar to = polarOf(stretch * second.a, second.b);
    const Hues hues = huesBetween(from, to);
    const double meanChroma = (from.chroma + to.chroma) / 2;
    const double lightness = (first.l + second.l) / 2 - 50;
    const double square = lightness * lightness;

    const double deltaL = (second.l - first.l) / (1 + 0.015 * square / std::sqrt(20 + square));
    const double deltaC = (to.chroma - from.chroma) / (1 + 0.045 * meanChroma);
    const double deltaH = 2 * std::sqrt(from.chroma * to.chroma) * sinDeg(hues.step_deg / 2) /
                          (1 + 0.015 * meanChroma * hueWeight(hues.mean_deg));
    const double turned = rotation(hues.mean_deg, meanChroma) * deltaC * deltaH;
    // |RT| stays below 2, so that the sum is never negative.
    return std::sqrt(deltaL * deltaL + deltaC * deltaC + deltaH * deltaH + turned);
}

}  // namespace rackbook
