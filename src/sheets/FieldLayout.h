// Sets boxes and lines that are to be filled in by hand.
#pragma once

#include <string>
#include <vector>

#include "sheets/FillIn.h"
#include "sheets/Strip.h"
#include "sheets/TextMeasurer.h"
#include "sheets/TypeScale.h"

namespace rackbook {

// What every part of a sheet that is filled in needs. All must outlive the call.
struct FieldRoom {
    const TextMeasurer& measurer;
    const TypeScale& scale;
    StructureBuilder& structure;
    double width_mm = 0;
    const std::string& where;  // for messages
};

// Boxes side by side, each below its label; each is a paragraph of the structure.
// Throws RenderError for text that cannot be set and boxes with too little room.
Strip layOutFieldBoxes(const std::vector<FieldBox>& boxes, double height_mm, const FieldRoom& room);

// The header and a strip for each row; a table of the structure. Throws as the above, and for rows
// with too few or too many cells.
StripGroup layOutFieldRows(const FieldTable& table, const FieldRoom& room);

}  // namespace rackbook
