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

// Widens columns below what they need by what others have beyond what they keep.
template <class Needed, class Kept>
void widenTo(std::vector<ColumnWidth>& columns, Needed needed, Kept kept) {
    double lacking_mm = 0;
    for (const ColumnWidth& column : columns)
        lacking_mm += std::max(0.0, needed(column) - column.width_mm);
    if (lacking_mm <= 0)
        return;
    const double share = 1 - takeFrom(columns, lacking_mm, kept) / lacking_mm;
    for (ColumnWidth& column : columns)
        column.width_mm += share * std::max(0.0, needed(column) - column.width_mm);
}

}  // namespace

void makeRoomForWords(std::vector<ColumnWidth>& columns) {
    const auto forHeader = [](const ColumnWidth& column) { return column.ofHeader_mm; };
    const auto forAll = [](const ColumnWidth& column) {
        return std::max(column.ofHeader_mm, column.ofContent_mm);
    };
    widenTo(columns, forHeader, forAll);
    widenTo(columns, forHeader, forHeader);
    widenTo(columns, forAll, forAll);
}

}  // namespace rackbook
