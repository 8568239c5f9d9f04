#include "calc/KubelkaMunk.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/Error.h"
#include "base/Numbers.h"

namespace rackbook {

namespace {

[[noreturn]] void refuse(const std::string& what, const std::string& remedy) {
    throw InputError("film", what, remedy);
}

void requireFraction(double value, const std::string& what) {
    if (!(value >= 0 && value <= 1))
        refuse("the reflectance " + what + " is " + formatShortest(value),
               "Give a fraction, 0 to 1.");
}

void requireAmount(double value, const std::string& what) {
    if (!(value >= 0) || !std::isfinite(value))
        refuse("the " + what + " is " + formatShortest(value), "Give 0 or more.");
}

// The film in terms that stay positive, so that nothing cancels: with γ = √(K(K + 2S)) = b·S,
// t = tanh(γX)/γ and c = cosh(γX), R0 = St/(1 + (K + S)t) and T = 1/(c(1 + (K + S)t)).
struct FilmTerms {
    double absorbed = 0;   // K·t
    double scattered = 0;  // S·t
    double passed = 0;     // 1/c
};

FilmTerms termsOf(const FilmOptics& optics, double filmWeight) {
    requireAmount(optics.absorption, "absorption K");
    requireAmount(optics.scattering, "scattering S");
    requireAmount(filmWeight, "film weight");
    const double k = optics.absorption;
    const double rate = std::sqrt(k) * std::sqrt(k + 2 * optics.scattering);
    const double depth = rate * filmWeight;
    const double t = rate > 0 ? std::tanh(depth) / rate : filmWeight;
    return {k * t, optics.scattering * t, 1 / std::cosh(depth)};
}

void requireReadings(const TwoBackings& readings) {
    requireFraction(readings.overBlack, "over the black backing");
    requireFraction(readings.overWhite, "over the white backing");
    requireFraction(readings.black, "of the black backing");
    requireFraction(readings.white, "of the white backing");
    if (readings.white <= readings.black)
        refuse("the white backing is not lighter than the black one",
               "The backings may be swapped: give the lighter one as white.");
    if (readings.overWhite < readings.overBlack)
        refuse("it is darker over white than over black",
               "The readings may be swapped: check which backing each was taken over.");
    if (readings.overWhite == readings.overBlack)
        refuse("it hides the backing, it reads the same over white and over black",
               "Use a thinner film; of this one only K/S can be known.");
}

// R = R0 + T²·G/(1 − R0·G) for both backings G; without T² the squares of R0 cancel.
double reflectanceAlone(const TwoBackings& r) {
    const double between = r.white - r.black - r.white * r.black * (r.overWhite - r.overBlack);
    if (between <= 0)
        refuse("the backings are too much alike", "Use a white and a black one.");
    return (r.white * r.overBlack - r.black * r.overWhite) / between;
}

void requireSurface(const FilmSurface& surface) {
    for (const double reflection : {surface.outerReflection, surface.innerReflection})
        if (!(reflection >= 0 && reflection < 1))
            throw InputError(
                "surface", "the surface would reflect " + formatShortest(reflection),
                "Give k1 and k2 as fractions of 0 or more and below 1, such as 0.04 and 0.6.");
    if (!(surface.specularShare >= 0 && surface.specularShare <= 1))
        throw InputError("surface",
                         "the share of the gloss is " + formatShortest(surface.specularShare),
                         "Give a fraction: 0 for 45°/0°, 1 for a sphere with gloss included.");
}

double throughSurface(double inside, const FilmSurface& surface) {
    return surface.specularShare * surface.outerReflection +
           (1 - surface.outerReflection) * (1 - surface.innerReflection) * inside /
               (1 - surface.innerReflection * inside);
}

}  // namespace

double ksRatioOf(double opaqueReflectance) {
    if (!(opaqueReflectance > 0 && opaqueReflectance <= 1))
        refuse("the reflectance of the opaque film is " + formatShortest(opaqueReflectance),
               "Give a fraction above 0, up to 1.");
    return (1 - opaqueReflectance) * (1 - opaqueReflectance) / (2 * opaqueReflectance);
}

double opaqueReflectanceOf(double ksRatio) {
    requireAmount(ksRatio, "ratio K/S");
    return 1 / (1 + ksRatio + std::sqrt(ksRatio) * std::sqrt(ksRatio + 2));
}

BareFilm bareFilm(const FilmOptics& optics, double filmWeight) {
    const FilmTerms terms = termsOf(optics, filmWeight);
    const double whole = 1 + terms.absorbed + terms.scattered;
    return {terms.scattered / whole, terms.passed / whole};
}

double reflectanceOver(double backing, const FilmOptics& optics, double filmWeight) {
    requireFraction(backing, "of the backing");
    const FilmTerms terms = termsOf(optics, filmWeight);
    const double whole = 1 + terms.absorbed + terms.scattered;
    const double between = 1 + terms.absorbed + terms.scattered * (1 - backing);
    return (terms.scattered + terms.passed * terms.passed * backing / between) / whole;
}

BareFilm bareFilmFrom(const TwoBackings& readings, double readingSpread) {
    requireReadings(readings);
    requireAmount(readingSpread, "spread of the readings");
    // Beyond what was read, rounding.
    const double slack = readingSpread + 1e-12;
    const char* const check =
        "Check that film and backings were read with the same instrument and corrected for the "
        "surface.";
    const double gain =
        (readings.overWhite - readings.overBlack) - (readings.white - readings.black);
    if (gain > 2 * slack)
        refuse("the readings over white and over black lie further apart than the backings", check);
    BareFilm film;
    film.reflectance = reflectanceAlone(readings);
    if (film.reflectance < -slack)
        refuse("it would scatter less than nothing", check);
    film.reflectance = std::max(0.0, film.reflectance);
    film.transmittance = std::sqrt((readings.overWhite - film.reflectance) *
                                   (1 - film.reflectance * readings.white) / readings.white);
    if (film.reflectance + film.transmittance > 1 + slack)
        refuse("it would send out more light than falls on it", check);
    film.transmittance = std::min(film.transmittance, 1 - film.reflectance);
    return film;
}

// With p = γX: cosh p = (1 + T² − R0²)/(2T), S·sinh(p)/γ = R0/T, K·sinh(p)/γ = (1 − R0)/T − cosh p;
// written so that neither K = 0 nor S = 0 is a special case.
FilmOptics opticsFrom(const TwoBackings& readings, double filmWeight, double readingSpread) {
    if (!(filmWeight > 0) || !std::isfinite(filmWeight))
        refuse("the film weight is " + formatShortest(filmWeight), "Give one above 0.");
    const BareFilm film = bareFilmFrom(readings, readingSpread);
    const double r = film.reflectance;
    const double t = film.transmittance;
    const double lost = 1 - r - t;
    const double depth = 2 * std::asinh(std::sqrt(lost * (1 - t + r) / (4 * t)));
    const double straight = depth > 0 ? depth / std::sinh(depth) : 1;
    return {straight * lost * (1 + t - r) / (2 * t) / filmWeight, straight * r / t / filmWeight};
}

double measuredOf(double inside, const FilmSurface& surface) {
    requireSurface(surface);
    if (!(inside >= 0 && inside <= 1))
        throw InputError("surface", "the inside reflectance is " + formatShortest(inside),
                         "Give a fraction, 0 to 1.");
    return throughSurface(inside, surface);
}

double insideOf(double measured, const FilmSurface& surface) {
    requireSurface(surface);
    const double least = throughSurface(0, surface);
    const double most = throughSurface(1, surface);
    // What measuredOf gives for 0 and 1 may be off by rounding.
    constexpr double slack = 1e-12;
    if (!(measured >= least - slack))
        throw InputError("surface",
                         "the measured reflectance " + formatShortest(measured) +
                             " is less than the surface alone sends back, " + formatShortest(least),
                         "Give the share of the gloss that the instrument sees, or a smaller k1.");
    if (measured > most + slack)
        throw InputError("surface",
                         "the measured reflectance " + formatShortest(measured) +
                             " is more than any film can send back, " + formatShortest(most),
                         "Where paper is brightened, measure without ultraviolet (M2).");
    const double within = measured - least;
    const double share = (1 - surface.outerReflection) * (1 - surface.innerReflection);
    return std::clamp(within / (share + surface.innerReflection * within), 0.0, 1.0);
}

}  // namespace rackbook
