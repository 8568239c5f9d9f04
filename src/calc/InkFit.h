// K and S of one lot, from readings of films that it is in.
#pragma once

#include <vector>

#include "calc/InkFilm.h"

namespace rackbook {

// A film over one backing; both as they are inside the surface (insideOf).
struct FilmReading {
    double filmWeight_gm2 = 0;  // above 0
    double share = 0;           // of the lot that is asked for, above 0
    InkOptics rest;             // what all else in the film adds, already by its share
    Bands backing{};
    Bands film{};
};

// Band by band the K and S, 0 or more, with which the films come out nearest to their readings:
// least squares of the cube roots of the reflectances as measured, which go as lightness does.
// Films so dark or so clear that S makes no difference leave it to a weak pull towards
// `usualScattering_m2g`, above 0. One reading allows no more than K: S is then held there. Pre: one
// reading or more; the surface is usable.
InkOptics fittedOptics(const std::vector<FilmReading>& readings, const FilmSurface& surface,
                       double usualScattering_m2g);

}  // namespace rackbook
