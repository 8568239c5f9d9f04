#include "calc/Bands.h"

#include "calc/Spectrum.h"

namespace rackbook {

namespace {

struct LightWeights {
    std::array<Xyz, bandCount> weights;
    Xyz white;
};

LightWeights weightsFor(ViewingLight light) {
    LightWeights made;
    for (std::size_t band = 0; band < bandCount; ++band) {
        Bands alone{};
        alone[band] = 1;
        made.weights[band] = xyzOf(reflectanceOnTable(spectrumOf(alone)), light, Observer::deg2);
    }
    made.white = whiteOf(light, Observer::deg2);
    return made;
}

const LightWeights& weightsOf(ViewingLight light) {
    static const std::array<LightWeights, 4> all = {
        weightsFor(ViewingLight::D50), weightsFor(ViewingLight::D65), weightsFor(ViewingLight::A),
        weightsFor(ViewingLight::FL11)};
    return all[static_cast<std::size_t>(light)];
}

}  // namespace

Bands bandsOf(const Spectrum& spectrum) {
    const CieColumn column = reflectanceOnTable(spectrum);
    constexpr auto first = static_cast<std::size_t>((bandStart_nm - tableStart_nm) / tableStep_nm);
    constexpr auto step = static_cast<std::size_t>(bandStep_nm / tableStep_nm);
    Bands bands{};
    for (std::size_t band = 0; band < bandCount; ++band)
        bands[band] = column[first + step * band];
    return bands;
}

Spectrum spectrumOf(const Bands& bands) {
    return {bandStart_nm, bandStep_nm, {bands.begin(), bands.end()}};
}

Xyz xyzOf(const Bands& bands, ViewingLight light) {
    const LightWeights& made = weightsOf(light);
    Xyz sum;
    for (std::size_t band = 0; band < bandCount; ++band) {
        sum.x += made.weights[band].x * bands[band];
        sum.y += made.weights[band].y * bands[band];
        sum.z += made.weights[band].z * bands[band];
    }
    return sum;
}

Lab labOf(const Bands& bands, ViewingLight light) {
    return labOf(xyzOf(bands, light), weightsOf(light).white);
}

}  // namespace rackbook
