// Films that scatter and absorb: the two fluxes of Kubelka and Munk, and what the surface of the
// film adds to them. One wavelength at a time; reflectance and transmittance are fractions, 0 … 1.
//
// Sources: Kubelka, Munk 1931; Kubelka 1948 (J. Opt. Soc. Am. 38:448); Saunderson 1942 (J. Opt.
// Soc. Am. 32:727). The theory assumes diffuse light, a film that is the same all through, and a
// backing in optical contact; inside values are reflectances without the surface (insideOf below).
#pragma once

namespace rackbook {

// K/S of a film so thick that nothing shines through, (1 − R)²/(2R). Throws InputError where R is
// not above 0 or is above 1.
double ksRatioOf(double opaqueReflectance);

// And back: 1 + q − √(q² + 2q), in a form that loses no digits. Throws InputError where K/S is
// negative or not finite.
double opaqueReflectanceOf(double ksRatio);

// What one unit of film does: absorption K and scattering S, both 0 or more, per unit of the film
// weight they are used with (m²/g with film weights in g/m²).
struct FilmOptics {
    double absorption = 0;
    double scattering = 0;
};

// A film on its own, over a backing that sends nothing back.
struct BareFilm {
    double reflectance = 0;
    double transmittance = 0;
};

// Both hold without loss of digits down to S = 0 (backing · exp(−2KX)), K = 0 and a film weight of
// 0, and up to K·X and S·X of 1e300. Throw InputError where K, S or the film weight is negative or
// not finite, or the backing lies outside 0 … 1.
BareFilm bareFilm(const FilmOptics& optics, double filmWeight);
double reflectanceOver(double backing, const FilmOptics& optics, double filmWeight);

// Inside reflectances of one film over two backings, and those of the bare backings.
struct TwoBackings {
    double overBlack = 0;
    double overWhite = 0;
    double black = 0;
    double white = 0;
};

// R0 and T of the film, and K and S per unit of film weight. Exact for exact readings.
// `readingSpread` says how far readings may be off: a film that seems to scatter or to absorb less
// than nothing by no more than that is taken to do neither. For an almost clear film S is small
// beside that spread, and should not be trusted. Throws InputError where readings or the film
// weight are out of range, where the backings may be swapped, where the film hides, and where it
// would send out more light than falls on it.
BareFilm bareFilmFrom(const TwoBackings& readings, double readingSpread = 0);
FilmOptics opticsFrom(const TwoBackings& readings, double filmWeight, double readingSpread = 0);

// The surface between film and air.
struct FilmSurface {
    double outerReflection =
        0.04;  // k1, of light that comes from outside; usual value, from memory
    double innerReflection = 0.60;  // k2, of diffuse light from inside; usual value, from memory
    // Of the gloss, what the instrument sees: 1 for a sphere with gloss included, 0 for 45°/0° and
    // with gloss excluded.
    double specularShare = 0;
};

// What the instrument reads of an inside reflectance, and back. Throw InputError where k1, k2 or
// the share lie outside 0 … 1 (k1 and k2 below 1), or the reflectance outside what can be.
double measuredOf(double inside, const FilmSurface& surface);
double insideOf(double measured, const FilmSurface& surface);

}  // namespace rackbook
