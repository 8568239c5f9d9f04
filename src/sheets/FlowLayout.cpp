#include "sheets/FlowLayout.h"

#include "base/Finding.h"
#include "sheets/LineBreaker.h"
#include "sheets/TextRules.h"

namespace rackbook {

void keepEnds(StripGroup& lines) {
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        lines[i].keepsWithNext = i == 0 || i + 2 == lines.size();
}

void keepAll(StripGroup& lines) {
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        lines[i].keepsWithNext = true;
}

std::string sheetName(const FlowSetup& setup) {
    return "sheet \"" + excerpt(setup.info.title) + "\"";
}

Flow::Layout::Layout(const TextMeasurer& textMeasurer, FlowSetup flowSetup)
    : measurer(textMeasurer),
      setup(std::move(flowSetup)),
      scale(TypeScale::of(setup.baseSize_pt)),
      where(sheetName(setup)),
      furniture(measurer, scale, setup, where) {}

std::vector<std::string> Flow::Layout::lines(FontRole role, double size_pt, const std::string& text,
                                             double width) const {
    return breakLines(measurer, role, size_pt, settable(measurer, role, text, where), width);
}

StripGroup Flow::Layout::stack(const TextLook& look, const std::string& text, double x_mm,
                               double width, int element) const {
    StripGroup group;
    for (std::string& line : lines(look.role, look.size_pt, text, width)) {
        Strip strip;
        strip.height_mm = look.step_mm;
        if (!line.empty())
            strip.content.texts.push_back({look.role, look.size_pt, x_mm,
                                           look.step_mm - scale.grid_mm + scale.baselineDrop_mm,
                                           std::move(line), 0, element});
        group.push_back(std::move(strip));
    }
    return group;
}

void Flow::Layout::add(StripGroup group, double before_mm) {
    if (group.empty())
        return;
    group.front().before_mm += afterHeading ? pendingSpace_mm : before_mm + pendingSpace_mm;
    pendingSpace_mm = 0;
    afterHeading = false;
    if (leads)
        strips.back().keepsWithNext = true;
    leads = false;
    std::move(group.begin(), group.end(), std::back_inserter(strips));
}

void Flow::Layout::addSmallText(StripGroup group, double before_mm) {
    constexpr std::size_t mostLines = 6;
    const bool isShort = !group.empty() && group.size() <= mostLines;
    const bool isLead = isShort && afterHeading;
    if (isShort && !strips.empty())
        strips.back().keepsWithNext = true;
    if (isShort)
        keepAll(group);
    add(std::move(group), before_mm);
    leads = isLead;
}

void Flow::Layout::letterhead() {
    StripGroup group;
    for (std::size_t i = 0; i < setup.letterhead.size(); ++i) {
        const TextLook look = i == 0 ? baseLook(FontRole::bodyStrong)
                                     : TextLook{FontRole::body, scale.small_pt, scale.grid_mm};
        StripGroup part =
            stack(look, setup.letterhead[i], 0, width_mm(), structure.add(ElementKind::paragraph));
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

}  // namespace rackbook
