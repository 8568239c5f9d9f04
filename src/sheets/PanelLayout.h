// Sets panels side by side.
#pragma once

#include <string>
#include <vector>

#include "sheets/Panel.h"
#include "sheets/Strip.h"
#include "sheets/TypeScale.h"

namespace rackbook {

struct PanelRoom {
    double width_mm = 0;
    double height_mm = 0;  // without the captions
};

// One strip. Pictures keep their proportions and stand at the top left of their panel; codes are
// squares of the row's height. Each panel is a figure of the structure.
// Throws RenderError, naming `where`, for text that cannot be set and panels with too little room.
Strip layOutPanels(const std::vector<Panel>& panels, const PanelRoom& room,
                   const std::vector<PictureFile>& pictures, const TextMeasurer& measurer,
                   const TypeScale& scale, StructureBuilder& structure, const std::string& where);

}  // namespace rackbook
