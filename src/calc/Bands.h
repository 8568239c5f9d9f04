// Reflectance at the wavelengths that films of ink are computed at: 380 to 730 nm, every 10 nm.
#pragma once

#include <array>
#include <cstddef>

#include "calc/Colorimetry.h"

namespace rackbook {

constexpr double bandStart_nm = 380;
constexpr double bandStep_nm = 10;
constexpr std::size_t bandCount = 36;

// One value a band, from the shortest wavelength. Reflectances are fractions.
using Bands = std::array<double, bandCount>;

constexpr double wavelengthOf_nm(std::size_t band) {
    return bandStart_nm + bandStep_nm * static_cast<double>(band);
}

// By the interpolation of reflectanceOnTable; what was not measured at either end is held. Throws
// InputError as requireUsable.
Bands bandsOf(const Spectrum& spectrum);
Spectrum spectrumOf(const Bands& bands);

// The same sums as those of the spectrum (Colorimetry.h), for the 2° observer: they are linear in
// the bands, so that their weights are made once.
Xyz xyzOf(const Bands& bands, ViewingLight light);
Lab labOf(const Bands& bands, ViewingLight light);

}  // namespace rackbook
