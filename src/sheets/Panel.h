// Pictures, plots, swatches, codes and empty frames that stand side by side on a sheet.
#pragma once

#include <cstddef>
#include <string>
#include <variant>

#include "sheets/PageModel.h"
#include "sheets/Plot.h"

namespace rackbook {

// To be filled by hand or with a thing that is glued in.
struct EmptyFrame {};

// Room that is left free, so that the panel beside it keeps its width.
struct Gap {};

// A position in the list of pictures that Flow::addPicture gave.
struct PictureNumber {
    std::size_t index = 0;
};

struct QrText {
    std::string text;
};

struct Panel {
    std::variant<EmptyFrame, LabColour, PictureNumber, QrText, Plot, Gap> content;
    std::string caption;    // below it; may be empty
    std::string alternate;  // what it shows, in words; for an empty frame, what belongs there
    double share = 1;       // of the width that the squares of codes leave over
};

}  // namespace rackbook
