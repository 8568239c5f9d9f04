#include "calc/InkFilm.h"

#include <algorithm>

namespace rackbook {

Bands insideOf(const Bands& measured, const FilmSurface& surface) {
    const double least = measuredOf(0.0, surface);
    const double most = measuredOf(1.0, surface);
    Bands inside{};
    for (std::size_t band = 0; band < bandCount; ++band)
        inside[band] = insideOf(std::clamp(measured[band], least, most), surface);
    return inside;
}

Bands measuredOf(const Bands& inside, const FilmSurface& surface) {
    Bands measured{};
    for (std::size_t band = 0; band < bandCount; ++band)
        measured[band] = measuredOf(inside[band], surface);
    return measured;
}

InkOptics mixedOf(const std::vector<LotShare>& shares, const std::vector<InkOptics>& optics) {
    InkOptics mixed;
    for (const LotShare& part : shares) {
        const InkOptics& lot = optics[static_cast<std::size_t>(part.lot)];
        for (std::size_t band = 0; band < bandCount; ++band) {
            mixed.absorption_m2g[band] += part.share * lot.absorption_m2g[band];
            mixed.scattering_m2g[band] += part.share * lot.scattering_m2g[band];
        }
    }
    return mixed;
}

Bands filmOver(const Bands& belowInside, const InkOptics& ink, double filmWeight_gm2) {
    Bands over{};
    for (std::size_t band = 0; band < bandCount; ++band)
        over[band] =
            std::min(1.0, reflectanceOver(belowInside[band],
                                          {ink.absorption_m2g[band], ink.scattering_m2g[band]},
                                          filmWeight_gm2));
    return over;
}

}  // namespace rackbook
