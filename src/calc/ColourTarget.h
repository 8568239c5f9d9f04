// The colour that an ink is to have, and how far another is from it.
#pragma once

#include <optional>

#include "calc/Bands.h"

namespace rackbook {

struct ColourTarget {
    Lab lab_D50;                       // for the 2° observer
    std::optional<Bands> reflectance;  // as measured; nothing where only CIELAB is known
};

// ΔE00 for the 2° observer. Under A and FL11 only where the target's spectrum is known.
struct ColourMiss {
    double underD50_dE00 = 0;
    std::optional<double> underA_dE00;
    std::optional<double> underFL11_dE00;
};

// Finite throughout.
bool isNumber(const ColourTarget& target);

ColourTarget targetOf(const Bands& measured);

ColourMiss missOf(const Bands& measured, const ColourTarget& target);

// What a search makes least: the square of the difference under D50 and, so that of recipes that
// come as near the one that holds in other light wins, a twentieth of the mean square of the
// others (our weighting, no source).
double costOf(const ColourMiss& miss);

}  // namespace rackbook
