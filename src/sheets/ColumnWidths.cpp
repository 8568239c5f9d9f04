#include "sheets/ColumnWidths.h"

#include <algorithm>

namespace rackbook {

namespace {

// Takes up to `wanted_mm` of what the columns have beyond what they need; gives what is lacking.
template <class Needed>
double takeFrom(std::vector<ColumnWidth>& columns, double wanted_mm, Needed needed) {
    double spare_mm = 0;
    for (const ColumnWidth& column : columns)
        spare_mm += std::max(0.0, column.width_mm - needed(column));
    if (spare_mm <= 0 || wanted_mm <= 0)
        return wanted_mm;
    const double share = std::min(1.0, wanted_mm / spare_mm);
    for (ColumnWidth& column : columns)
        column.width_mm -= share * std::max(0.0, column.width_mm - needed(column));
    return wanted_mm - share * spare_mm;
}

}  // namespace

void makeRoomForHeaders(std::vector<ColumnWidth>& columns) {
    double lacking_mm = 0;
    for (const ColumnWidth& column : columns)
        lacking_mm += std::max(0.0, column.ofHeader_mm - column.width_mm);
    if (lacking_mm <= 0)
        return;
    double left_mm = takeFrom(columns, lacking_mm, [](const ColumnWidth& column) {
        return std::max(column.ofHeader_mm, column.ofContent_mm);
    });
    left_mm =
        takeFrom(columns, left_mm, [](const ColumnWidth& column) { return column.ofHeader_mm; });
    const double share = 1 - left_mm / lacking_mm;
    for (ColumnWidth& column : columns)
        column.width_mm += share * std::max(0.0, column.ofHeader_mm - column.width_mm);
}

}  // namespace rackbook
