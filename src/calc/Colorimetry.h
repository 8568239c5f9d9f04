// Colour from reflectance: XYZ, CIELAB, visual density, and how a match holds in another light.
// Formulas and weighting of CIE 15 (Colorimetry), summed every 5 nm over the tables of CieTables.h.
//
// Reflectance of paper with brighteners belongs to the lamp of the instrument; in another light
// what is computed from it is an approximation.
#pragma once

#include <optional>

#include "calc/CieTables.h"
#include "calc/ColourDifference.h"
#include "calc/Spectrum.h"

namespace rackbook {

// Y is 100 for the perfect white.
struct Xyz {
    double x = 0;
    double y = 0;
    double z = 0;
};

// XYZ of the perfect white from the same sum as below, so that its CIELAB is exactly 100, 0, 0. It
// is within 0.02 of the published white points, which come from steps of 1 nm.
Xyz whiteOf(ViewingLight light, Observer observer);

Xyz xyzOf(const CieColumn& reflectance, ViewingLight light, Observer observer);
// Throws InputError as requireUsable (Spectrum.h).
Xyz xyzOf(const Spectrum& spectrum, ViewingLight light, Observer observer);

// Each undoes the other. Pre: the white is above 0.
Lab labOf(const Xyz& colour, const Xyz& white);
Xyz xyzOf(const Lab& colour, const Xyz& white);
// Throws InputError as requireUsable.
Lab labOf(const Spectrum& spectrum, ViewingLight light, Observer observer);

double chromaOf(const Lab& colour);
// 0 up to 360, from +a* towards +b*; nothing for a grey (chroma below 1e-6).
std::optional<double> hueOf_deg(const Lab& colour);

// −log10(Y/100): how dark the eye finds it beside a perfect white. This is not a status density of
// ISO 5-3, which is measured through prescribed filters; under A and 2° it comes close to the
// visual density there (from memory). Throws InputError where Y is not above 0.
double visualDensity(const Xyz& colour);

// How the second of two colours is made equal to the first under the reference light before they
// are compared under the other (CIE 15, special metamerism index; wording from memory).
enum class MatchCorrection {
    none,
    multiplicative,  // X, Y and Z of the second, each times the ratio they miss by
    additive         // L*, a* and b* of the second, each plus the difference they miss by
};

struct Metamerism {
    double referenceE00 =
        0;  // before any correction; the index means little where this is not small
    double referenceEab = 0;
    double testE00 = 0;  // after the correction; near 0 where the match holds
    double testEab = 0;
};

// Throws InputError as requireUsable, naming the first or the second spectrum, and where the
// multiplicative correction would divide by 0.
Metamerism metamerismOf(const Spectrum& first, const Spectrum& second, ViewingLight reference,
                        ViewingLight test, Observer observer, MatchCorrection correction);

}  // namespace rackbook
