// The light of sun and sky on level and on upright planes out of doors, W/m², all wavelengths.
// Nothing stands in the way: trees, houses, glass and rooms are the caller's.
#pragma once

#include "calc/CloudCover.h"
#include "calc/SunPosition.h"

namespace rackbook {

struct SkyLight {
    SunPosition sun;
    Oktas oktas;
    Estimate global_Wm2;        // on a level plane, sun and sky
    Estimate directNormal_Wm2;  // straight from the sun, on a plane that faces it
    Estimate diffuse_Wm2;       // from the sky, on a level plane
};

// The clear sky (ClearSky.h) times what clouds let through (CloudCover.h), parted by Erbs with the
// clearness index that results, so that the sky's share rises with cloud. Of the best values,
// direct·sin(elevation) + diffuse is the global; the bounds of each are its own and cannot all hold
// at once. All 0 while the sun, with refraction, is not above the horizon. No best values where the
// cover has none. Throws InputError as requireOktas.
SkyLight skyLightOf(const SunPosition& sun, const Oktas& oktas);

// An upright wall or window in the open.
struct UprightPlane {
    double facing_deg = 180;  // azimuth of what it looks at: 0 north, 90 east, 180 south, 270 west
    double groundAlbedo = 0.2;  // usual value for grass and paving (Liu, Jordan 1963); snow 0.6–0.8
};

// Light on one plane, by where it comes from. The sum of the parts' bounds is wider than that of
// the total where the total is known better.
struct PlaneLight {
    Estimate direct_Wm2;
    Estimate sky_Wm2;
    Estimate ground_Wm2;
    Estimate total_Wm2;
};

PlaneLight onLevel(const SkyLight& light);

// Direct light by the cosine of incidence; half of the sky and half of the ground are in view and
// both are taken as equally bright all over (Liu, Jordan 1963, Solar Energy 7:53). A clear sky is
// brighter around the sun and at the horizon, so that this gives too little on the sunny side, by
// about a tenth (from memory), and too much opposite. Throws InputError where the azimuth is not
// finite or outside −360 … 360, or the albedo outside 0 … 1.
PlaneLight onUpright(const SkyLight& light, const UprightPlane& plane);

}  // namespace rackbook
