// Sets a plot into a rectangle.
#pragma once

#include <string>

#include "sheets/PageModel.h"
#include "sheets/Plot.h"
#include "sheets/TypeScale.h"

namespace rackbook {

// Coordinates from the top left corner of the rectangle. Lines are cut off where they leave the
// axes; labels that would touch one another are moved apart or, for ticks, left out. All that is
// set belongs to `element`.
// Throws RenderError, naming `where`, for text that cannot be set, for an axis that is not finite
// or goes backwards, and where words leave no room for the plot.
Page layOutPlot(const Plot& plot, const TextMeasurer& measurer, const TypeScale& scale,
                double width_mm, double height_mm, int element, const std::string& where);

}  // namespace rackbook
