#include "commands/SampleColour.h"

#include <cmath>

namespace rackbook {

namespace {

// XYZ comes with four decimals at most; more in CIELAB would be noise.
double rounded(double value) {
    return std::round(value * 1e4) / 1e4 + 0.0;  // + 0.0 makes 0 of -0
}

}  // namespace

ViewingLight lightOf(const MeasuredSample& sample) {
    return viewingLightOf(sample.reading.illuminant.value_or(Illuminant::D50));
}

Observer observerOf(const MeasuredSample& sample) {
    return sample.reading.observer.value_or(Observer::deg2);
}

std::optional<Lab> labOfXyz(const MeasuredSample& sample) {
    if (!sample.xyz)
        return std::nullopt;
    return labOf(Xyz{sample.xyz->x, sample.xyz->y, sample.xyz->z},
                 whiteOf(lightOf(sample), observerOf(sample)));
}

Reading readingWithLab(const MeasuredSample& sample) {
    Reading reading = sample.reading;
    if (reading.labL)
        return reading;
    if (const std::optional<Lab> lab = labOfXyz(sample)) {
        reading.labL = rounded(lab->l);
        reading.labA = rounded(lab->a);
        reading.labB = rounded(lab->b);
    }
    return reading;
}

std::optional<ReadingColour> underD50(const MeasuredSample& sample) {
    return colourOf(readingWithLab(sample), ViewingLight::D50, Observer::deg2);
}

bool isLightAssumed(const MeasuredSample& sample) {
    const bool isComputed = sample.reading.labL || sample.xyz;
    return isComputed && (!sample.reading.illuminant || !sample.reading.observer);
}

}  // namespace rackbook
