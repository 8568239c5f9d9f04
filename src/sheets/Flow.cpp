#include "sheets/Flow.h"

#include <algorithm>

#include "sheets/FlowLayout.h"
#include "sheets/Pagination.h"

namespace rackbook {

Flow::Flow(const TextMeasurer& measurer, FlowSetup setup)
    : m_layout(std::make_unique<Layout>(measurer, std::move(setup))) {
    m_layout->letterhead();
}

Flow::~Flow() = default;

void Flow::title(const std::string& text, const std::string& subtitle) {
    Layout& layout = *m_layout;
    const double grid_mm = layout.scale.grid_mm;
    StripGroup group =
        layout.stack({FontRole::bodyStrong, layout.scale.title_pt, grid_mm * 1.5}, text, 0,
                     layout.width_mm(), layout.structure.add(ElementKind::title));
    if (!subtitle.empty()) {
        StripGroup second =
            layout.stack({FontRole::body, layout.scale.heading_pt, grid_mm}, subtitle, 0,
                         layout.width_mm(), layout.structure.add(ElementKind::paragraph));
        second.front().before_mm = grid_mm * 0.4;
        std::move(second.begin(), second.end(), std::back_inserter(group));
    }
    for (Strip& strip : group)
        strip.keepsWithNext = true;
    layout.add(std::move(group), grid_mm * 1.5);
}

void Flow::heading(int level, const std::string& text) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    layout.where = sheetName(layout.setup) + ", section \"" + text + "\"";
    const double size_pt = level == 1   ? scale.heading_pt
                           : level == 2 ? scale.base_pt
                                        : scale.small_pt;
    const int element =
        layout.structure.add(level == 1 ? ElementKind::heading : ElementKind::subheading);
    StripGroup group = layout.stack({FontRole::bodyStrong, size_pt, scale.grid_mm}, text, 0,
                                    layout.width_mm(), element);
    if (level == 1) {
        Strip& first = group.front();
        first.height_mm += scale.grid_mm * 0.5;
        for (TextRun& run : first.content.texts)
            run.baselineY_mm += scale.grid_mm * 0.5;
        first.rulesAbove.push_back(layout.hairline(0, layout.width_mm(), 0));
        group.back().height_mm += scale.grid_mm * 0.25;
    }
    for (Strip& strip : group)
        strip.keepsWithNext = true;
    layout.leads = false;
    layout.headingBegin = layout.strips.size();
    layout.add(std::move(group), level == 1 ? scale.grid_mm * 1.25 : scale.grid_mm * 0.75);
    layout.afterHeading = true;
}

void Flow::paragraph(const std::string& text, TextStyle style) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    const TextLook look =
        style == TextStyle::small
            ? TextLook{FontRole::body, scale.small_pt, scale.tableLine_mm}
            : layout.baseLook(style == TextStyle::strong ? FontRole::bodyStrong : FontRole::body);
    StripGroup group = layout.stack(look, text, 0, layout.width_mm(),
                                    layout.structure.add(ElementKind::paragraph));
    keepEnds(group);
    if (style == TextStyle::small)
        layout.addSmallText(std::move(group), scale.grid_mm * 0.5);
    else
        layout.add(std::move(group), scale.grid_mm * 0.5);
}

void Flow::labelValues(const std::vector<LabelValue>& entries) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    const double labels_mm = std::min(layout.width_mm() * 0.26, 42.0);
    const double values_mm = labels_mm + scale.columnGap_mm;
    const int list = layout.structure.add(ElementKind::list);
    StripGroup all;
    for (const LabelValue& entry : entries) {
        const int item = layout.structure.add(ElementKind::listItem, list);
        StripGroup group =
            layout.stack({FontRole::body, scale.small_pt, scale.grid_mm}, entry.label, 0, labels_mm,
                         layout.structure.add(ElementKind::listLabel, item));
        StripGroup value = layout.stack(layout.baseLook(FontRole::body), entry.value, values_mm,
                                        layout.width_mm() - values_mm,
                                        layout.structure.add(ElementKind::listBody, item));
        if (group.size() < value.size()) {
            Strip blank;
            blank.height_mm = scale.grid_mm;
            group.resize(value.size(), blank);
        }
        for (std::size_t i = 0; i < value.size(); ++i)
            for (TextRun& run : value[i].content.texts)
                group[i].content.texts.push_back(std::move(run));
        keepEnds(group);
        group.front().before_mm = all.empty() ? 0 : scale.grid_mm * 0.15;
        std::move(group.begin(), group.end(), std::back_inserter(all));
    }
    constexpr std::size_t mostTogether = 12;
    if (all.size() <= mostTogether)
        keepAll(all);
    layout.add(std::move(all), scale.grid_mm * 0.5);
}

void Flow::note(NoteKind kind, const std::string& label, const std::string& text) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    const double x_mm = scale.grid_mm;
    const auto stack = [&](FontRole role, const std::string& words) {
        return layout.stack(layout.baseLook(role), words, x_mm, layout.width_mm() - x_mm,
                            layout.structure.add(ElementKind::paragraph));
    };
    StripGroup group = label.empty() ? StripGroup{} : stack(FontRole::bodyStrong, label);
    StripGroup body = stack(FontRole::body, text);
    std::move(body.begin(), body.end(), std::back_inserter(group));
    const double bar_mm = kind == NoteKind::caution ? scale.bar_mm : scale.hairline_mm;
    for (Strip& strip : group)
        strip.content.rules.push_back({bar_mm / 2, 0, bar_mm / 2, strip.height_mm, bar_mm, 0});
    constexpr std::size_t mostTogether = 8;
    if (group.size() <= mostTogether)
        keepAll(group);
    else
        keepEnds(group);
    layout.add(std::move(group), scale.grid_mm * 0.75);
    layout.pendingSpace_mm = scale.grid_mm * 0.25;
}

void Flow::space(double lines) {
    m_layout->pendingSpace_mm += lines * m_layout->scale.grid_mm;
}

PageModel Flow::finish() {
    Layout& layout = *m_layout;
    PageModel model;
    model.paper = layout.setup.paper;
    model.info = layout.setup.info;
    model.pages = paginate(layout.strips, layout.headers, layout.furniture.area(),
                           sheetName(layout.setup), &layout.fieldPlaces);
    layout.furniture.addTo(model.pages);
    model.structure = layout.structure.take();
    model.pictures = std::move(layout.pictures);
    return model;
}

}  // namespace rackbook
