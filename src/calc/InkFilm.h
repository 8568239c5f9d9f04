// What a gram of ink on a square metre does to light, and the colour of films and stacks of it.
//
// K and S of a mix are the sums of those of its parts, each by its share of the mass (Duncan 1940,
// Proc. Phys. Soc. 52:390); a film of it is that of Kubelka and Munk (KubelkaMunk.h). Films lie in
// optical contact on what is below them; the surface to the air is corrected for once, on top.
#pragma once

#include <vector>

#include "calc/Bands.h"
#include "calc/KubelkaMunk.h"
#include "calc/RecipeShares.h"

namespace rackbook {

// Per gram of wet ink on a square metre, in m²/g, 0 or more.
struct InkOptics {
    Bands absorption_m2g{};
    Bands scattering_m2g{};
};

// What readings of paper and of films, as measured, are inside the surface. Values that no surface
// could send back are taken to the nearest that it could (paper with brighteners passes 1). Throws
// InputError where the surface is wrong.
Bands insideOf(const Bands& measured, const FilmSurface& surface);
// Pre: 0 … 1.
Bands measuredOf(const Bands& inside, const FilmSurface& surface);

// Shares of lots with the optics of each lot by its position. Pre: every lot named has optics.
InkOptics mixedOf(const std::vector<LotShare>& shares, const std::vector<InkOptics>& optics);

// Inside reflectance of a film over what lies below it. Throws InputError as reflectanceOver.
Bands filmOver(const Bands& belowInside, const InkOptics& ink, double filmWeight_gm2);

}  // namespace rackbook
