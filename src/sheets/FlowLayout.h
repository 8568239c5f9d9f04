// What a flow has set so far. Private to sheets/.
#pragma once

#include <string>
#include <vector>

#include "sheets/Flow.h"
#include "sheets/PageFurniture.h"
#include "sheets/Strip.h"
#include "sheets/Structure.h"
#include "sheets/TypeScale.h"

namespace rackbook {

struct TextLook {
    FontRole role = FontRole::body;
    double size_pt = 0;
    double step_mm = 0;  // from line to line
};

struct Flow::Layout {
    Layout(const TextMeasurer& textMeasurer, FlowSetup flowSetup);

    double width_mm() const { return furniture.width_mm(); }

    // Base text in that role.
    TextLook baseLook(FontRole role) const { return {role, scale.base_pt, scale.grid_mm}; }

    std::vector<std::string> lines(FontRole role, double size_pt, const std::string& text,
                                   double width) const;

    // Lines set one below the other, baselines at the foot of each step.
    StripGroup stack(const TextLook& look, const std::string& text, double x_mm, double width,
                     int element) const;

    void add(StripGroup group, double before_mm);

    // A short text in small type says something about the part before it, or, right below a
    // heading, about the part that follows; it stays with either.
    void addSmallText(StripGroup group, double before_mm);

    void letterhead();

    Rule hairline(double fromX_mm, double toX_mm, double y_mm) const {
        return {fromX_mm, y_mm, toX_mm, y_mm, scale.hairline_mm, 0};
    }

    const TextMeasurer& measurer;
    FlowSetup setup;
    TypeScale scale;
    std::string where;
    PageFurniture furniture;
    StripGroup strips;
    std::vector<StripGroup> headers;
    StructureBuilder structure;
    std::vector<PictureFile> pictures;
    std::vector<FieldPlace> fieldPlaces;
    double pendingSpace_mm = 0;
    bool afterHeading = false;
    std::size_t headingBegin = 0;  // first strip of the last heading
    bool leads = false;            // the last strip is a text that stays with what follows
};

// Two lines stay together at either end.
void keepEnds(StripGroup& lines);

void keepAll(StripGroup& lines);

// As messages name it.
std::string sheetName(const FlowSetup& setup);

}  // namespace rackbook
