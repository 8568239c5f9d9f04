#include "sheets/TypeScale.h"

#include <cmath>

#include "sheets/TextMeasurer.h"

namespace rackbook {

namespace {

double toQuarterPoint(double size_pt) {
    return std::round(size_pt * 4) / 4;
}

}  // namespace

TypeScale TypeScale::of(double base_pt) {
    TypeScale scale{};
    scale.base_pt = base_pt;
    scale.small_pt = toQuarterPoint(base_pt * 0.88);
    scale.heading_pt = toQuarterPoint(base_pt * 1.2);
    scale.title_pt = toQuarterPoint(base_pt * 1.9);
    const double grid_pt = toQuarterPoint(base_pt * 1.45);
    scale.grid_mm = grid_pt * mmPerPoint;
    scale.tableLine_mm = toQuarterPoint(grid_pt * 0.86) * mmPerPoint;
    scale.baselineDrop_mm = scale.grid_mm * 0.74;
    scale.columnGap_mm = scale.grid_mm;
    scale.hairline_mm = 0.07;
    scale.rule_mm = 0.2;
    scale.rowGrey = 0.55;
    scale.bar_mm = 0.8;
    return scale;
}

}  // namespace rackbook
