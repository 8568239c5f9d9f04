// Figures of the CIE standard observers and illuminants, every 5 nm from 360 to 830 nm, all from
// CIE 15 (Colorimetry). Held as constants; nothing here fails.
//
// How they were checked: the observers add up to the sums printed in CIE 15:2004 within 2e-6, and
// the sums of S·x̄, S·ȳ, S·z̄ give the published white points (tests); A equals the formula of CIE 15
// and D65 the daylight components within 0.0005. D50 is computed from the daylight components S0,
// S1, S2 with T = 5000·1.4388/1.4380 K and M1 = −1.039, M2 = 0.363. The tables were not seen in
// print.
#pragma once

#include <array>
#include <cstddef>

#include "records/Reading.h"

namespace rackbook {

constexpr double tableStart_nm = 360;
constexpr double tableStep_nm = 5;
constexpr std::size_t tableSize = 95;

// One value for each wavelength of the tables, from the shortest.
using CieColumn = std::array<double, tableSize>;

// What a sheet is looked at in. FL11 is the three-band fluorescent lamp of CIE 15 (about 4000 K),
// tabulated from 380 to 780 nm and 0 outside.
enum class ViewingLight { D50, D65, A, FL11 };

ViewingLight viewingLightOf(Illuminant illuminant);

// "D50", "D65", "A", "FL11".
const char* nameOf(ViewingLight light);

// Relative spectral power; only ratios within one light mean something.
const CieColumn& powerOf(ViewingLight light);

struct ColourMatching {
    CieColumn x;
    CieColumn y;
    CieColumn z;
};

// CIE 1931 for deg2, CIE 1964 for deg10.
const ColourMatching& matchingOf(Observer observer);

}  // namespace rackbook
