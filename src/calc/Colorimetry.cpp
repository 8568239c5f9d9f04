#include "calc/Colorimetry.h"

#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

constexpr double pi = 3.141592653589793238462643383279502884;
constexpr double knee = 6.0 / 29;

// f(t) of CIE 15, and back.
double lightnessScale(double ratio) {
    if (ratio > knee * knee * knee)
        return std::cbrt(ratio);
    return ratio / (3 * knee * knee) + 4.0 / 29;
}

double ratioOf(double scale) {
    if (scale > knee)
        return scale * scale * scale;
    return 3 * knee * knee * (scale - 4.0 / 29);
}

double corrected(double value, double aim, double reached) {
    if (reached <= 0)
        throw InputError("metamerism",
                         "the second colour is black under the reference light, so that no factor "
                         "makes it equal to the first",
                         "Use the additive correction.");
    return value * (aim / reached);
}

// The two colours in one light.
struct Pair {
    Xyz white;
    Xyz first;
    Xyz second;

    Lab firstLab() const { return labOf(first, white); }
    Lab secondLab() const { return labOf(second, white); }
};

Lab comparedWith(const Pair& test, const Pair& reference, MatchCorrection correction) {
    if (correction == MatchCorrection::multiplicative)
        return labOf(Xyz{corrected(test.second.x, reference.first.x, reference.second.x),
                         corrected(test.second.y, reference.first.y, reference.second.y),
                         corrected(test.second.z, reference.first.z, reference.second.z)},
                     test.white);
    Lab second = test.secondLab();
    if (correction == MatchCorrection::additive) {
        const Lab aim = reference.firstLab();
        const Lab reached = reference.secondLab();
        second.l += aim.l - reached.l;
        second.a += aim.a - reached.a;
        second.b += aim.b - reached.b;
    }
    return second;
}

}  // namespace

Xyz whiteOf(ViewingLight light, Observer observer) {
    CieColumn perfect;
    perfect.fill(1);
    return xyzOf(perfect, light, observer);
}

Xyz xyzOf(const CieColumn& reflectance, ViewingLight light, Observer observer) {
    const CieColumn& power = powerOf(light);
    const ColourMatching& matching = matchingOf(observer);
    Xyz sum;
    double whole = 0;
    for (std::size_t i = 0; i < tableSize; ++i) {
        const double reflected = power[i] * reflectance[i];
        sum.x += reflected * matching.x[i];
        sum.y += reflected * matching.y[i];
        sum.z += reflected * matching.z[i];
        whole += power[i] * matching.y[i];
    }
    return {sum.x / whole * 100, sum.y / whole * 100, sum.z / whole * 100};
}

Xyz xyzOf(const Spectrum& spectrum, ViewingLight light, Observer observer) {
    return xyzOf(reflectanceOnTable(spectrum), light, observer);
}

Lab labOf(const Xyz& colour, const Xyz& white) {
    const double x = lightnessScale(colour.x / white.x);
    const double y = lightnessScale(colour.y / white.y);
    const double z = lightnessScale(colour.z / white.z);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

Xyz xyzOf(const Lab& colour, const Xyz& white) {
    const double y = (colour.l + 16) / 116;
    return {white.x * ratioOf(y + colour.a / 500), white.y * ratioOf(y),
            white.z * ratioOf(y - colour.b / 200)};
}

Lab labOf(const Spectrum& spectrum, ViewingLight light, Observer observer) {
    return labOf(xyzOf(spectrum, light, observer), whiteOf(light, observer));
}

double chromaOf(const Lab& colour) {
    return std::hypot(colour.a, colour.b);
}

std::optional<double> hueOf_deg(const Lab& colour) {
    if (chromaOf(colour) < 1e-6)
        return std::nullopt;
    const double hue_deg = std::atan2(colour.b, colour.a) * (180 / pi);
    // A hue just below 0 would round to 360.
    return hue_deg < 0 ? std::fmod(hue_deg + 360, 360) : hue_deg;
}

double visualDensity(const Xyz& colour) {
    if (!(colour.y > 0) || !std::isfinite(colour.y))
        throw InputError("density", "Y is " + formatShortest(colour.y),
                         "Give a colour with Y above 0.");
    return -std::log10(colour.y / 100);
}

Metamerism metamerismOf(const Spectrum& first, const Spectrum& second, ViewingLight reference,
                        ViewingLight test, Observer observer, MatchCorrection correction) {
    requireUsable(first, "first spectrum");
    requireUsable(second, "second spectrum");
    const CieColumn firstColumn = reflectanceOnTable(first);
    const CieColumn secondColumn = reflectanceOnTable(second);
    const auto pairUnder = [&](ViewingLight light) {
        return Pair{whiteOf(light, observer), xyzOf(firstColumn, light, observer),
                    xyzOf(secondColumn, light, observer)};
    };
    const Pair matched = pairUnder(reference);
    const Pair seen = pairUnder(test);
    const Lab compared = comparedWith(seen, matched, correction);
    return {deltaE00(matched.firstLab(), matched.secondLab()),
            deltaEab(matched.firstLab(), matched.secondLab()), deltaE00(seen.firstLab(), compared),
            deltaEab(seen.firstLab(), compared)};
}

}  // namespace rackbook
