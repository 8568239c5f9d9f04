// How much of daylight out of doors is near ultraviolet (UV-A, 315–400 nm), and the UV index.
//
// Source of the clear sky's figures: the reference spectra of ASTM G173-03 (air mass 1.5, sun at
// 41.8°), summed by us over 315–400 nm: outside the air 6.3 %, straight from the sun 3.3 %, sun and
// sky on a plane tilted 37° 4.5 %, hence the sky alone 13.5 %. What clouds do and all spreads: from
// memory, no source; measured shares of the global rise with cloud to about 6–8 %.
#pragma once

#include "calc/SkyLight.h"

namespace rackbook {

// Straight from the sun: 0.0634·exp(−0.426·m), our interpolation between the two spectra by the
// law of Lambert and Beer, with the air mass m of Kasten, Young 1989 (Appl. Opt. 28:4735). Throws
// InputError where the elevation is not in −90 … 90; 0 at and below the horizon.
Estimate directUltravioletShare(double elevation_deg);

// From the sky: 13.5 % clear to 6.5 % overcast.
Estimate skyUltravioletShare(const Oktas& oktas);

// Sun and sky together under a clear sky: 4.5 %.
Estimate clearGlobalUltravioletShare();

// W/m² of UV-A on the plane. Of what the ground sends back it counts 0.4 of the share that sun and
// sky have, 0.1 to 1.2: grass and soil return 2–5 % of ultraviolet, paving 10 %, snow nearly all
// (from memory).
Estimate nearUltraviolet_Wm2(const SkyLight& light, const PlaneLight& plane);

// The air mass relative to the zenith, 1 … 38; for a sun at or below the horizon that of the
// horizon.
double airMass(double elevation_deg);

// 12.5·sin(h)^2.42·(ozone/300)^−1.23, Madronich 2007 (Photochem. Photobiol. 83:1537): no clouds,
// little haze, dark ground, sea level; 0 for a sun at or below the horizon. Good while the sun is
// higher than some 20–30° (from memory). It weighs sunburn, which is nearly all UV-B: window glass
// stops that, so the index says nothing of what fades a print behind glass. Ozone in Dobson units,
// 100 … 600. Throws InputError out of these ranges.
double clearSkyUvIndex(double elevation_deg, double ozone_DU = 300);

// The index is 40 times the irradiance weighed for sunburn (WMO, WHO).
double erythemal_Wm2(double uvIndex);

}  // namespace rackbook
