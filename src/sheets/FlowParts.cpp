// The parts of a flow that are more than lines of text.
#include <algorithm>

#include "sheets/FlowLayout.h"
#include "sheets/PanelLayout.h"
#include "sheets/TableLayout.h"

namespace rackbook {

void Flow::table(const SheetTable& table) {
    Layout& layout = *m_layout;
    const PageArea& area = layout.furniture.area();
    TableStrips set =
        layOutTable(table, layout.measurer, layout.scale, layout.structure, layout.width_mm(),
                    area.bottom_mm - std::max(area.firstTop_mm, area.laterTop_mm),
                    static_cast<int>(layout.headers.size()), layout.where);
    layout.headers.push_back(set.header);
    StripGroup group = std::move(set.header);
    std::move(set.rows.begin(), set.rows.end(), std::back_inserter(group));
    layout.add(std::move(group), layout.scale.grid_mm * 0.5);
}

void Flow::panels(const std::vector<Panel>& panels, double height_mm) {
    Layout& layout = *m_layout;
    if (panels.empty())
        return;
    layout.add({layOutPanels(panels, {layout.width_mm(), height_mm}, layout.pictures,
                             layout.measurer, layout.scale, layout.structure, layout.where)},
               layout.scale.grid_mm * 0.75);
    layout.pendingSpace_mm = layout.scale.grid_mm * 0.25;
}

PictureNumber Flow::addPicture(PictureFile picture) {
    m_layout->pictures.push_back(std::move(picture));
    return {m_layout->pictures.size() - 1};
}

void Flow::signatureLines(const std::vector<std::string>& captions) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    const double gap_mm = scale.columnGap_mm * 2;
    const double column_mm = (layout.width_mm() - gap_mm) / 2;
    const double line_mm = scale.grid_mm * 2.5;
    const std::size_t before = layout.afterHeading ? layout.headingBegin : layout.strips.size();
    if (before > 0)
        layout.strips[before - 1].keepsWithNext = true;
    for (std::size_t i = 0; i < captions.size(); i += 2) {
        Strip strip;
        strip.height_mm = line_mm;
        for (std::size_t side = 0; side < 2 && i + side < captions.size(); ++side) {
            const double x_mm = static_cast<double>(side) * (column_mm + gap_mm);
            const int element = layout.structure.add(ElementKind::paragraph);
            strip.content.rules.push_back(layout.hairline(x_mm, x_mm + column_mm, line_mm));
            double y_mm = line_mm + scale.tableLine_mm * 0.85;
            for (const std::string& line :
                 layout.lines(FontRole::body, scale.small_pt, captions[i + side], column_mm)) {
                strip.content.texts.push_back(
                    {FontRole::body, scale.small_pt, x_mm, y_mm, line, 0, element});
                strip.height_mm = std::max(strip.height_mm, y_mm + scale.tableLine_mm * 0.4);
                y_mm += scale.tableLine_mm;
            }
        }
        layout.add({std::move(strip)}, scale.grid_mm * 0.5);
    }
}

}  // namespace rackbook
