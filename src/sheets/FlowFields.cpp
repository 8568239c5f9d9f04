// The parts of a flow that are filled in by hand.
#include "sheets/FieldLayout.h"
#include "sheets/FlowLayout.h"

namespace rackbook {

void Flow::fillIn(const std::vector<FieldBox>& boxes, double height_mm) {
    Layout& layout = *m_layout;
    layout.add({layOutFieldBoxes(boxes, height_mm,
                                 {layout.measurer, layout.scale, layout.structure,
                                  layout.width_mm(), layout.where})},
               layout.scale.grid_mm * 0.5);
}

void Flow::fillInLines(const std::string& name, const std::string& label, int lines,
                       double step_mm) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    const int element = layout.structure.add(ElementKind::paragraph);
    StripGroup head = layout.stack({FontRole::body, scale.small_pt, scale.tableLine_mm}, label, 0,
                                   layout.width_mm(), element);
    keepAll(head);
    Strip strip;
    strip.height_mm = step_mm * lines;
    for (int line = 1; line <= lines; ++line) {
        Rule rule = layout.hairline(0, layout.width_mm(), step_mm * line);
        rule.element = element;
        strip.content.rules.push_back(rule);
    }
    strip.fields.push_back({name,
                            {0, 0, layout.width_mm(), strip.height_mm},
                            layout.structure.add(ElementKind::form, element)});
    if (!head.empty())
        head.back().keepsWithNext = true;
    head.push_back(std::move(strip));
    layout.add(std::move(head), scale.grid_mm * 0.5);
}

void Flow::fillInRows(const FieldTable& table) {
    Layout& layout = *m_layout;
    StripGroup group = layOutFieldRows(
        table, {layout.measurer, layout.scale, layout.structure, layout.width_mm(), layout.where});
    const int header = static_cast<int>(layout.headers.size());
    layout.headers.push_back({group.front()});
    for (std::size_t i = 1; i < group.size(); ++i)
        group[i].repeatedHeader = header;
    layout.add(std::move(group), layout.scale.grid_mm * 0.5);
}

const std::vector<FieldPlace>& Flow::fieldPlaces() const {
    return m_layout->fieldPlaces;
}

}  // namespace rackbook
