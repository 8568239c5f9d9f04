// What colour a measured sample is.
#pragma once

#include <optional>

#include "calc/ReadingColour.h"
#include "exchange/MeasurementFile.h"

namespace rackbook {

// The light and observer that CIELAB and XYZ of the sample stand for; D50 and 2° where the file
// does not say.
ViewingLight lightOf(const MeasuredSample& sample);
Observer observerOf(const MeasuredSample& sample);

// CIELAB of its XYZ, under its own light; nothing where it has none.
std::optional<Lab> labOfXyz(const MeasuredSample& sample);

// Its reading with CIELAB: its own, else that of its XYZ, to four decimals.
Reading readingWithLab(const MeasuredSample& sample);

// Under D50 and 2°, from the spectrum where there is one.
std::optional<ReadingColour> underD50(const MeasuredSample& sample);

// Whether the file leaves open for which light or observer its CIELAB or XYZ was computed.
bool isLightAssumed(const MeasuredSample& sample);

}  // namespace rackbook
