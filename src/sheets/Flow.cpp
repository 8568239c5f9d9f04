#include "sheets/Flow.h"

#include <algorithm>

#include "sheets/LineBreaker.h"
#include "sheets/PageFurniture.h"
#include "sheets/Pagination.h"
#include "sheets/TableLayout.h"
#include "sheets/TextRules.h"
#include "sheets/TypeScale.h"

namespace rackbook {

namespace {

// Two lines stay together at either end.
void keepEnds(StripGroup& lines) {
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        lines[i].keepsWithNext = i == 0 || i + 2 == lines.size();
}

void keepAll(StripGroup& lines) {
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        lines[i].keepsWithNext = true;
}

std::string sheetName(const FlowSetup& setup) {
    return "sheet \"" + setup.info.title + "\"";
}

}  // namespace

struct Flow::Layout {
    Layout(const TextMeasurer& textMeasurer, FlowSetup flowSetup)
        : measurer(textMeasurer),
          setup(std::move(flowSetup)),
          scale(TypeScale::of(setup.baseSize_pt)),
          where(sheetName(setup)),
          furniture(measurer, scale, setup, where) {}

    double width_mm() const { return furniture.width_mm(); }

    std::vector<std::string> lines(FontRole role, double size_pt, const std::string& text,
                                   double width) const {
        return breakLines(measurer, role, size_pt, settable(measurer, role, text, where), width);
    }

    // Lines set one below the other, baselines at the foot of each step.
    StripGroup stack(FontRole role, double size_pt, const std::string& text, double x_mm,
                     double width, double step_mm) const {
        StripGroup group;
        for (std::string& line : lines(role, size_pt, text, width)) {
            Strip strip;
            strip.height_mm = step_mm;
            if (!line.empty())
                strip.content.texts.push_back({role, size_pt, x_mm,
                                               step_mm - scale.grid_mm + scale.baselineDrop_mm,
                                               std::move(line), 0});
            group.push_back(std::move(strip));
        }
        return group;
    }

    void add(StripGroup group, double before_mm) {
        if (group.empty())
            return;
        group.front().before_mm += afterHeading ? pendingSpace_mm : before_mm + pendingSpace_mm;
        pendingSpace_mm = 0;
        afterHeading = false;
        std::move(group.begin(), group.end(), std::back_inserter(strips));
    }

    Rule hairline(double fromX_mm, double toX_mm, double y_mm) const {
        return {fromX_mm, y_mm, toX_mm, y_mm, scale.hairline_mm, 0};
    }

    void letterhead() {
        StripGroup group;
        for (std::size_t i = 0; i < setup.letterhead.size(); ++i) {
            const FontRole role = i == 0 ? FontRole::bodyStrong : FontRole::body;
            const double size_pt = i == 0 ? scale.base_pt : scale.small_pt;
            StripGroup part =
                stack(role, size_pt, setup.letterhead[i], 0, width_mm(), scale.grid_mm);
            std::move(part.begin(), part.end(), std::back_inserter(group));
        }
        if (group.empty())
            return;
        const double foot_mm = group.back().height_mm + scale.grid_mm * 0.5;
        group.back().content.rules.push_back(hairline(0, width_mm(), foot_mm));
        group.back().height_mm = foot_mm;
        keepAll(group);
        add(std::move(group), 0);
    }

