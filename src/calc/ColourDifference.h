// Differences between two colours in CIELAB, both under the same white.
#pragma once

namespace rackbook {

// L* 0 … 100 for surfaces; a* and b* in the same unit.
struct Lab {
    double l = 0;
    double a = 0;
    double b = 0;
};

// ΔE*ab of 1976 (CIE 15).
double deltaEab(const Lab& first, const Lab& second);

// ΔE00 with kL = kC = kH = 1 (CIE 142; Sharma, Wu, Dalal 2005 for the cases of hue). Symmetric.
// Hues 180° apart within 1e-6° take the plain mean of the hues, as the published examples do; on
// either side of such a tie the formula itself jumps.
double deltaE00(const Lab& first, const Lab& second);

}  // namespace rackbook
