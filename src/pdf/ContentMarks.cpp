#include "pdf/ContentMarks.h"

#include <algorithm>

namespace rackbook {

void ContentMarks::cover(std::size_t element, const Box& box) {
    std::optional<Box>& extent = m_extents[element];
    if (!extent) {
        extent = box;
        return;
    }
    const double right_mm = std::max(extent->x_mm + extent->width_mm, box.x_mm + box.width_mm);
    const double bottom_mm = std::max(extent->y_mm + extent->height_mm, box.y_mm + box.height_mm);
    extent->x_mm = std::min(extent->x_mm, box.x_mm);
    extent->y_mm = std::min(extent->y_mm, box.y_mm);
    extent->width_mm = right_mm - extent->x_mm;
    extent->height_mm = bottom_mm - extent->y_mm;
}

std::optional<Box> ContentMarks::extentOf(std::size_t element) const {
    const std::vector<ContentMark>& marks = m_ofElement[element];
    for (const ContentMark& mark : marks)
        if (mark.page != marks.front().page)
            return std::nullopt;
    return m_extents[element];
}

}  // namespace rackbook
