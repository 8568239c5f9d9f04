// Sunlight on a level plane under a cloudless sky, and how much of sunlight comes from the sky.
// Irradiances in W/m², all wavelengths.
#pragma once

#include "calc/Estimate.h"

namespace rackbook {

// Outside the air on a plane that faces the sun: 1361 W/m² at 1 AU (Kopp, Lean 2011: 1360.8) by
// the inverse square of the distance. Throws InputError where the distance is not above 0 and
// finite.
double extraterrestrial_Wm2(double distance_AU);

// Sun and sky together: 1098·sin h·exp(−0.059/sin h), Haurwitz 1945 (J. Meteorology 2:154), 0 at
// and below the horizon: twilight is left out. The formula has no haze, water vapour or height of
// the place in it. 0.057 also circulates; only with 0.059 are there published values to check with
// (2 % less at 5°, 0.2 % less in the zenith). Throws InputError where the elevation is not in
// −90 … 90.
double haurwitzGlobal_Wm2(double elevation_deg);

// The same with what clear skies differ by: 15 % less, as over Hamburg (910·sin h − 30, Kasten,
// Czeplak 1980), to 10 % more, our guess for dry and clean air; smoke and high mountains lie
// farther off.
Estimate clearSkyGlobal_Wm2(double elevation_deg);

// Of the light on a level plane, the share that comes from the sky and not straight from the sun,
// after Erbs, Klein, Duffie 1982 (Solar Energy 28:293). The clearness index is the light on a
// level plane over that outside the air. Fitted to hours at four stations in the United States
// (31–42° N) and tried on one in Australia (from memory); snow, high places and low sun are less
// well met. Falls from 1 to 0.165, with steps up to 0.002 where its parts meet. Throws
// InputError where the index is negative or not finite.
double erbsDiffuseShare(double clearnessIndex);

// How far single hours lie from Erbs' share, as a part of it: models of this kind have root mean
// square errors of 20–35 % (abstract of Ruiz-Arias et al. 2010, Energy Convers. Manag. 51:881).
constexpr double diffuseShareSpread = 0.30;

}  // namespace rackbook