    const TextMeasurer& measurer;
    FlowSetup setup;
    TypeScale scale;
    std::string where;
    PageFurniture furniture;
    StripGroup strips;
    std::vector<StripGroup> headers;
    double pendingSpace_mm = 0;
    bool afterHeading = false;
    std::size_t headingBegin = 0;  // first strip of the last heading
};

Flow::Flow(const TextMeasurer& measurer, FlowSetup setup)
    : m_layout(std::make_unique<Layout>(measurer, std::move(setup))) {
    m_layout->letterhead();
}

Flow::~Flow() = default;

void Flow::title(const std::string& text, const std::string& subtitle) {
    Layout& layout = *m_layout;
    const double grid_mm = layout.scale.grid_mm;
    StripGroup group = layout.stack(FontRole::bodyStrong, layout.scale.title_pt, text, 0,
                                    layout.width_mm(), grid_mm * 1.5);
    if (!subtitle.empty()) {
        StripGroup second = layout.stack(FontRole::body, layout.scale.heading_pt, subtitle, 0,
                                         layout.width_mm(), grid_mm);
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
    StripGroup group =
        layout.stack(FontRole::bodyStrong, size_pt, text, 0, layout.width_mm(), scale.grid_mm);
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
    layout.headingBegin = layout.strips.size();
    layout.add(std::move(group), level == 1 ? scale.grid_mm * 1.25 : scale.grid_mm * 0.75);
    layout.afterHeading = true;
}

void Flow::paragraph(const std::string& text, TextStyle style) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    const bool small = style == TextStyle::small;
    StripGroup group =
        layout.stack(style == TextStyle::strong ? FontRole::bodyStrong : FontRole::body,
                     small ? scale.small_pt : scale.base_pt, text, 0, layout.width_mm(),
                     small ? scale.tableLine_mm : scale.grid_mm);
    keepEnds(group);
    layout.add(std::move(group), scale.grid_mm * 0.5);
}

void Flow::labelValues(const std::vector<LabelValue>& entries) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    const double labels_mm = std::min(layout.width_mm() * 0.26, 42.0);
    const double values_mm = labels_mm + scale.columnGap_mm;
    bool first = true;
    for (const LabelValue& entry : entries) {
        StripGroup group =
            layout.stack(FontRole::body, scale.small_pt, entry.label, 0, labels_mm, scale.grid_mm);
        StripGroup value = layout.stack(FontRole::body, scale.base_pt, entry.value, values_mm,
                                        layout.width_mm() - values_mm, scale.grid_mm);
        if (group.size() < value.size()) {
            Strip blank;
            blank.height_mm = scale.grid_mm;
            group.resize(value.size(), blank);
        }
        for (std::size_t i = 0; i < value.size(); ++i)
            for (TextRun& run : value[i].content.texts)
                group[i].content.texts.push_back(std::move(run));
        keepEnds(group);
        layout.add(std::move(group), scale.grid_mm * (first ? 0.5 : 0.15));
        first = false;
    }
}

void Flow::table(const SheetTable& table) {
    Layout& layout = *m_layout;
    const PageArea& area = layout.furniture.area();
    TableStrips set = layOutTable(table, layout.measurer, layout.scale, layout.width_mm(),
                                  area.bottom_mm - std::max(area.firstTop_mm, area.laterTop_mm),
                                  static_cast<int>(layout.headers.size()), layout.where,
                                  layout.setup.decimalSign);
    layout.headers.push_back(set.header);
    StripGroup group = std::move(set.header);
    std::move(set.rows.begin(), set.rows.end(), std::back_inserter(group));
    layout.add(std::move(group), layout.scale.grid_mm * 0.5);
}

void Flow::note(NoteKind kind, const std::string& label, const std::string& text) {
    Layout& layout = *m_layout;
    const TypeScale& scale = layout.scale;
    const double x_mm = scale.grid_mm;
    const auto stack = [&](FontRole role, const std::string& words) {
        return layout.stack(role, scale.base_pt, words, x_mm, layout.width_mm() - x_mm,
                            scale.grid_mm);
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
            strip.content.rules.push_back(layout.hairline(x_mm, x_mm + column_mm, line_mm));
            double y_mm = line_mm + scale.tableLine_mm * 0.85;
            for (const std::string& line :
                 layout.lines(FontRole::body, scale.small_pt, captions[i + side], column_mm)) {
                strip.content.texts.push_back(
                    {FontRole::body, scale.small_pt, x_mm, y_mm, line, 0});
                strip.height_mm = std::max(strip.height_mm, y_mm + scale.tableLine_mm * 0.4);
                y_mm += scale.tableLine_mm;
            }
        }
        layout.add({std::move(strip)}, scale.grid_mm * 0.5);
    }
}

PageModel Flow::finish() {
    Layout& layout = *m_layout;
    PageModel model;
    model.paper = layout.setup.paper;
    model.info = layout.setup.info;
    model.pages =
        paginate(layout.strips, layout.headers, layout.furniture.area(), sheetName(layout.setup));
    layout.furniture.addTo(model.pages);
    return model;
}

}  // namespace rackbook
